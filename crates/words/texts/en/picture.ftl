### Picture


picture-style = Style
picture-style-crumb = invented figures

# The pictures of the calculations.
picture-calc-around = Readings around the shaft, seen along it, their change drawn large
picture-calc-around-readings = { $count } readings of { $of }.
picture-calc-around-soft = Soft along { $along_deg }.
picture-calc-around-none = No soft side is shown.
picture-calc-around-bow = Bowed by { LENGTH($bow_mm, digits: 3) } toward { $toward_deg }.
picture-calc-around-mark = Mark at { $mark_deg }.
picture-calc-around-rests = Loaded in rollers it comes to rest at { $rests_deg }.
picture-calc-key-soft = soft along { $along_deg }
picture-calc-key-bow = bow { LENGTH($bow_mm, digits: 3) } to { $toward_deg }
picture-calc-key-mark = mark at { $mark_deg }
picture-calc-key-rests = rests at { $rests_deg }
picture-calc-key-none = no soft side shown
picture-calc-bend-row = { $name } from { ANGLE($from_deg, digits: 2) } to { ANGLE($to_deg, digits: 2) } in { $steps } steps
picture-calc-bend-words = The maker allows { ANGLE($limit_deg, digits: 2) } either way. { $bent }.
picture-calc-bend = Bending step by step, and the maker's limit
picture-calc-bend-within = within the maker's limit
picture-calc-bend-beyond = { ANGLE($bent_deg, digits: 2) } beyond the limit
picture-calc-bend-to = { ANGLE($bent_deg, digits: 2) }
picture-calc-bend-axis = bent from the maker's angle, °
picture-calc-joint-words = A tip of { LENGTH($tip_mm, digits: 3) } in a bore of { LENGTH($bore_mm, digits: 3) } leaves a gap of { LENGTH($gap_mm, digits: 4) } all around over { LENGTH($depth_mm, digits: 2) }; { MASS($ring_g, digits: 3) } of adhesive fill it, and the joint takes { MASS($joint_g, digits: 2) } in all.
picture-calc-joint = The joint across and along, its gap drawn ten times as wide
picture-calc-joint-gap = gap { LENGTH($gap_mm, digits: 4) }
picture-calc-joint-fit = tip { LENGTH($tip_mm, digits: 3) }, bore { LENGTH($bore_mm, digits: 3) }
picture-calc-joint-deep = { LENGTH($depth_mm, digits: 2) } deep
picture-calc-joint-takes = { MASS($ring_g, digits: 3) } in the gap, { MASS($joint_g, digits: 2) } in all
picture-calc-cure-line = { $name } { $time }
picture-calc-cure-line-sd = { $name } { $time } ± { $sd }
picture-calc-cure-words = At { $here_c } °C: { $times }. The lines go through the points of the sheet; warmth shortens every time.
picture-calc-cure = Time by temperature
picture-calc-minutes = { $count } min
picture-calc-hours = { $count } h
picture-calc-days = { $count } days
picture-calc-one-day = 1 day
picture-calc-time = time
picture-calc-temperature = temperature, °C
picture-calc-here = { $here_c } °C
picture-calc-grip-place = { LENGTH($below_mm, digits: 1) } below the cap: { LENGTH($wide_mm, digits: 3) }
picture-calc-grip-words = { $places }.
picture-calc-grip-wanted-words = { $places }. Wanted at the first place: { LENGTH($wanted_mm, digits: 3) }.
picture-calc-grip = Diameter along the grip
picture-calc-grip-below = below the cap, { $unit }
picture-calc-grip-diameter = diameter, { $unit }
picture-calc-grip-tape = tape under the grip
picture-calc-grip-wanted = wanted { LENGTH($wanted_mm, digits: 3) }
picture-calc-grip-rule = by the rule
picture-calc-grip-kept = volume kept
picture-calc-grip-nominal = nominal
picture-calc-lie-flatter = With the hands at the same height, a club of { LENGTH($length_mm, digits: 2) } at { ANGLE($lie_deg, digits: 2) } lies at { ANGLE($new_deg, digits: 2) } when it is { LENGTH($new_mm, digits: 2) } long: { ANGLE($by_deg, digits: 2) } flatter.
picture-calc-lie-upright = With the hands at the same height, a club of { LENGTH($length_mm, digits: 2) } at { ANGLE($lie_deg, digits: 2) } lies at { ANGLE($new_deg, digits: 2) } when it is { LENGTH($new_mm, digits: 2) } long: { ANGLE($by_deg, digits: 2) } more upright.
picture-calc-lie = Length and lie at one height of the hands
picture-calc-lie-hands = height of the hands
picture-calc-lie-club = { LENGTH($length_mm, digits: 2) } at { ANGLE($lie_deg, digits: 2) }
picture-calc-lie-enlarged = the change of lie is drawn { $times } times as large
picture-calc-side =
    { $side ->
        [left] left
       *[right] right
    }
picture-calc-aim = Where a wrong lie aims, from above, right-handed
picture-calc-aim-off =
    { $flat ->
        [flat] A lie { ANGLE($lie_deg, digits: 2) } too flat aims { ANGLE($aim_deg, digits: 2) } to the { $side }, { $off_m } m off at { $far_m } m.
       *[upright] A lie { ANGLE($lie_deg, digits: 2) } too upright aims { ANGLE($aim_deg, digits: 2) } to the { $side }, { $off_m } m off at { $far_m } m.
    }
picture-calc-aim-only =
    { $flat ->
        [flat] A lie { ANGLE($lie_deg, digits: 2) } too flat aims { ANGLE($aim_deg, digits: 2) } to the { $side }.
       *[upright] A lie { ANGLE($lie_deg, digits: 2) } too upright aims { ANGLE($aim_deg, digits: 2) } to the { $side }.
    }
picture-calc-aim-metres = { $off_m } m { $side }
picture-calc-aim-angle = { ANGLE($aim_deg, digits: 2) } { $side }
picture-calc-aim-target-at = target, { $far_m } m
picture-calc-aim-target = target
picture-calc-aim-larger = { ANGLE($aim_deg, digits: 2) } { $side }, sideways drawn larger
picture-calc-modes-words = Clamped at the left. The modes swing at { $all } cycles a minute; { $load } N at the tip bend it by { LENGTH($bent_mm, digits: 2) }.
picture-calc-modes = How the club swings and bends
picture-calc-mode-first = first: { $cycles } cpm
picture-calc-mode-second = second: { $cycles } cpm
picture-calc-mode-third = third: { $cycles } cpm
picture-calc-mode-next = next: { $cycles } cpm
picture-calc-modes-bent = { LENGTH($bent_mm, digits: 2) } under { $load } N
picture-calc-modes-axis = from the clamp, { $unit }
picture-calc-pivot-whole = About a pivot { LENGTH($pivot_mm, digits: 2) } from the butt end the inertia is { $inertia } kg·cm². All mass { LENGTH($gyration_mm, digits: 2) } from the pivot would have the same.
picture-calc-pivot-parts = About a pivot { LENGTH($pivot_mm, digits: 2) } from the butt end the inertia is { $inertia } kg·cm², of which { $shares }. All mass { LENGTH($gyration_mm, digits: 2) } from the pivot would have the same.
picture-calc-pivot = The club about its pivot
picture-calc-pivot-mark = pivot
picture-calc-pivot-balance = balance point { LENGTH($off_mm, digits: 2) }
picture-calc-pivot-gyration = as one mass { LENGTH($gyration_mm, digits: 2) }
picture-calc-series-row = { LENGTH($length_mm, digits: 2) }: { $swing_weight_g } for equal swing weight, { $inertia_g } for equal inertia
picture-calc-series-words = Head mass by length. { $rows }.
picture-calc-series = Head mass along the set, by both laws
picture-calc-series-length = length, { $unit }
picture-calc-series-head = head, { $unit }
picture-calc-series-reference = reference
picture-calc-series-inertia = equal inertia
picture-calc-series-swing-weight = equal swing weight
picture-calc-recording-words = { $long } seconds of a swing at { $cycles } cycles a minute that fades to { $kept } % in each second.
picture-calc-recording-planes = { $long } seconds of a swing at { $cycles } cycles a minute that fades to { $kept } % in each second. The soft plane is along { $soft_deg }, the stiff one along { $stiff_deg }, { $apart } cycles a minute apart.
picture-calc-recording-orbit = The swing as it fades, and the path of the tip
picture-calc-recording = The swing as it fades
picture-calc-recording-fade = fades by { $share } % a second
picture-calc-recording-distance = distance from rest, both axes
picture-calc-recording-readings = readings
picture-calc-recording-time = time, s
picture-calc-recording-path = path of the tip, first { $long } s
picture-calc-recording-soft = soft
picture-calc-recording-stiff = stiff
picture-calc-recording-one = one frequency: no planes to tell apart
picture-calc-recording-plane = { $name } { $cycles } cpm
picture-calc-shaft = The shaft, its cuts and its mass along it
picture-calc-shaft-words = { LENGTH($butt_mm, digits: 2) } off the butt and { LENGTH($tip_mm, digits: 2) } off the tip leave { LENGTH($cut_mm, digits: 2) } with { MASS($mass_g, digits: 2) }, balanced { LENGTH($balance_mm, digits: 2) } from the new butt end.
picture-calc-shaft-finished = { LENGTH($butt_mm, digits: 2) } off the butt and { LENGTH($tip_mm, digits: 2) } off the tip leave { LENGTH($cut_mm, digits: 2) } with { MASS($mass_g, digits: 2) }, balanced { LENGTH($balance_mm, digits: 2) } from the new butt end. Finished: { LENGTH($end_mm, digits: 2) } to the end of the shaft, { LENGTH($cap_mm, digits: 2) } to the end of the cap.
picture-calc-shaft-raw = raw { LENGTH($raw_mm, digits: 2) }
picture-calc-shaft-cut = cut { LENGTH($cut_mm, digits: 2) }
picture-calc-shaft-to-end = to shaft end { LENGTH($end_mm, digits: 2) }
picture-calc-shaft-to-cap = to cap { LENGTH($cap_mm, digits: 2) }
picture-calc-shaft-off = off { LENGTH($off_mm, digits: 2) }
picture-calc-shaft-balance = balances at { LENGTH($balance_mm, digits: 2) }
picture-calc-shaft-ground = ground
picture-calc-shaft-bore-narrow = bore { LENGTH($in_mm, digits: 2) }
picture-calc-shaft-in-bore = { LENGTH($in_mm, digits: 2) } in the bore
picture-calc-shaft-bore = bore
picture-calc-shaft-density = { $mass }/{ $length } along the shaft

# What the parts of a model weigh.
picture-heap = Masses of { $name }: { $words }
picture-heap-none = None weighed yet; the maker states { $maker_g }
picture-heap-one = 1 weighed, { $mean_g }, { MASS($off_g, signed: 1) } from the maker's { $maker_g }
picture-heap-more = { $n } weighed, { $mean_g } on average, { MASS($off_g, signed: 1) } from the maker's { $maker_g }; they scatter by { $scatter_g }
picture-heap-maker = maker { $maker_g }
picture-calc-club = club
picture-calc-whole = club
picture-calc-one-part = part
picture-calc-part = part { $at }
picture-calc-force = force, N
picture-calc-deflection = deflection, { $unit }
picture-calc-frequency = frequency, cpm

picture-profile = Stiffness along the shaft
picture-profile-words = Stiffness from the butt to the tip: { $butt } N·m² at the butt, { $middle } in the middle, { $tip } at the tip. The band holds 95 of 100.
picture-profile-axis = from the tip, { $unit }
picture-profile-own = this shaft
picture-profile-model = model
