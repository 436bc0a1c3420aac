### Part

# What is refused of a part.
part-fault-no-frequency = only a raw shaft has a frequency, and this is a { $kind } with { FIGURE($is_cpm) }. Leave it empty
part-fault-bad-count = { $code } has a count of { $n }
    .next = Give how many are in the box, from 0
part-fault-counted = { $code } is a { $kind } with a count
    .next = Heads and shafts are weighed one by one: give each its own row and code

# The fields of a part, as a word within a sentence or at the head of a column.
part-field-code = code
part-field-kind = kind
part-field-model = model
part-field-number = number
part-field-mass = mass
part-field-length = length
part-field-balance-point = balance point
part-field-cpm = frequency
part-field-tip-trimmed = off the tip
part-field-loft = loft
part-field-lie = lie
part-field-lot = lot
part-of-lot = lot { $lot }
part-field-owner = owner
part-field-place = place
part-field-state = state
part-field-count = count

# The same as the name of a box to type into.
part-label-code = Code on the label
part-label-kind = Kind
part-label-model = Model
part-label-number = Number
part-label-mass = Mass
part-label-length = Raw length
part-label-balance-point = Balance point from the butt
part-label-cpm = Frequency as received
part-label-loft = Loft as received
part-label-lie = Lie as received
part-label-lot = Lot
part-label-owner = Customer’s part
part-hint-owner = code of the customer; empty: the shop’s
part-label-place = Place
part-label-state = State
part-label-count = How many are left

# What stands under such a box.
part-hint-length = Empty: the model's length
part-hint-balance-point = Empty: the model's balance point
part-hint-cpm = The raw shaft in the shop's own clamp, with the shop's own weight at its tip
