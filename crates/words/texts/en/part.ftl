### Part

# What is refused of a part.
part-fault-no-frequency = only a raw shaft has a frequency, and this is a { $kind } with { FIGURE($is_cpm) }. Leave it empty
part-fault-bad-count = { $code } has a count of { $n }
    .next = Give how many are in the box, from 0
part-fault-counted = { $code } is a { $kind } with a count
    .next = Heads and shafts are weighed one by one: give each its own row and code
