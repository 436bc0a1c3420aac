### The shop: what it says of itself, its steps, who is at the tablet

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

# The names of a new shop, which it may change.
shop-new = My shop
shop-new-balance-scale = balance scale
shop-new-gram-scale = gram scale
shop-title = Shop
shop-kept = Saved.
shop-kept-next = Open jobs keep the steps they began with.
shop-keep = Save

# Who is at this tablet.
shop-who = Who is at this tablet
shop-who-hint = Your name goes beside every reading made here
shop-units = Units
shop-units-hint = You may always type another unit with the figure
shop-units-as-before = as this name did before
shop-units-in-g = inches and grams
shop-units-mm-g = millimetres and grams
shop-units-in-oz = inches and ounces
shop-units-mm-oz = millimetres and ounces
shop-serial = Scales on a serial line

# What the shop says of itself.
shop-name = Name of the shop
shop-room = Room
shop-room-unit = °C
shop-room-hint = For pot life and cure
shop-none = none
shop-adhesive = Own adhesive
shop-tape = Own tape
shop-where-none = Used where a sheet names none
shop-tip-cap = Most in one tip
shop-tip-cap-hint = Beyond it another head is the better answer; many shops: 8 to 10
shop-spacers = Spacers in the mix
shop-spacers-unit = % by mass
shop-spacers-hint = They keep the bond line even

shop-scales = Scales and check weight
shop-balance-scale = Balance scale
shop-mass-scale = Gram scale
shop-scale-name = Name
shop-scale-step = Step of its display
shop-scale-step-hint = The smallest change that it shows
shop-scale-noise = Scatter
shop-scale-noise-hint = Take the club off and on again ten times: how far single readings are from their mean (one standard deviation)
shop-scale-offset = May be off by
shop-scale-offset-hint = How far off it may be on a given day after zeroing, the same for every club (one standard deviation)
shop-scale-drift = Wanders in an hour
shop-scale-drift-hint = How far it wanders to and fro in an hour of work (one standard deviation); 0 if it does not
shop-scale-day-drift = Drifts in a day
shop-scale-day-drift-hint = How far it may drift one way from morning to evening (one standard deviation). Leave empty to begin with 0.15; the shop’s own readings correct it
shop-check-weight = Check weight of the balance scale
shop-check-name-hint = Leave empty if you have none. Ideally a club kept only for this
shop-check-value = Should read
shop-check-value-hint = For example D1.4
shop-check-sd = Uncertainty (1 SD)
shop-check-sd-hint = Typically 0.05
shop-check-mass = Mass

shop-weights = What counts in a plan
shop-weights-about = Finishing in tolerance comes first: 100 is a club that is sure to miss it. The rest is weighed against that; higher values avoid it more; 0 ignores it.
shop-weights-unit = of 100
shop-weight-tip-per-g = A gram in the tip
shop-weight-tip-per-g-hint = In each club
shop-weight-second-tip = A second weight
shop-weight-second-tip-hint = Two weights in one tip, beside their grams
shop-weight-mass-per-g = A gram of whole mass
shop-weight-mass-per-g-hint = Off the sheet's, where it asks for one
shop-weight-cpm-per-tolerance = Frequency
shop-weight-cpm-per-tolerance-hint = A shaft one tolerance off its line, where the shop measures it
shop-weight-shaft-range-per-g = A gram between shafts
shop-weight-shaft-range-per-g-hint = The widest pair of the set, about the model's own line
shop-weight-spent-grip = A grip spent
shop-weight-spent-grip-hint = One that is a usual scatter off and could put another club right
shop-weight-rare-head = A rare head
shop-weight-rare-head-hint = A head with no spare within 1 g (half if there is one spare)
shop-weight-neighbour-blank = A neighbour's blank
shop-weight-neighbour-blank-hint = Another number's shaft
shop-weight-changed-part = A part changed
shop-weight-changed-part-hint = When an open job is planned again

# The steps.
shop-steps = Steps of a job
shop-steps-count =
    { $n ->
        [one] 1 step: { $names }
       *[other] { $n } steps: { $names }
    }
shop-steps-about = A job takes a copy of these when it is made. Steps may be left out or done in another order at the bench; a reading left out only makes the forecast wider.
shop-step-head = { $place }. { $label }
shop-step-place = Place
shop-step-name = Name
shop-step-waits = Waits for
shop-step-say = What to do
shop-step-optional = May be left out
shop-step-drop = Remove this step
shop-step-reads = Reads { $asks }.
shop-step-reads-nothing = Nothing is read.
shop-step-glues = A batch of adhesive goes here.
shop-step-caution = Caution: { $caution }.
shop-step-add = Add a step
shop-step-name-hint = For example: Lead tape on
shop-step-on = On the club is what is on it at
shop-step-asks = What is read
shop-step-asks-none = None: it is only done.
shop-steps-keep = Save the steps

# What is missing.
shop-needs-figure = Enter this figure
shop-needs-value = Say what it should read
shop-needs-name = Give it a name
shop-needs-weight = Enter 0 to 100: 100 is a club that is sure to miss its tolerance
shop-needs-step-name = Give the step a name
shop-needs-step-place = Say at which place it comes, from 1
shop-needs-step = A job needs at least one step
