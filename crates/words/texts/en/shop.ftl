### Shop

# What is refused of the shop's settings.
shop-fault-scale-twice = two scales have the key { $key } or the port { $port }
    .next = Give each scale its own
shop-fault-scale-keys = the two scales need a key each, and not the same
    .next = Call them for example balance and mass
shop-fault-instrument-twice = two instruments have the key { $key }
    .next = Give each its own
shop-fault-check-weight-twice = two check weights have the key { $key }
    .next = Give each its own
gauge-fault-instrument-unnamed = an instrument needs a key and a name
    .next = Fill both in
gauge-fault-check-weight-unnamed = a check weight needs a key and a name
    .next = Fill both in
