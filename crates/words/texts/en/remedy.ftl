### Remedy

# What is refused of something that is added to a finished plan.
extra-fault-no-plan = the { $number } has no plan
    .next = Plan the job first
extra-fault-not-added = { $action } cannot be added to a finished plan
    .next = Add lead_tape, powder, counterweight or screw; put another part in for the rest
