### What a calculation finds beside its figures

# A figure that was probably typed in another unit.
looks-like-unit = this looks like { $unit }, and { $given } { $given_in } is { $meant } { $meant_in }
slip-unit-inches = inches
slip-unit-centimetres = centimetres
slip-unit-metres = metres
slip-unit-ounces = ounces
slip-unit-kilograms = kilograms
slip-unit-fahrenheit = degrees Fahrenheit
slip-unit-kelvins = kelvins
slip-unit-millimetres = millimetres
slip-unit-grams-a-millimetre = grams a millimetre
slip-unit-grams-an-inch = grams an inch
slip-unit-miles-an-hour = miles an hour
slip-unit-kilometres-an-hour = kilometres an hour
slip-unit-pounds-a-square-inch = pounds a square inch
slip-unit-kilopascals = kilopascals
slip-unit-kilograms-a-cubic-metre = kilograms a cubic metre
slip-unit-hertz = hertz

# Swing weight and inertia: the parts of a club.
parts-remark-no-grip = no part is named grip, so the new length moves every part, as on a bare club
parts-remark-places-in-another-unit = every part is close to the butt; { $meant }
parts-remark-masses-in-another-unit = all parts together weigh next to nothing; { $meant }
change-step-grip = grip
change-step-length = length
change-step-mass = mass
change-step-named = { $name }

# Shaft trimming.
trim-remark-taper-tip-cut = { $tip_trim_mm } is cut from a taper tip: the tip is thicker there and may not fit the bore

# Frequency.
frequency-remark-free-length = the free length of { $free_mm } is unusual for a club; check the unit of the lengths
frequency-remark-head-in-another-unit = check the mass of the head; { $meant }
frequency-remark-read-head-in-another-unit = check the mass of the head that was on for the reading; { $meant }
frequency-remark-table-far-off = the table must be made { PLAIN($times, digits: 2) } times as stiff to give this reading; check the shaft, the length in the clamp and the head
frequency-remark-stiffness = the stiffness runs from { $softest_n_m2 } to { $stiffest_n_m2 } N·m², unusual for a shaft; check its unit
frequency-remark-frequency = { CPM($first_cpm, digits: 0) } is unusual for a shaft; check stiffness, masses and their units

# Soft side.
soft-side-note-planes-alike = the two planes are alike within { PERCENT($at_most_share, digits: 2) }, so there is no soft side to mark
soft-side-note-cannot-tell-soft-side = these readings cannot tell whether there is a soft side: it could be up to { PERCENT($at_most_share, digits: 2) }. Read at more angles, or each angle again
soft-side-note-cannot-tell-bow = these readings cannot tell whether the shaft is bowed: the bow could be up to { LENGTH($at_most_mm, digits: 3) }
soft-side-note-once-a-turn = the frequency changes once a turn, which a shaft does not do. Look for a loose clamp, or for a drift while reading
soft-side-note-few-spare =
    { $spare ->
        [0] no reading is left over to find the noise, so the intervals are wide. Read at more angles, or give the standard deviation of a reading
        [one] only one reading is left over to find the noise, so the intervals are wide. Read at more angles, or give the standard deviation of a reading
       *[other] only { $spare } readings are left over to find the noise, so the intervals are wide. Read at more angles, or give the standard deviation of a reading
    }
soft-side-note-scatter = the readings scatter { PLAIN($times, digits: 1) } times as much as the standard deviation that you gave. Look for a slip, or leave it blank

# Recording of a plucked club.
pluck-note-one-frequency = the recording shows one frequency only: either the planes are alike, or the pluck went along one of them. To be sure, pluck again about 45° further round
pluck-note-two-planes = there is another tone close by at { CPM($other_cpm, digits: 0) }, so the club swings in two planes. Record two axes, or pluck along the soft or the stiff side
pluck-note-other-tone = there is another tone at { PLAIN($tone_hz, digits: 1) } Hz; it was left out of the noise
pluck-note-noise = the noise around the tone is { PLAIN($times, digits: 1) } times the white noise. Look for a loose clamp, a hand on the club or a wandering sensor
pluck-note-grows = the swing grows: something drives it, or the pluck itself is in the part used

# Grip size.
grip-remark-large-without-tape = the grip is { LENGTH($by_mm, digits: 3) } larger than wanted even without tape. Use a grip with a larger core
grip-remark-too-many-layers = more than { $most } layers would be needed. Use a larger grip
grip-remark-beyond-rules = { LENGTH($widest_mm, digits: 3) } is wider than { LENGTH($limit_mm, digits: 3) }, the limit of Equipment Rules 2.3b

# Lie and loft.
bend-remark-beyond-limit = { ANGLE($by_deg, digits: 2) } beyond the maker's limit of { $limit_deg }: the hosel may crack

# Glue.
cure-time-pot-life = the pot life
cure-time-handling = handling strength
cure-time-full-cure = full cure
glue-remark-gap-thin = the gap of { LENGTH($gap_mm, digits: 4) } is thinner than the { LENGTH($low_mm, digits: 4) } to { LENGTH($high_mm, digits: 4) } at which bonds are strongest
glue-remark-gap-wide = the gap of { LENGTH($gap_mm, digits: 4) } is wide. Use a coarser filler or a shim, not more spacers
glue-remark-least-mixed = the joints need { $needed_g } with the spare. Mix { MASS($least_g, digits: 0) }: a scale that shows { $scale_g } weighs out no less to 1 %
glue-remark-pot-life-colder = the shop is at { $room_c } °C and the sheet's coldest pot life is for { $sheet_c } °C, so the pot life is a guess. Warm the room, or ask the maker
glue-remark-cure-colder = the shop is at { $room_c } °C and the sheet states { $time } for { $sheet_c } °C and warmer: so cold, many adhesives never cure fully. Warm the room, or ask the maker
glue-remark-warmer = the shop is at { $room_c } °C and the sheet states { $time } for { $sheet_c } °C and colder. Use the sheet's own time
glue-remark-cup-large = { MASS($mix_g, digits: 0) } in one cup is more than the { MASS($stated_g, digits: 0) } that the pot life is stated for: the pot life is shorter, and the cup gets hot
glue-remark-several-cups = gluing { $joints } joints takes about { PLAIN($work_min, digits: 0) } min, and the cup is good for { PLAIN($good_min, digits: 0) } min: mix { $cups } cups one after the other, { $joints_a_cup } joints each, of { $resin_g } resin, { $hardener_g } hardener and { $spacers_g } spacers
glue-remark-cup-too-short = the cup is good for { PLAIN($good_min, digits: 0) } min, less than mixing it and gluing one joint take. Use a slower adhesive
pull-reserve-times = over { PLAIN($times, digits: 0) } times in a slow straight pull. Impact, bending and age are not counted
pull-reserve-exceeded = the stress is above the strength on the sheet: this joint would let go, or a unit is wrong
pull-assumption-on-a-circle = the head moves on a circle of the given radius, with its whole mass at that radius
pull-assumption-straight-and-even = the pull runs along the shaft, and every part of the glued face carries the same share
pull-assumption-not-counted = the peaks at the ends of the joint, the blow of the ball and age are not counted
