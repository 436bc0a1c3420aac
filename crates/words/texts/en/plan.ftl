### Plan: the pages of one job's plan, of plans to choose from, of a day; the job cards

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
pick-fault-no-such-screw = no screw of a { $head } weighs { MASS($more_g, signed: 1) } against the one that it comes with
    .next = Choose one of the screws that its model names
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

plan-page = Plan
plan-job = Job { $job } · { $player }
plan-job-line = Job { $job } · { $player } · { $clubs }
plan-job-state = Job { $job } · { $player } · { $state }

# The list of jobs.
plan-nothing = Nothing to plan.
plan-nothing-next = Approve a fitting sheet and its job appears here.
plan-sheets = Open sheets
plan-to-plan = To plan
plan-together = Plan these together
plan-planned = Planned, parts held

# Giving a job up.
plan-drop = Give up this job
plan-drop-why = Why? The record keeps the reason.
plan-drop-button = Give up and free the parts

# The plan of a job.
plan-without-locks = Plan without the locks
plan-missing = Missing parts
plan-instead = Other parts that would do
plan-see-job = See job { $job }
plan-neighbour-why = Why the blank of a neighbouring number? The job keeps the reason.
plan-partly = Plan the other clubs; leave out what is missing
plan-hold = Hold these parts
plan-other-plans = Choose from other plans
plan-lock-by-code = Lock a part to a club by its code
plan-lock-field = Slot and code, for example 3:H-0412, 5:S-0031
plan-again-button = Plan again
plan-none = No club of this job can be built from the stock.
plan-none-next = Weigh in the missing parts, then plan again.
plan-stock = Open stock
plan-frequency = Frequency of the shafts
plan-why = Why these parts
plan-beams = Each club on the beam
plan-to-bench = Go to the bench
plan-cards = Job cards
plan-again = Plan again

# What is proven of a plan.
plan-proven = Proven: no other choice of these parts comes out better, first by the chance of finishing in tolerance, then by grams in the tip, then by even shafts.
plan-proven-with-line = Proven: no other choice of these parts comes out better, first by the chance of finishing in tolerance, then by grams in the tip, then by shafts on their frequency line, then by even shafts.
plan-best-so-far = Best found so far; at most { PLAIN($clubs, digits: 3) } clubs better is possible.

# A part in the table: a touch locks it to its club.
plan-kept = { $code } locked
plan-kept-for = { $code }, locked to place { $slot }
plan-keep-for = { $code }, lock to place { $slot }
plan-kept-title = Locked here; touch to unlock
plan-keep-title = Touch to lock it here
plan-no-part = none
plan-part-stays = stays
plan-screw = screw { $screw }
plan-not-weighed = (not weighed)
plan-on-line = on its line
plan-stiff = { $by_cpm } stiff
plan-soft = { $by_cpm } soft
plan-reading = { LETTER($expected_points) } ± { PLAIN($band_points) }

plan-parts = Parts
plan-parts-caption = Parts of each club
plan-column-club = club
plan-column-tip = in the tip
plan-column-target = target
plan-column-planned = as planned

plan-cut-list = Cut list
plan-cut-list-caption = Cuts of each club
plan-bend-list = Bend
plan-column-off-tip = off the tip
plan-column-off-butt = off the butt
plan-column-cut-shaft = cut shaft
plan-column-cut-weight = should weigh
plan-column-bend = bend loft / lie
plan-no-trim = nothing
plan-cut-list-hint = Cut lengths allow for each head's bore depth. Or: trim the tip, dry-fit the head to the bottom of its bore, sole it, mark the sheet's length at the butt, then cut.

# The job card.
plan-cards-print = Print this page: one card for each club; it stays in the tray. <a>Back to the plan</a>
plan-cards-paper = Paper
plan-cards-four = Four on a sheet
plan-cards-one = One on an A6 card
plan-card-part = { $code } ({ $part_g })
plan-card-length = length
plan-card-length-to = { $length_mm }, { $end }
plan-card-wraps = wraps
plan-card-wraps-are = { $base } base, { $full } full, { $lower } lower hand
plan-card-labels = labels
plan-card-labels-are = grip { $grip }, shaft { $shaft }
plan-card-facing-any = as it comes
plan-card-soft-side = soft side
plan-card-soft-side-any = not asked
plan-card-set = angles
plan-card-set-is = { $set }; loft { $loft_deg }, lie { $lie_deg } asked
plan-card-bend = bend
plan-card-bend-is = loft { ANGLE($bend_loft_deg, signed: 1) } to { $loft_deg }, lie { ANGLE($bend_lie_deg, signed: 1) } to { $lie_deg }
plan-card-caution = No swing before the adhesive maker's full cure.

# Plans to choose from.
plan-choice = Plans to choose from
plan-choice-planned = This job has its plan.
plan-choice-planned-next = Plan it again to change it.
plan-choice-hint = Less weight in the tips, or closer to the target; and one plan by the other law, where every club swings with the same inertia.
plan-choice-across = weight in all tips ({ $sign })
plan-choice-up = points off, the worst club
plan-choice-told = plan { $plan }: { $tip_g } in all tips, the worst club { POINTS($worst_points, digits: 2) } off
plan-option = { $plan }: { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off
plan-option-inertia = { $plan }: { $tip_g } in the tips, worst { POINTS($worst_points, digits: 2) } off, equal inertia
plan-option-inside = { PLAIN($inside) } of { $clubs } clubs expected in tolerance.
plan-option-still-to-come = The readings and the choice of grips are still to come.
plan-option-off-line = Shafts at most { $worst_cpm } off their line.
plan-option-target = { $club } { LETTER($asked_points) }
plan-option-targets = Swing weights asked: { $asked }.
plan-option-why = Why another law than the sheet's? The job keeps the reason.

# A plan made again around what is done.
plan-again-hint = Parts that are cut, glued or gripped stay. Nothing changes until you accept.
plan-again-best = Best possible
plan-again-best-next = No other choice of the free parts does better.
plan-again-doubt = In doubt
plan-again-doubt-next = { $clubs }: a reading is in doubt and does not count here. Settle it <a>at the bench</a> first.
plan-again-changes = Changes
plan-again-inside = { PLAIN($now) } clubs expected in tolerance as it is, { PLAIN($then) } with the changes.
plan-again-accept = Make these changes
plan-back = Back to the plan

# A day's jobs together.
plan-day = Plan the day
plan-day-none = No job waits for a plan.
plan-day-jobs =
    { $n ->
        [one] 1 job on one stock
       *[other] { $n } jobs on one stock
    }
plan-job-due = Job { $job } · { $player } · due { $due_on }
plan-day-parts = Parts of { $clubs }
plan-day-enough = Take the best so far
plan-day-look-again = Look again
plan-day-longer = Search longer:
plan-day-seconds = { $seconds } s
plan-day-searching = Searching, { $now } of { $of } s.
plan-day-searching-within = Searching, { $now } of { $of } s: within { PERCENT($gap_share, digits: 1) } of the best possible.
plan-day-proven = Proven: no other choice of these parts comes out better over all jobs, the most urgent first.
plan-day-as-good = No other choice of these parts is better by as much as 0.1 %, over all jobs, the most urgent first.
plan-day-best = The best plan so far over all jobs, the most urgent first.
plan-day-best-within = The best plan so far over all jobs, the most urgent first; proven to be within { PERCENT($gap_share, digits: 1) } of the best possible.
plan-day-in-turn = The plain plan: each job in its turn, the earliest due first, takes what suits it best of what is left.
plan-day-better-comes = The search goes on; a better plan appears here.

# What planning together brings.
plan-worth = What planning together brings
plan-worth-caption = Planned together and one after the other
plan-worth-column-job = job
plan-worth-column-unbuilt = clubs unbuilt
plan-worth-column-inside = in tolerance
plan-worth-column-tip = in the tips
plan-worth-together = together
plan-worth-in-turn = in turn
plan-worth-both = { $together } / { $in_turn }
plan-worth-inside = { PLAIN($together, digits: 1) } / { PLAIN($in_turn, digits: 1) }
plan-worth-all = all jobs
plan-worth-hint = Together / one after the other, the earliest due first. Clubs in tolerance are expected, with the readings and the choice of grips still to come.
plan-worth-take-plain = Show the plain plan
plan-worth-take-together = Show the plan for all together

# Which due dates hold.
plan-due = Due dates
plan-due-all-here = All clubs of all jobs can be built from what is here.
plan-due-whole = All clubs of { $n ->
        [one] job
       *[other] jobs
    } { $jobs } can be built from what is here: the earliest due first, then what can be built beside it.
plan-due-whole-none = No job can be built whole from what is here.
plan-due-not-proven = The search was short: a job that is not named may still be possible.
plan-due-in-the-way = Left for later, job { $job } would let jobs { $builds } be built whole from what is here.
plan-due-mark-here = here
plan-due-mark-waits = waits
plan-due-mark-order = order
plan-due-mark-late = late
plan-due-mark-cannot = cannot
plan-due-scarce = Too few for all
plan-due-to-order = To order, so that most due dates hold
plan-due-hint = Parts must be here the day before a job is due. What is on order counts as its model says until it is weighed.
