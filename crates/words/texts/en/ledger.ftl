### Ledger: everything that happened to the clubs of a job, and the chain that seals it

ledger-title = Ledger
ledger-link = Ledger
ledger-means = Everything that was read, glued and done, in the order in which it was written.
ledger-as-file = Ledger as a file
ledger-as-csv = Entries as CSV
ledger-parts = Parts
ledger-part-club = club
ledger-part-kind = part
ledger-part-name = model
ledger-part-code = code
ledger-part-mass = mass
ledger-part-lot = lot
ledger-batches = Adhesive
ledger-batch = batch
ledger-batch-adhesive = adhesive, lot
ledger-batch-usable = usable until
ledger-batch-handling = handling from
ledger-batch-cured = cured from
ledger-batch-clubs = clubs
ledger-margins = Margins against the Equipment Rules
ledger-margin-club = { CAPITAL($club) }: { $margin }
ledger-entries = Entries
ledger-entry = no.
ledger-when = when, who
ledger-club = club
ledger-what = what
ledger-read = read
ledger-expected = expected
ledger-difference = difference
ledger-note = remark
ledger-digest = seal
ledger-row = { $step }, { $what }
ledger-row-done = { $step }, done
ledger-by = { $at_at }, { $by }
ledger-about = { $kind }, no. { $entry }
ledger-of-batch = { $kind }, batch { $batch }
ledger-replaces = read again in place of no. { $entry }
ledger-changed = changed

# What an entry of the log says was done.
ledger-deed = { $deed ->
    [sheet_approved] sheet approved
    [sheet_of_customer] given to a customer
    [plan_accepted] plan accepted
    [plan_made_again] plan made again
    [plan_lost] plan lost with a part
    [part_swapped] part swapped
    [parts_exchanged] parts of two clubs exchanged
    [parts_exchange_undone] exchange taken back
    [tip_trimmed] tip trim changed
    [wraps_changed] wraps of tape changed
    [extra_added] extra added
    [part_weighed_in] part weighed in
    [part_taken_back] weigh-in taken back
    [part_changed] part changed
    [two_planes_read] plucked in two planes
    [shaft_profile_kept] shaft profile
    [batch_mixed] batch mixed
    [batch_taken_back] batch taken back
    [let_pass] cure overridden
    [passed_open] went on with something open
    [offer_declined] measurement declined
    [job_finished] last club handed over
    [job_dropped] job given up
    [nothing_learned] nothing learned from it
   *[other] entry of the log
 }

# The chain.
seal-short-intact = intact
seal-short-broken = not as it was sealed
seal-title = Seal
seal-intact =
    { $n ->
        [one] The one entry is as it was sealed.
       *[other] All { $n } entries are as they were sealed.
    }
seal-none = Nothing is sealed yet.
seal-broken =
    { $n ->
        [one] One thing is not as it was sealed.
       *[other] { $n } things are not as they were sealed.
    }
seal-late =
    { $n ->
        [one] The chain is kept from { $from_at } on. One entry is older: a change before then cannot be seen.
       *[other] The chain is kept from { $from_at } on. { $n } entries are older: a change before then cannot be seen.
    }
seal-end = End of the chain, SHA-256:
seal-proves = Keep this page: with these digits the shop can show later that nothing before this point was changed, removed or added.
seal-verify-by = Check it with:
seal-printed = The printed end is entry { $entry }: everything up to it is as it was printed.
seal-fault-line = no. { $entry }, { $kind }: { $fault } ({ $row })
seal-fault-line-unsealed = { $kind }: { $fault } ({ $row })
seal-fault-line-entry = no. { $entry }: { $fault }
seal-job-intact =
    { $n ->
        [one] Job { $job }: one entry, intact
       *[other] Job { $job }: { $n } entries, intact
    }
seal-job-broken = Job { $job }: not as it was sealed
seal-all-intact =
    { $n ->
        [one] One job, intact.
       *[other] { $n } jobs, all intact.
    }
seal-refusal-short-end = The printed end needs at least { $digits } of its digits, 0 to 9 and a to f
    .next = Type the first { $digits } digits from the ledger; blanks do not matter
command-fault-seal-broken =
    { $n ->
        [one] the record of one job is not as it was sealed
       *[other] the records of { $n } jobs are not as they were sealed
    }
    .next = Compare with a backup from before, and with a printed ledger

# Lists.
sealed-reading = reading
sealed-reading-taken-back = reading taken back
sealed-reading-insisted = reading stood by
sealed-event = entry of the log
sealed-batch = batch mixed
sealed-batch-club = club glued
sealed-batch-taken-back = batch taken back
sealed-finished-club = club finished
sealed-job-club = sheet and plan at the end
seal-fault-changed = changed since it was sealed
seal-fault-gone = removed
seal-fault-added = added without a seal
seal-fault-seal-changed = its seal was changed
seal-fault-seal-gone = its seal was removed
seal-fault-other-end = the chain has no such end
doubt-end-stood-by = stood by
doubt-end-read-again = read again
doubt-end-taken-back = taken back
doubt-end-open = still doubted
