### Bench

# What is refused of the steps of a job.
step-fault-no-steps = the job has no steps
    .next = Give at least one step, or leave the template out to take the shop's own
step-fault-bad-key = “{ $key }” cannot be a key: use small letters, digits and _, for example dry
step-fault-twice = the step “{ $key }” is given twice
    .next = Give each step its own key
