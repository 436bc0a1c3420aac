### What a reading means, and what to do now

off-by-less-points = { $by_points } lighter
off-by-more-points = { $by_points } heavier
off-by-lighter = { $by_g } lighter
off-by-heavier = { $by_g } heavier
off-by-shorter = { LENGTH($by_mm, digits: 2) } shorter
off-by-longer = { LENGTH($by_mm, digits: 2) } longer
off-by-less = { $by } less
off-by-more = { $by } more

angle-loft-good = Loft { $read_deg } matches the sheet
angle-loft-weak = Loft { $read_deg } for { $asked_deg }: { $by_deg } weak
angle-loft-strong = Loft { $read_deg } for { $asked_deg }: { $by_deg } strong
angle-lie-good = Lie { $read_deg } matches the sheet
angle-lie-upright = Lie { $read_deg } for { $asked_deg }: { $by_deg } upright
angle-lie-flat = Lie { $read_deg } for { $asked_deg }: { $by_deg } flat

angle-to-do-read-loft = Read the loft next.
angle-to-do-read-lie = Read the lie next.
angle-to-do-bend-stronger = Bend { $by_deg } stronger; the maker allows { $limit_deg }.
angle-to-do-bend-weaker = Bend { $by_deg } weaker; the maker allows { $limit_deg }.
angle-to-do-bend-upright = Bend { $by_deg } upright; the maker allows { $limit_deg }.
angle-to-do-bend-flat = Bend { $by_deg } flat; the maker allows { $limit_deg }.
angle-to-do-set-adapter = Do not bend it: set the adapter to “{ $setting }” and read again.
angle-to-do-other-head = This head may be bent { $limit_deg } at most: use another head.

meaning-kept = Kept.
meaning-finish =
    { $ahead ->
        [none] Finish { LETTER($finish_points) } ± { PLAIN($band_points) }, { $chance }.
       *[other] Finish { LETTER($finish_points) } ± { PLAIN($band_points) }: { $chance } as it stands, { $ahead } with its grip chosen after the cure.
    }
meaning-off-sheet = { CAPITAL($off) }. Finish { LETTER($finish_points) } ± { PLAIN($band_points) }, { $chance }.
meaning-angle = { $angle }.
meaning-angles = { $first }. { $second }.
meaning-cpm-good = { CPM($read_cpm, digits: 1) }, asked { CPM($asked_cpm, digits: 1) }: on target.
meaning-cpm-expected = { CPM($read_cpm, digits: 1) }, expected { PLAIN($expected_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }.
meaning-doubted = { $off } than expected. Noted, not used yet.
meaning-doubted-only = This reading does not fit the others. Noted, not used yet.

next-step = Next: { $step }.
next-done = This club is done.
next-in-tolerance = In tolerance. Next: { $step }.
next-in-tolerance-done = In tolerance. This club is done.
next-settle = { $reach }.
next-put-right = Put it right, or say why when you hand the club over.
next-remedy = { $remedy }.
next-rather-out = More likely out than in. { $remedy }.
next-heavier-grip-later = More likely out than in as planned. With a heavier grip after the cure: { $chance }.
next-lighter-grip-later = More likely out than in as planned. With a lighter grip after the cure: { $chance }.
next-too-light = { $by_points } light, and no option at hand brings it in. Read it once more before you take it apart.
next-too-heavy = { $by_points } heavy, and no option at hand brings it in. Read it once more before you take it apart.
next-wide-read-step = The forecast is still wide. The swing weight at “{ $step }” narrows it.
next-wide-read-again = The forecast is still wide. Seat the club again and read the swing weight once more.
next-wide-read-check-weight = The forecast is still wide. Read the check weight.
next-wide = The forecast is still wide.
next-likely =
    { $telling ->
        [none] { $likely }
       *[other] { $likely } { $telling }
    }
next-still-doubted =
    { $telling ->
        [none] The { $what } at “{ $step }” is still doubted. { $likely }
       *[other] The { $what } at “{ $step }” is still doubted. { $likely } { $telling }
    }
next-read-again = Seat it again and read once more.
next-nothing-to-bend = Nothing to bend here.
next-angle = { $to_do }
next-angles = { $first } { $second }
