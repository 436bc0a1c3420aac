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
