### The soft side of a club's shaft, found and checked

soft-side-says-stiffness = Soft side { ANGLE($at_deg, digits: 0) } ± { ANGLE($band_deg, digits: 0) } from the label. It is stiffness: the shaft bends more easily this way.
soft-side-says-stiffness-and-bow = Soft side { ANGLE($at_deg, digits: 0) } ± { ANGLE($band_deg, digits: 0) } from the label, on the side of the bow. The shaft is also bowed by { LENGTH($bow_mm, digits: 2) } toward { ANGLE($bow_deg, digits: 0) }.
soft-side-says-bow-alone = No soft side: the shaft bends alike all round. It is bowed by { LENGTH($bow_mm, digits: 2) } toward { ANGLE($bow_deg, digits: 0) }, and a roller would show that as a soft side.
soft-side-says-alike = No soft side: stiffness differs by { PERCENT($at_most_share, digits: 1) } at most. Turn the label as the sheet asks.
soft-side-says-cannot-tell = These readings cannot tell: it could be up to { PERCENT($at_most_share, digits: 1) }. Read at more angles, or each angle again.

two-planes-say-as-asked = The soft side is where the sheet wants it: that plane is { CPM($by_cpm, digits: 1) } slower.
two-planes-say-turned = The soft side is a quarter turn off: the other plane is { CPM($by_cpm, digits: 1) } slower. Look at the mark before the grip goes on.
two-planes-say-cannot-tell = The planes are alike within what your meter tells: they must differ by { CPM($least_cpm, digits: 1) }.
two-planes-say-soft-along = The soft plane is along the line of play, { CPM($by_cpm, digits: 1) } slower. The sheet asks no direction.
two-planes-say-soft-across = The soft plane is from heel to toe, { CPM($by_cpm, digits: 1) } slower. The sheet asks no direction.

soft-side-fault-one-of-two = a sweep or a recording is needed, one of the two
    .next = Give readings at angles, or a recording on two axes
soft-side-fault-not-asked = no step of the { $number } asks for a soft side
    .next = Add such a step to the job's steps, or leave it at what was found
soft-side-fault-nothing-to-mark = these readings show no soft side to keep
    .next = Turn the label as the sheet asks, or read again

soft-side-page = Soft side of the { $club }
soft-side-open = Find it from a sweep
soft-side-check-open = Check the soft side in two planes
soft-side-about = Turn the shaft in steps and read it at each angle from the label, clockwise seen from the butt. Six angles are the least, twelve are better.
soft-side-kind = What was read
soft-side-kind-frequency = frequency
soft-side-kind-deflection = deflection under a weight
soft-side-kind-force = force at a fixed deflection, in N
soft-side-fixed = Force in N, or the fixed deflection
soft-side-fixed-hint = Leave empty for frequencies
soft-side-at = { ANGLE($at_deg, digits: 0) }
soft-side-show = Show
soft-side-keep = Keep as soft side
soft-side-planes-title = Finished club in two planes
soft-side-planes-about = Clamp the finished club and pluck it along the line of play, then from heel to toe.
soft-side-along = Along the line of play
soft-side-across = From heel to toe
soft-side-check = Check
