### Record: what was built, against the sheet and the reference club

record-title = Record
record-titles = Records
record-crumb = Job { $job } · { $player } · { $state }
record-job-of = Job { $job } · { $player }

# The list of records.
record-learned = What the shop has learned
record-none = No records yet.
record-none-next = A record grows with the readings of a job.
record-finished = Finished
record-finished-jobs = Finished jobs
record-earlier = Earlier ones
record-at-bench = At the bench, so far
record-at-bench-jobs = Jobs at the bench
record-head-job = job
record-head-clubs = clubs
record-head-finished = finished
record-head-due = due

# The set.
record-as-file = Record as a file
record-shop = shop
record-player = player
record-player-hand = { $player }, { $hand }
record-due = due
record-set = set
record-made-by = made by
record-last-reading = last reading
record-reference = reference club
record-reference-read-on = read on { $scale }
record-adhesive = adhesive
record-batch = batch { $batch }, { $adhesive }, lot { $lot }, mixed { $mixed_at } by { $by }
record-batch-cold = started at { PLAIN($room_c, digits: 0) } °C, colder than the product's sheet: { $reason }
record-batch-taken-back = taken back: { $reason }
record-more = { $a }; { $b }

# A club: what the sheet asks and what was built.
record-club = { CAPITAL($club) }
record-card = card { $card }
record-club-lines = { $club }: target and as built
record-value = value
record-sheet = sheet
record-built = built
record-verdict = verdict
record-off-by = off by
record-tolerance = tolerance
record-chance = chance of in
record-within-set = { $what }, within the set
record-not-read = not read
record-chance-over = > 99.9 %
record-chance-under = < 0.1 %
record-chance-share = { PERCENT($of_share, digits: 1) }
record-chance-whole = { PERCENT($of_share) }
record-plus-minus = ± { $figure }

# How far inside the tolerance a swing weight is called in; on the screen, not on paper.
record-called-in = Called in within { POINTS($within_points, digits: 2) } of the target.
record-never-in = Not certain enough to call it in. Re-seat and read again, or check the scale.
verdict-reach-again =
    { $n ->
        [one] too close to call it in: seat the club again and read its swing weight once more
       *[other] too close to call it in: seat the club again and read its swing weight { $n } more times
    }
verdict-reach-check-weight =
    { $n ->
        [one] too close to call it in: read the check weight once on this scale, which settles it
       *[other] too close to call it in: read the check weight { $n } times on this scale, which settles it
    }
verdict-reach-reference =
    { $n ->
        [one] too close to call it in: read the reference club once on this scale, which settles it
       *[other] too close to call it in: read the reference club { $n } times on this scale, which settles it
    }
verdict-reach-too-near = { $inside_points } inside the edge of its tolerance: too near for any reading to call it in
verdict-reach-never = the shop’s readings are not certain enough to call a club in at this tolerance: read a check weight, or ask for a wider tolerance

# Its parts.
record-parts = Parts: { $parts }.
record-part-name = { $kind } { $name }
record-part = { $name } ({ $code }), { $mass_g }
record-part-lot = { $name } ({ $code }), { $mass_g }, lot { $lot }
record-part-came = { $kind } as it came, { $mass_g }
record-part-came-unweighed = { $kind } as it came, not weighed
record-lengths-built = Length { LENGTH($to_cap_mm, digits: 2) } to the cap, { LENGTH($to_shaft_end_mm, digits: 2) } to the shaft end, { LENGTH($by_rules_mm, digits: 2) } as the rules measure it. The sheet's length is { $sheet_to }.
record-lengths-asked = Length as asked, not measured: { LENGTH($to_cap_mm, digits: 2) } to the cap, { LENGTH($to_shaft_end_mm, digits: 2) } to the shaft end, { LENGTH($by_rules_mm, digits: 2) } as the rules measure it. The sheet's length is { $sheet_to }.
record-cut = Shaft cut to { $cut_mm }.
record-glued =
    { $n ->
        [one] Glued from batch { $batches }.
       *[other] Glued from batches { $batches }.
    }

# Where somebody went on before the cure, or with something open.
record-override-tag = override
record-override-batch = Cure of batch { $batch } overridden, { $strength }: { $reason } ({ $by }, { $at_at })
record-override = Override at “{ $step }”: { $reason } ({ $by }, { $at_at })
record-open-tag = with something open
record-open = “{ $step }” with { $points }: { $reason } ({ $by }, { $at_at })

record-margins = Margins against the Equipment Rules
record-margins-means = Measured margins only. Whether a club may be played is for the governing bodies to rule.

# All readings of a club.
record-readings = All readings
record-reading = { $step }, { $what }: <b>{ $read }</b>
record-step-done = { $step }: <b>done</b>
record-reading-expected = expected { $forecast }, { $difference }
record-doubted = doubted
record-stood-by = stood by
record-reading-taken-back = taken back: { $reason }
record-by = { $by }, { $at_at }
