### Command: what the program prints at a terminal


# `setwright record`.
command-record-job = Job { $job }, { $player }, { $state }
command-record-due = { $shop }, { $hand }, due { $due_on }
command-record-club = { CAPITAL($club) }, card { $card }: { $parts }
command-record-part = { $kind } { $code }
command-record-unplanned = not planned yet
command-record-sheet = sheet
command-record-built = built
command-record-off-by = off by
command-none = -

# A plan.
command-plan-column-club = club
command-plan-column-head = head
command-plan-column-shaft = shaft
command-plan-column-grip = grip
command-plan-column-adapter = adapter
command-plan-column-tip = tip weight
command-plan-column-off-tip = off the tip
command-plan-column-off-butt = off the butt
command-plan-column-cut-to = cut to
command-plan-column-dry = reads dry
command-plan-column-finish = finishes
command-plan-column-sheet = sheet
command-plan-missing = Missing for the { club-number }: { $lack }
command-plan-frequency = The { $club }: { $shaft }
command-plan-proven = Proven best for the stated cost.
command-plan-best = Best found so far.
command-plan-held = The parts are held.
command-plan-choosing = choosing parts
command-lock-wrong = “{ $typed }” is not SLOT:CODE. For example --keep 3:H-0412

# Matching one sheet, or a day's jobs.
command-match-club =
    head { $head ->
        [none] none
       *[other] { $head }
    }  shaft { $shaft ->
        [none] none
       *[other] { $shaft }
    }  grip { $grip ->
        [none] none
       *[other] { $grip }
    }{ $adapter ->
        [none] {""}
       *[other] {"  "}adapter { $adapter }
    }  tip { $tip_g }{ $off_cpm ->
        [none] {""}
       *[other] {"  "}{ CPM($off_cpm, signed: 1) }
    }  { $chance }
command-match-or = or { $other }
command-match-job = Job { $job }, { $player } (counts { PLAIN($priority, digits: 2) })
command-match-options = To choose from:
command-match-option-swing-weight =
    { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off{ $worst_cpm ->
        [none] {""}
       *[other] , shafts at most { $worst_cpm } off
    }
command-match-option-inertia =
    { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off{ $worst_cpm ->
        [none] {""}
       *[other] , shafts at most { $worst_cpm } off
    }, equal inertia
command-match-proven = Cost { PLAIN($cost, digits: 4) }, proven: no choice of these parts costs less.
command-match-bound = Cost { PLAIN($cost, digits: 4) }, proven at least { PLAIN($bound, digits: 4) }: at most { PERCENT($gap_share, digits: 1) } better is possible.
command-match-watch = { PLAIN($seconds) } s: cost { PLAIN($cost, digits: 4) }, proven at least { PLAIN($bound, digits: 4) }. Ctrl-C: enough

# What can be done about a club.
command-advise-club = Club { $slot }: as planned { $chance }.
command-advise-no-plan = Club { $slot } has no plan yet. Accept one with `setwright plan { $job } --accept`.
command-advise-grip = Grip { $code } ({ $grip_g }) for club { $slot }.

# Orders and needs.
command-order-day = “{ $typed }” is not a date. Write it like 2026-03-10
command-order-for = “{ $typed }” is not JOB:COUNT. For example --for 3:2
command-order-here = { $received } of { $count }
command-order-column-order = order
command-order-column-what = what
command-order-column-here = here
command-order-column-masses = masses
command-order-column-job = for job
command-order-column-supplier = of
command-order-column-expected = expected
command-order-column-state = { "" }
command-order-lacks-nothing = Job { $job } lacks nothing.
command-order-wanted =
    { $n } × { $kind } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }{ $masses ->
        [none] {""}
       *[other] , { $masses }
    }; { $ordered } ordered
command-order-weigh-in = Weigh in { $n } of { $model }.
command-need-to-order = to order

# Parts sorted by weight; heads to order by weight.
command-sort-sum = { $n } parts, mean { $mean_g }, scatter { MASS($scatter_g, digits: 2) }
command-sort-not-weighed = Not weighed: { $codes }
command-ask-share = { PERCENT($inside_share, digits: 1) }
command-ask-column-head = head
command-ask-column-swing-weight = swing weight
command-ask-column-masses = heads of
command-ask-column-supply = theirs
command-ask-column-inside = usable
command-ask-column-any-shaft = any shaft
command-ask-column-order = order for one
