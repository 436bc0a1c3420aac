### Plan

# What is refused of the parts that were chosen for a club.
pick-fault-not-free = { $code } is not free for this
    .next = Plan again: the stock has changed
pick-fault-missing = the { $number } has no { $kind }
    .next = Give the code of a { $kind }, or leave the club out
pick-fault-tip-weight-too-wide = { $code } does not go into a tip of { LENGTH($tip_mm, digits: 3) }
    .next = Choose a weight of the tray that fits the bore
pick-fault-shaft-too-short = shaft { $code } is too short for the { $number }, or too much is off its tip
    .next = Choose a longer blank
pick-fault-other-hand = { $code } is a { $hand } head, and the set is { $wanted }
    .next = Choose a head of the set's hand
pick-fault-other-number =
    { $is ->
        [none] { $code } has no number, and this club is the { $number }
       *[other] { $code } is a { $is }, and this club is the { $number }
    }
    .next = Choose a head of this number
pick-fault-adapter-misfit = adapter { $code } does not fit { $head }
    .next = Choose an adapter made for this head
pick-fault-adapter-missing = { $head } takes an adapter, and the { $number } has none
    .next = Give the code of an adapter that fits it
pick-fault-tip-misfit = the { LENGTH($tip_mm, digits: 3) } tip of { $code } does not go with the bore of { LENGTH($bore_mm, digits: 3) }
    .next = Choose a shaft whose tip fits the bore
pick-fault-other-blank =
    { $blank ->
        [none] { $code } is not a blank for this club
       *[other] { $code } is a blank for the { $blank }
    }
    .next = Choose the number's own blank, or a neighbour's where the model allows it

# Why a part cannot be kept for a club.
lock-fault-no-club = { $code } cannot be kept for club { $slot } of the tray: there is no such club
    .next = Choose another part, or take the lock away
lock-fault-not-free = { $code } cannot be kept for club { $slot } of the tray: it is not a free head, shaft, grip or adapter
    .next = Choose another part, or take the lock away
lock-fault-twice = { $code } is locked to two clubs of the tray: { $slot } and { $other }
    .next = Remove one of the two locks
lock-fault-no-adapter = { $code } cannot be kept for club { $slot } of the tray: its head takes no adapter
    .next = Choose another part, or take the lock away
lock-fault-misfit = { $code } cannot be kept for club { $slot } of the tray: it does not fit there
    .next = Choose another part, or take the lock away

# What is refused of a plan for the day.
day-fault-no-job = there is no job to plan
    .next = Approve a sheet first: its job waits for a plan then

# What is refused of a job.
job-fault-already = job { $job } is { $state } already
    .next = Nothing needs to be done

# What is refused of a plan.
plan-fault-stock-changed = the stock changed since this plan was proposed
    .next = Look at the new plan, then accept it
plan-fault-lacking = no parts for { $clubs }
    .next = Order what is missing, or accept the plan for the others only
plan-fault-no-plan = club { $slot } of job { $job } has no plan
    .next = Plan the job first
plan-fault-needs-part = a club needs its { $kind }
    .next = Give the code of the one to take
plan-fault-too-many = { $code } is more than one club takes
    .next = Give one code, or two tip weights joined by +
plan-fault-not-free = { $code } is a { $kind } and { $state }
    .next = Choose a free { $wanted }
plan-fault-on-another = that { $kind } is on the { $number } already
    .next = Choose a free { $kind }
plan-fault-missing = the plan has no { $kind }
    .next = Plan the job again
plan-fault-at-bench = job { $job } is { $state } already
    .next = Change single parts at the bench, or drop the job and approve its sheet again

# What an accepted plan should have and has not.
plan-lacks-part = the plan of the { $number } has no { $kind }
    .next = Plan the job again
