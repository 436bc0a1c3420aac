### Bench

# What is refused of the steps of a job.
step-fault-no-steps = the job has no steps
    .next = Give at least one step, or leave the template out to take the shop's own
step-fault-bad-key = “{ $key }” cannot be a key: use small letters, digits and _, for example dry
step-fault-twice = the step “{ $key }” is given twice
    .next = Give each step its own key

# What is refused of a scanned part.
scan-fault-for-good = the { $kind } of this { $number } is on it for good
    .next = Nothing was changed. Put the scanned one back to the stock
