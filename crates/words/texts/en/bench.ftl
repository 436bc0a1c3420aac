### The bench

# What is refused of the steps of a job.
step-fault-no-steps = the job has no steps
    .next = Give at least one step, or leave the template out to take the shop's own
step-fault-bad-key = “{ $key }” cannot be a key: use small letters, digits and _, for example dry
step-fault-twice = the step “{ $key }” is given twice
    .next = Give each step its own key

# What is refused of a scanned part.
scan-fault-for-good = the { $kind } of this { $number } is on it for good
    .next = Nothing was changed. Put the scanned one back to the stock

bench-title = Bench
bench-empty = No job is at the bench.
bench-empty-next = A job comes here when its plan is accepted.
bench-plan = Plan a job
bench-job = Job { $job } · { $player } · { $clubs }
bench-crumb = Job { $job } · { $player } · { $read } of { $n } clubs done here
bench-no-parts = This club has no parts yet.
bench-no-parts-next = Parts were missing when the job was planned.
bench-to-stock = Stock

# The one decision of a screen.
bench-decision = { $club } · { $step }
bench-finish = finish { LETTER($finish_points) } ± { PLAIN($band_points) }
bench-entry = { CAPITAL($what) }
bench-keep = Keep
bench-done = Done
bench-next-club = next club
bench-next = Next: { $number }
bench-solvent-wet = solvent still wet
bench-ferrule-on = ferrule on
# Where the forecast is too wide to see a missing one.
bench-ferrule-look = ferrule on: look, the forecast is too wide to tell
bench-glued = Glued. <a>Its clocks</a>
bench-mix = Mix a batch
bench-waits = Waits for { $strength } until { $until_at }.
bench-not-glued = Not glued yet: this step needs the joint.
bench-override = Override
bench-why = Why? The record keeps it.
bench-open-here = Open on this club
bench-open-reason = Why go on? The record keeps it
bench-open-others =
    { $n ->
        [one] and on { $n } other
       *[other] and on { $n } others
    }

# What an entry is held against.
bench-was-read = read: { $read }
bench-was-read-off = read: { $read }, { $off } from expected

# The readings of a club.
bench-readings = Readings of this club
bench-reading = { $step }, { $what }: <b>{ $read }</b>
bench-taken-back = taken back: { $why }
bench-read-again = read again since
bench-expected = expected { $expected }, { $off }
bench-doubted = doubted
bench-insisted = stood by
bench-read-by = { $by }, { $read_at }
bench-take-back = Take back
bench-insist = I stand by it
bench-count = Count it

# The row of clubs, and the table of one step across the set.
row-title = Clubs of the set
row-all = All
row-done = done
row-unknown = not read yet
row-within = within
row-off = off target
row-doubted = doubted
row-club = club
row-expected = expected
row-reading = reading
row-meaning = what it means
