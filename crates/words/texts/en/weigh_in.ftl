### Weigh in

# What is refused of weighing a part in.
weigh-in-fault-no-mass = there is no mass to judge
    .next = Give mass_g, or mass as typed, for example 268.4
weigh-in-fault-changed = { $code } was changed or planned since it was weighed in
    .next = Open it under Stock and write there what is wrong with it
weigh-in-fault-bad-key = “{ $key }” cannot be a request key
    .next = Give 1 to 64 letters, digits and -, or leave it out
