### Planner: why these parts, what is missing, what would do in its place

# What the planner refuses.
planner-refused-no-clubs = there is no club to plan
    .next = Give at least one club
planner-refused-not-finite = { $what } of club { $club } is { FIGURE($value) }, which is not a finite number
    .next = Correct the reading or leave the part out
planner-refused-out-of-range = { $what } is { $value }: it must be between { $low } and { $high }
    .next = Check the figure and its unit
planner-refused-unknown-part = club { $club } names { $kind } { $part }, and the stock lists only { $n }
    .next = Add the part to the stock first
planner-refused-listed-twice = club { $club } lists { $kind } { $part } twice
    .next = Keep one of the two
planner-refused-plan-shape = the plan has { $got } clubs, and the question has { $expected }
    .next = Give the plan that belongs to these clubs
planner-refused-cost-row = row { $row } of the costs has { $got } entries, and the first has { $expected }
    .next = Give one cost for every column
planner-refused-cost-value = the cost of row { $row }, column { $column } is { FIGURE($value) }
    .next = Give a number, or infinity for a pair that is not allowed
planner-refused-check-failed = the plan failed its check: { $log }

planner-asked-base-deviation = base deviation
planner-asked-cap-of-tip-weight = cap of tip weight
planner-asked-contribution-of-part = contribution of a part
planner-asked-contribution-of-tip-weight = contribution of a tip weight
planner-asked-cost-of-unbuilt-club = cost of an unbuilt club
planner-asked-extra-cost-of-part = extra cost of a part
planner-asked-loss-of-pair-of-tip-weights = loss of a pair of tip weights
planner-asked-mass-of-part = mass of a part
planner-asked-mass-of-tip-weight = mass of a tip weight
planner-asked-mass-of-parts-not-chosen = mass of the parts not chosen
planner-asked-nominal-shaft-mass = nominal shaft mass
planner-asked-points-per-gram-of-head = points per gram of head
planner-asked-priority-of-job = priority of a job
planner-asked-quantum-of-cost = quantum of cost
planner-asked-target-mass = target mass
planner-asked-weight-of-loss = weight of the loss
planner-asked-zero-of-head-scale = zero of the head scale
planner-asked-weight-of-gram-of-tip-weight = weight of a gram of tip weight
planner-asked-weight-of-second-tip-weight = weight of a second tip weight
planner-asked-weight-of-gram-of-shaft-range = weight of a gram of shaft range
planner-asked-weight-of-gram-of-whole-mass = weight of a gram of whole mass
planner-asked-standard-deviation-of-finish = standard deviation of the finish
planner-asked-tolerance = tolerance
planner-asked-standard-deviation-of-what-reading-tells = standard deviation of what the reading tells
planner-asked-standard-deviation-of-what-stays-unknown = standard deviation of what stays unknown
planner-asked-spread-of-spare-grips = spread of the spare grips
planner-asked-number-of-spare-grips = number of spare grips

# What is refused of a search for a plan.
search-fault-seconds = a search of { FIGURE($value) } s is not possible
    .next = Give 0 to { FIGURE($most) } s; a first plan is there at once
search-fault-seed = { $seed } is too large for a seed
    .next = Give a whole number from 0 to { $most }
search-fault-changed = stock or readings changed since this plan was proposed
    .next = Look at the new plan, then accept it

# Why a club gets its parts.
planner-reason-head-under = Head { $head } is { $by_g } under its number's { $nominal_g }.
planner-reason-head-over = Head { $head } is { $by_g } over its number's { $nominal_g }.
planner-reason-last-head = No other head of its number is within { MASS($within_g, digits: 0) }: it is the last of its kind.
planner-reason-in-tip = { $tip_g } in the tip leaves it { POINTS($off_points, digits: 2) } from target.
planner-reason-no-tip = No weight in the tip: { POINTS($off_points, digits: 2) } from target.
planner-reason-screw = The head gets screw { $screw }, { MASS($more_g, signed: 1) } against the one that it comes with.
planner-reason-club-under = The whole club comes to { $total_g }, { $by_g } under the sheet's.
planner-reason-club-over = The whole club comes to { $total_g }, { $by_g } over the sheet's.
planner-reason-shaft-under = Its shaft is { $by_g } under the model's own line.
planner-reason-shaft-over = Its shaft is { $by_g } over the model's own line.
planner-reason-neighbour-blank = The blank is the { club-number }'s: give the reason before you cut.
planner-reason-grip-under = Its grip is { $by_g } under its model's: one that could put another club right.
planner-reason-grip-over = Its grip is { $by_g } over its model's: one that could put another club right.
planner-reason-adapter-under = Adapter { $adapter } is { $by_g } under its model's { $nominal_g }.
planner-reason-adapter-over = Adapter { $adapter } is { $by_g } over its model's { $nominal_g }.
planner-reason-lie-beyond-limit = The lie needs a bend of { ANGLE($bend_deg, signed: 1) }; the maker allows { $limit_deg }.

# What a club lacks, and what to order.
planner-lack-ferrule = No free ferrule of this model; the plan goes on without.
planner-lack-no-head =
    No free, weighed { $head } { club-number } head{ $from_g ->
        [none] {""}
       *[other] . Order one of { PLAIN($from_g) } to { $to_g }
    }.
planner-lack-no-shaft = No free, weighed { $shaft } shaft fits: it must leave { $needed_mm } after the tip trim and go into the bore.
planner-lack-no-grip = No free grip of this model.
planner-lack-no-adapter = { $head } takes an adapter, and no free one fits it: order one.
planner-lack-short =
    The nearest choice stays { $by_points } short of { LETTER($target_points) }{ $from_g ->
        [none] {""}
       *[other] . Order a head of { PLAIN($from_g) } to { $to_g }
    }.
planner-lack-over =
    The nearest choice stays { $by_points } over { LETTER($target_points) }{ $from_g ->
        [none] {""}
       *[other] . Order a head of { PLAIN($from_g) } to { $to_g }
    }.
planner-lack-locked-twice = This { $kind } is locked to two clubs: remove one lock.
planner-lack-last-head-taken =
    Other clubs take the last head that fits{ $from_g ->
        [none] {""}
       *[other] . Order one of { PLAIN($from_g) } to { $to_g }
    }.
planner-lack-last-shaft-taken = Other clubs take the last shaft that fits: order one more.
planner-lack-last-adapter-taken = Other clubs take the last adapter that fits: order one more.
planner-lack-last-grip-taken = Other clubs take the last grip: order one more.

# What would do in the place of a part that is missing.
planner-instead-with-tip = { $part } ({ $why }): about { $off_points } off with { MASS($tip_g, digits: 0) } in the tip.
planner-instead-without-tip = { $part } ({ $why }): about { $off_points } off with no tip weight.
planner-instead-why-taken =
    the { $club }{ $job ->
        [none] {""}
       *[other] {" "}of job { $job }
    } has it
planner-instead-why-held = job { $job } holds it for its { club-number }
planner-instead-why-stronger = the { club-number }'s head, { $by_deg } stronger
planner-instead-why-weaker = the { club-number }'s head, { $by_deg } weaker
planner-instead-why-other-head = a { $head } { club-number }
planner-instead-why-other-blank = the { club-number }'s blank
planner-instead-why-other-shaft = a { $shaft }, another feel
planner-instead-why-other-grip = a { $grip }

# What changes when a job is planned again.
planner-change-lighter =
    { $club }: { $to ->
        [none] no { $kind }
       *[other] { $to }
    } in place of { $from ->
        [none] no { $kind }
       *[other] { $from }
    } ({ $by_g } lighter{ $line ->
        [none] {""}
       *[other] , { $line }
    }), { $chance }.
planner-change-heavier =
    { $club }: { $to ->
        [none] no { $kind }
       *[other] { $to }
    } in place of { $from ->
        [none] no { $kind }
       *[other] { $from }
    } ({ $by_g } heavier{ $line ->
        [none] {""}
       *[other] , { $line }
    }), { $chance }.
planner-line-change-moved = { $now_cpm } off its line, was { PLAIN($was_cpm) }
planner-line-change-found = { $now_cpm } off its line
planner-line-change-lost = its frequency is not known, was { $was_cpm } off its line

# The frequency line of a blank, and how a shaft lies against it.
planner-line-line =
    { $shaft }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }: its line is { $line_cpm }, of { $measured } measured.
planner-line-too-few =
    { $shaft }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }: { $measured } measured, and { $needed } make a line; its frequency does not count yet.
planner-shaft-not-measured = Its shaft has no frequency; others of its blank are about { $usual_cpm } off their line.
planner-shaft-on-line = Its shaft is on its frequency line, { $line_cpm }.
planner-shaft-stiffer =
    Its shaft is { $by_cpm } stiffer than its line, { $line_cpm }{ $in_club_cpm ->
        [none] {""}
       *[other] , { $in_club_cpm } in the club
    }.
planner-shaft-softer =
    Its shaft is { $by_cpm } softer than its line, { $line_cpm }{ $in_club_cpm ->
        [none] {""}
       *[other] , { $in_club_cpm } in the club
    }.

# What planning jobs together brings over planning one after the other.
planner-brings-nothing = Planned together, these jobs come out no better than one after the other, the earliest due first.
planner-brings-built =
    Planned together, { $clubs ->
        [one] one club more can be built
       *[other] { $clubs } clubs more can be built
    } than one job after the other.
planner-brings-better = Planned together, these jobs come out better than one after the other: { PLAIN($more_inside, digits: 1, signed: 1) } clubs in tolerance, { MASS($more_tip_g, digits: 0, signed: 1) } in the tips.

# How a job stands against the day that it is due.
planner-due-here = all clubs can be built from what is here
planner-due-waits = complete on { WEEKDAY($complete_on) } { DAY($complete_on) }, in time
planner-due-late = complete on { WEEKDAY($complete_on) } { DAY($complete_on) }, too late for its day
planner-due-no-day = waits for parts that nobody has named a day for
planner-due-order = needs parts that are not ordered: here by { WEEKDAY($by_on) } { DAY($by_on) }
planner-due-order-late = needs parts that are not ordered, and should have them since { DAY($by_on) }
planner-due-cannot = cannot be built with these models: see what its plan says

# Parts of which there are fewer than the jobs want, and whom they go to.
planner-too-few-parts = { $parts } wanted, { $n } here
planner-goes-here = job { $job }, due { DAY($due_on) }, takes { $n } from here
planner-goes-waits = job { $job }, due { DAY($due_on) }, waits for { $n } of order { $order }, { $expected }
planner-goes-order = job { $job }, due { DAY($due_on) }, needs { $n } ordered, here by { DAY($by_on) }

# What to order.
planner-to-order-heads = { $parts } of { PLAIN($from_g) } to { $to_g }, here by { WEEKDAY($by_on) } { DAY($by_on) }, for job { $jobs }
planner-to-order-parts = { $parts }, here by { WEEKDAY($by_on) } { DAY($by_on) }, for job { $jobs }
