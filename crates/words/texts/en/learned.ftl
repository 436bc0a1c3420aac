### Learned

# What is refused of the learned values.
learned-fault-unknown = nothing has been learned under “{ $key }”
    .next =
        { $known ->
            [none] Finish a job first: the shop learns from its readings
           *[other] Known are { $known }
        }

# What is refused of changing what the shop has learned.
learning-fault-nothing = the shop has learned nothing yet
    .next = Finish a job first: it learns from its readings
