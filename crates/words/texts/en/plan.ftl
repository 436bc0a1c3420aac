### Plan: the pages of one job's plan, of plans to choose from, of a day; the job cards

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
plan-column-off-tip = off the tip
plan-column-off-butt = off the butt
plan-column-cut-shaft = cut shaft
plan-column-cut-weight = should weigh
plan-column-bend = bend loft / lie
plan-no-trim = nothing
plan-cut-list-hint = Cut lengths allow for each head's bore depth. Or: trim the tip, dry-fit the head to the bottom of its bore, sole it, mark the sheet's length at the butt, then cut.

# The job card.
plan-cards-print = Print this page: one card for each club; it stays in the tray. <a>Back to the plan</a>
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
plan-day-best = The best plan so far over all jobs, the most urgent first.
plan-day-best-within = The best plan so far over all jobs, the most urgent first; proven to be within { PERCENT($gap_share, digits: 1) } of the best possible.
plan-day-better-comes = The search goes on; a better plan appears here.
