### Today: what to do now

today-title = Today
today-jobs-earliest-first =
    { $n ->
        [one] 1 job
       *[other] { $n } jobs, the earliest due first
    }

# Jobs.
today-jobs = Jobs
today-jobs-under-way = Jobs under way
today-no-job = No job is under way.
today-no-job-next = Approve a fitting sheet and its job appears here.
today-new-sheet = New sheet
today-job = job
today-do-next = do next
today-due = due
today-clubs = clubs
today-job-number = Job { $job }
today-job-of = Job { $job } · { $player }
today-step-clubs =
    { $n ->
        [one] { $step }: { $n } club
       *[other] { $step }: { $n } clubs
    }
# The clubs of a step whose joint is not strong enough yet.
today-cures-today =
    { $n ->
        [one] { $n } club cures until { CLOCK($until_at) }
       *[other] { $n } clubs cure until { CLOCK($until_at) }
    }
today-cures-tomorrow =
    { $n ->
        [one] { $n } club cures until { CLOCK($until_at) } tomorrow
       *[other] { $n } clubs cure until { CLOCK($until_at) } tomorrow
    }
today-cures-later =
    { $n ->
        [one] { $n } club cures until { CLOCK($until_at) } on { DAY($until_at) }
       *[other] { $n } clubs cure until { CLOCK($until_at) } on { DAY($until_at) }
    }
today-hand-over = hand over
today-choose-parts = choose the parts

# A date that is near or past.
today-days-late =
    { $days ->
        [one] { $days } day late
       *[other] { $days } days late
    }
today-due-today = today
today-due-in =
    { $days ->
        [one] in { $days } day
       *[other] in { $days } days
    }

# Where to start, and what is to be seen to.
today-start = Start here
today-start-doubt = Job { $job }: look at the { $club } again
today-start-step =
    { $n ->
        [one] Job { $job }: { $step }, { $n } club
       *[other] Job { $job }: { $step }, { $n } clubs
    }
today-start-plan = Job { $job }: choose the parts
today-start-scale = Check the { $scale }
today-start-cures = Job { $job }: { $cures }.
today-start-nothing = Nothing else waits for you meanwhile.
today-see-to =
    { $n ->
        [one] 1 thing to see to
       *[other] { $n } things to see to
    }

# Doubted readings.
today-look-again = Look again
today-doubted = doubted
today-club-of-job = Job { $job }, { $club }

# Scales.
today-scales = Scales
today-all-scales = All scales
today-not-trusted = not trusted
today-not-checked = not checked
today-scale-read = { CAPITAL($scale) }: read today and not checked
today-scale-due = { CAPITAL($scale) }: check it before the first reading
today-check-scale = Check it

# Batches that cure.
today-curing = Curing
today-all-batches = All batches
today-batches = Batches that cure
today-batch = batch
today-batch-of = { $batch } · { $adhesive }
today-pot-life = pot life
today-handle = handle
today-swing = bend and swing
today-now = now

# The clock.
today-clock = Clock
today-clock-not-relied-on = not relied on
today-clock-right = The clock is right
today-clock-how = How did you check it? The log keeps it.
today-clock-rely = Rely on the clock

# The way from an empty shop to the first club.
today-guide = To the first club
today-guide-done = done
today-guide-models = Models
today-guide-models-how = Head, shaft, grip, adhesive and tape: usual figures to begin with, or the makers’ own
today-guide-told = What you know
today-guide-told-how = What a joint, a grip, a wrap and a ferrule do to the swing weight in your shop; skip it if you have no figure
today-guide-parts = Parts
today-guide-parts-how = Weigh in the parts on the shelf, or read a list
today-guide-sheet = Sheet
today-guide-sheet-how = What the player gets; a short sheet is enough
today-guide-approve = Approve it
today-guide-approve-how = The sheet becomes a job
today-guide-plan = Plan
today-guide-plan-how = Which part goes into which club; hold the parts
today-guide-bench = Bench
today-guide-bench-how = Take the first reading
today-guide-ends = The guide goes away with the first reading. The name of whoever is at this tablet, and the scales, are under <a>Shop</a>.

# A field for a hand scanner or a code typed by hand.
today-scan = Scan a code, or type a name, a job, a lot or an order
today-scan-example = Scan, or type a name, job 1, a code
today-scan-open = Open
