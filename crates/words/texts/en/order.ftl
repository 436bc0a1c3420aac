### Order

# What is refused of an order.
order-fault-masses-backwards = the masses asked for run from { FIGURE($from_g) } to { FIGURE($to_g) }
    .next = Give the lightest first, then the heaviest
order-fault-expected-too-early = it is expected on { $expected_on }, before it was ordered on { $ordered_on }
    .next = Check the two days
order-fault-too-long = the supplier or the remark is too long
    .next = Use fewer words: at most 200 letters for the supplier, 2000 for the remark
order-fault-more-for-jobs = { $for_jobs } are meant for jobs, and { $ordered } are ordered
    .next = Order more, or name fewer for the jobs
order-fault-bad-count = { $n } is not a number of parts
    .next = Give a whole number from 1 to { $most }

# What is refused of placing and booking in orders.
order-refused-nothing = nothing is ordered
    .next = Name at least one part
order-refused-job-waits-not = job { $job } is { $state } and waits for nothing
    .next = Order without naming it, or name another
order-refused-nothing-to-come = nothing of order { $order } is still to come: it is { $state }
    .next = Nothing needs to be done
order-refused-nothing-changed = nothing was changed
    .next = Give another supplier, another day or a remark
order-refused-job-lacks-nothing = job { $job } lacks nothing that is not ordered already
    .next = Look at its plan and at the orders
order-refused-job-lacks-nothing-as = job { $job } is { $state } and lacks nothing
    .next = Look at the orders of another job
order-refused-stale = order { $order } was changed on another screen in the meantime, or sent twice
    .next = Nothing was booked in. Look at what changed, then enter it again
order-refused-other-kind = { $model } is a { $kind }, and order { $order } is of a { $wanted }
    .next = Choose what came, or book it in by weighing it in
order-refused-number-missing = no number is given for { $model }
    .next = Give one of { $known }
order-refused-no-number = a { $kind } { $model } has no number
    .next = Leave the number out
order-refused-unknown-number = { $model } has no number { $number }
    .next = Give one of { $known }

# What is asked before parts of an order are booked in.
order-ask-cancelled =
    { $note ->
        [none] order { $order } was cancelled by { $by }
       *[other] order { $order } was cancelled by { $by } (“{ $note }”)
    }
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-closed-short =
    { $note ->
        [none] order { $order } was closed short by { $by }
       *[other] order { $order } was closed short by { $by } (“{ $note }”)
    }
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-all-here = all of order { $order } are here already
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-more = { $n } are more than the { $open } of order { $order } that are still to come
    .next = If they came all the same, confirm it, and they are booked in; else check the count
