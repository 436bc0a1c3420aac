### Command

# What is refused of loading the invented shop.
demo-fault-another-shop = { $place } holds another shop than the invented one, so nothing was changed
    .next = Leave --database out: the invented shop has a database of its own
