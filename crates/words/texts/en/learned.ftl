### Learned

# What is refused of the learned values.
learned-fault-unknown = nothing has been learned under “{ $key }”
    .next =
        { $known ->
            [none] Finish a job first: the shop learns from its readings
           *[other] Known are { $known }
        }
