### What a step says of one club beside its own sentence

# Roughening the tip and cleaning the hosel: how deep, what to watch, and why.
says-tip = Tip: roughen <b>{ LENGTH($depth_mm, digits: 2) }</b> from its end, all round and no further; then wipe it clean.
says-tip-steel = Through the plating until it is dull all round: adhesive lets go of a shiny ring.
says-tip-composite = Only until the gloss is gone. Stop where a fibre shows or lifts: a tip that is sanded thin breaks there.
says-hosel = Hosel: clean <b>{ LENGTH($depth_mm, digits: 2) }</b> deep to bare metal, wipe with the cleaner of the adhesive's sheet, let it dry.
says-hosel-why = A white cloth must come out white: old adhesive or grease keeps the new from the wall. Try the fit dry, to the bottom.

# Cutting.
says-cut = Off the tip <b>{ LENGTH($tip_mm) }</b>, then off the butt <b>{ LENGTH($butt_mm) }</b>: <b>{ LENGTH($left_mm) }</b> is left.
says-cut-butt = Nothing off the tip, off the butt <b>{ LENGTH($butt_mm) }</b>: <b>{ LENGTH($left_mm) }</b> is left.
says-cut-weight = It should weigh { $mass_g }.

# The soft side.
says-soft-side = Mark it at the tip: the sheet asks for it <b>{ $side }</b>.
says-soft-side-free = Mark it at the tip, the same way on every shaft of the set: the sheet leaves its direction free.
says-soft-side-why = The glue page shows it again for each club.
says-turn-to = soft side { ANGLE($at_deg, digits: 0) }{ $band_deg ->
        [none] {""}
       *[other] {" "}± { ANGLE($band_deg, digits: 0) }
    } from the label: turn it { $side }
says-turn-mark = soft side { ANGLE($at_deg, digits: 0) }{ $band_deg ->
        [none] {""}
       *[other] {" "}± { ANGLE($band_deg, digits: 0) }
    } from the label
says-turn-asked = soft side { $side }, not measured
says-turn-label = label { $facing }

# Gripping.
says-strips =
    { $n ->
        [0] No tape over the full length.
        [one] <b>1 strip of { LENGTH($strip_mm) }</b>
       *[other] <b>{ $n } strips of { LENGTH($strip_mm) }</b>
    }
says-strips-are = base { $base }, wraps { $full }; from the butt's end.
says-strips-lower =
    { $n ->
        [one] Lower hand: <b>1 more of { LENGTH($strip_mm) }</b>
       *[other] Lower hand: <b>{ $n } more of { LENGTH($strip_mm) }</b>
    }
says-grip = Grip <b>{ $code }</b>: { $name }, for a butt of { LENGTH($core_mm, digits: 2) }.
says-logo = Logo: { $facing }.

# Bending.
says-bend = { CAPITAL($what) } asked <b>{ $asked_deg }</b>, is { $read_deg }: bend <b>{ ANGLE($by_deg, digits: 1) } { $way }</b>.
says-bend-beyond = { CAPITAL($what) } asked <b>{ $asked_deg }</b>, is { $read_deg }: <b>do not bend it</b>, the maker allows { ANGLE($limit_deg, digits: 1) } in all.
says-bend-none = { CAPITAL($what) } asked <b>{ $asked_deg }</b>, is { $read_deg }: nothing to bend.
says-bend-unread = { CAPITAL($what) } asked <b>{ $asked_deg }</b>: read it first.
says-strong = strong
says-weak = weak
says-flat = flat
says-upright = upright
says-came-back = { ANGLE($back_deg, digits: 1) } of the last bend came back: go that much past it.
angle-effect-left = { ANGLE($off_deg, signed: 1) } of lie: the ball starts { ANGLE($aim_deg, digits: 1) } left, { PLAIN($by_m, digits: 1) } m at { $at_m } m.
angle-effect-right = { ANGLE($off_deg, signed: 1) } of lie: the ball starts { ANGLE($aim_deg, digits: 1) } right, { PLAIN($by_m, digits: 1) } m at { $at_m } m.
angle-effect-farther = { ANGLE($off_deg, digits: 1) } strong: it goes about { PLAIN($from_m, digits: 1) } to { PLAIN($to_m, digits: 1) } m farther.
angle-effect-shorter = { ANGLE($off_deg, digits: 1) } weak: it goes about { PLAIN($from_m, digits: 1) } to { PLAIN($to_m, digits: 1) } m less far.
angle-effect-bounce = Bounce { ANGLE($now_deg, digits: 1) } now, { ANGLE($then_deg, digits: 1) } once the loft is right.
says-set-adapter = { CAPITAL($what) } asked <b>{ $asked_deg }</b>, is { $read_deg }: <b>set the adapter to “{ $setting }”</b>.
says-adapter = Adapter at “{ $setting }”: loft { ANGLE($loft_deg, signed: 1) }, lie { ANGLE($lie_deg, signed: 1) }, face { ANGLE($face_deg, signed: 1) } open
says-adapter-only = Adapter at “{ $setting }”
says-adapter-not-bent = Set it; do not bend a head with an adapter. Tighten its screw to the maker's figure.
says-bend-limit = The maker allows { ANGLE($limit_deg, digits: 1) } in all. Bend in small steps and read after each.

# Handing over.
says-built = { CAPITAL($what) } <b>{ $read }</b>
