### The closed lists of the trade

# How far a step of a club has come.
step-status-done = done
step-status-begun = begun
step-status-open = open
step-status-left-out = left out

# How a club looks in the row.
look-inside = inside
look-open = open
look-off = off
look-doubted = look again
look-unplanned = no plan

# What may be behind a doubted reading.
cause-kind-nothing-wrong = nothing wrong
cause-kind-something-else = something else
cause-kind-neighbour-head = neighbour's head
cause-kind-wrong-part = another part than planned
cause-kind-tip-left-out = tip weight left out
cause-kind-tip-swapped = another tip weight
cause-kind-tip-not-seated = tip weight not seated
cause-kind-head-not-seated = head not seated
cause-kind-ferrule-missing = ferrule missing
cause-kind-film-on = film or label still on
cause-kind-solvent-in = solvent still in the grip
cause-kind-butt-off-stop = butt off the stop
cause-kind-grip-on = grip on
cause-kind-grip-off = grip missing
cause-kind-cap-missing = cap missing
cause-kind-grip-not-home = grip not pushed home
cause-kind-grip-or-tape = another grip or tape than planned
cause-kind-cut-off = shaft cut off its length
cause-kind-scale-not-zeroed = scale not zeroed
cause-kind-heads-exchanged = two heads exchanged
cause-kind-grips-exchanged = two grips exchanged
cause-kind-tips-exchanged = two tip weights exchanged
cause-kind-swings-miscounted = swings miscounted
cause-kind-mass-noted = mass noted wrong
cause-kind-all-joints = all joints heavy or light
cause-kind-digits-swapped = digits swapped
cause-kind-misread = read one off
cause-kind-wrong-unit = another unit
cause-kind-screw-swapped = another screw in the head
cause-kind-clamped-off = clamped too short or too deep
cause-kind-tip-trim-off = tip cut as for another number
cause-kind-other-shaft = another club's shaft
cause-kind-wrong-flex = shaft of another flex
cause-kind-raw-noted = raw shaft noted wrong
cause-kind-head-loose = head loose

# What a connected scale shows.
shows-mass = mass
shows-swing-weight = swing weight

# What a mark in a line says.
mark-means-settled = settled
mark-means-moving = moving

# Parity bit of a serial line.
parity-none = none
parity-even = even
parity-odd = odd

# What an instrument measures. Its figures are in that unit everywhere.
measures-mass = mass
measures-swing-weight = swing weight
measures-frequency = frequency
measures-angle = loft and lie
measures-length = length
measures-diameter = diameter of a grip

# What takes a scale's trust away.
trust-cause-tolerance = outside its tolerance
trust-cause-beyond = farther out than its own scatter explains
trust-cause-two-of-three = two of the last three checks far out on the same side
trust-cause-four-of-five = four of the last five checks clearly to the same side
trust-cause-eight-on-one-side = eight checks in a row on the same side of the usual
trust-cause-overdue = calibration overdue
trust-cause-word = somebody said so

# Where a job stands.
job-state-open = to plan
job-state-planned = at the bench
job-state-finished = finished
job-state-dropped = dropped

# What sort of club.
club-kind-wood = wood
club-kind-hybrid = hybrid
club-kind-iron = iron
club-kind-wedge = wedge
club-kind-putter = putter

# Which hand the club is for.
hand-right = right-hand
hand-left = left-hand

# Where a club's length ends at the butt. It starts where the shaft axis meets the ground.
length-to-shaft-end = to the shaft end
length-to-cap = to the cap

# Which way a label faces when the club is soled.
facing-up = up
facing-down = down
facing-away = away from the target

# Where the soft side of the shaft is turned.
soft-side-target = to the target
soft-side-away-from-target = away from the target
soft-side-heel = to the heel
soft-side-toe = to the toe

# Why what the shop knows has changed.
learned-cause-job = a finished job
learned-cause-reset = reset
learned-cause-pin = locked
learned-cause-unpin = unlocked
learned-cause-told = said by a builder
learned-cause-withdrawn = withdrawn
learned-cause-not-asked = not to be asked

# What a builder can say a figure of, and how sure he is.
told-of-joint = a joint
told-of-grip = a grip
told-of-wrap = a wrap of tape
told-of-ferrule = a ferrule
sureness-sure = sure
sureness-figure = a figure
sureness-about = about

# What can happen to a part.
life-step-came-in = came in
life-step-held = held
life-step-freed = free again
life-step-used = used
life-step-returned = returned to the shelf
life-step-pulled = pulled out of its club
life-step-scrapped = scrapped
life-step-restored = back in stock
life-step-corrected = corrected
life-step-cut = cut
life-step-changed = changed

# What scatters from one piece to the next, or from one job to the next.
scattered-adhesive-piece = adhesive, one joint to the next
scattered-adhesive-job = adhesive, one job's mix to the next
scattered-tape-piece = tape, one club to the next, a layer
scattered-tape-job = tape, one job to the next
scattered-solvent-piece = solvent, one grip to the next
scattered-solvent-job = solvent, one job to the next
scattered-cap-piece = caps, one grip to the next
scattered-grip-centre-piece = centres of grips, one to the next
scattered-shaft-centre-piece = balance points of shafts, one to the next
scattered-stiffness-piece = stiffness of shafts, one to the next

# An extra measurement.
measure-check-weight = check weight on the scale
measure-reference = reference club on this scale
measure-tape = tape weighed
measure-grip-centre = grip balanced on an edge
measure-cap = cap measured
measure-shaft-centre = shaft balanced on an edge
measure-weighed = club weighed before and after gluing
measure-total = glued club weighed
measure-again = swing weight read once more
measure-pilot = another order of work

# The order of work.
work-order-batch = all in one batch
work-order-one-cured-first = one club glued and cured first
work-order-one-finished-first = one club finished first
work-order-one-one-rest = one finished, then another, then the rest
work-order-one-by-one = each finished before the next is glued
grip-order-at-once = all at once
grip-order-one-first = one first, read before the others are chosen
grip-order-in-turn = each read before the next is chosen

# What a model, or a part of it, is.
part-kind-head = head
part-kind-adapter = adapter
part-kind-shaft = shaft
part-kind-grip = grip
part-kind-tip-weight = tip weight
part-kind-ferrule = ferrule
part-kind-adhesive = adhesive
part-kind-tape = tape

# What a shaft is made of.
stiffness-from-profile = readings of the shaft itself
stiffness-from-table = the stiffness table of the shaft model
stiffness-from-tube = mass, diameters and material of the shaft model
shaft-material-steel = steel
shaft-material-composite = composite

# Shape of the tip.
tip-shape-parallel = parallel tip
tip-shape-taper = taper tip

# Outside shape of a grip.
grip-shape-round = round
grip-shape-ribbed = ribbed
grip-shape-flat-sided = flat-sided

# What can happen to an order.
order-step-received = received
order-step-short = the rest does not come
order-step-cancelled = cancelled
order-step-told = changed

# Where an order stands.
order-state-ordered = ordered
order-state-partly-here = partly here
order-state-here = all here
order-state-short = came short
order-state-cancelled = cancelled

# Where a part is in its life.
part-state-ordered = ordered
part-state-free = free
part-state-held = held
part-state-used = used
part-state-pulled = pulled
part-state-rejected = rejected

# What the clubs of a set have in common.
law-swing-weight = the sheet's swing weight
law-inertia = equal inertia

# What can be read.
what-head-mass = head mass
what-adapter-mass = adapter mass
what-shaft-mass = shaft mass
what-ferrule-mass = ferrule mass
what-tip-weight-mass = tip weight mass
what-tape-mass = tape mass
what-grip-mass = grip mass
what-total-mass = total mass
what-swing-weight = swing weight
what-balance-point = balance point
what-shaft-length = shaft length
what-finished-length = length to the cap
what-loft = loft
what-lie = lie
what-grip-centre = grip's centre
what-cap-thickness = cap
what-shaft-balance-point = shaft's balance point
what-check-weight = check weight
what-reference-swing-weight = reference club
what-grip-size = grip at the upper hand
what-grip-size-lower = grip at the lower hand
what-cpm = frequency
what-swing-period = swing period
what-swing-inertia = swing inertia
what-soft-side = soft side
what-empty-scale = empty scale at zero
what-ferrule-on = ferrule on
what-head-number = number on the sole is this club’s
what-done = done

# Unit of a reading's value.
unit-g = g
unit-mm = mm
unit-points = points
unit-deg = °
unit-cpm = cpm
unit-s = s
unit-kg-cm2 = kg·cm²
unit-none = { "" }

# What may be said of a value against its tolerance, by the rules of JCGM 106.
verdict-in = in
verdict-out = out
verdict-too-close = too close to say
verdict-not-read = not read

# What is done.
action-tip-weight = tip weight
action-grip = grip
action-ferrule = ferrule
action-head = head
action-adapter = adapter
action-screw = screw in the head
action-lead-tape = lead tape
action-powder = powder in the shaft
action-counterweight = counterweight
action-lower-hand-tape = lower-hand tape
action-cut = cut
action-butt-extension = butt extension
action-re-grip = another grip
action-pull-head = head pulled

# How much a finding weighs.
severity-stop = must be put right
severity-warn = look at this
severity-note = note

# The law that ties the clubs of a set together.
set-rule-as-written = each club as written
set-rule-constant-swing-weight = one swing weight
set-rule-stepped-swing-weight = stepped swing weight
set-rule-equal-inertia = equal inertia

# How strong the joint must be before a step.
strength-none = none
strength-handling = handling strength
strength-full = full cure

# What cannot be undone.
final-cut = the cut
final-glue = the glue
final-bend = the bend
final-hand-over = the hand-over

# Which caution stands beside a step. The words are in [`crate::caution`].
caution-cutting = cutting
caution-epoxy = epoxy
caution-solvent = solvent
caution-bending = bending
caution-swing = swing
caution-turning = turning
caution-preparing = preparing
caution-stripping = cutting a grip off
caution-pulling = pulling a head
caution-lead = lead
caution-damage = a club that may be broken

# How a reading lies against what the sheet asks.
fit-inside = in tolerance
fit-off = off

# What a weighed part may be.
looks-as-said = as said
looks-neighbour = the number beside it
looks-other-number = another number
looks-other-model = another model
looks-wrapped = still wrapped
looks-slip = a slip

# What a piece is on its club.
role-head = head
role-adapter = adapter
role-screw = screw
role-shaft = shaft
role-ferrule = ferrule
role-turnings = turnings of the ferrule
role-tip-weight = tip weight
role-adhesive = adhesive
role-tape = tape
role-grip = grip
role-solvent = solvent
role-extra = extra

# What is done with a part by hand.
part-deed-reserve = reserve
part-deed-return = give back
part-deed-use = use without a job
part-deed-scrap = scrap
part-deed-restore = take back into stock
part-deed-correct = correct
part-deed-pull = pull
part-deed-miscut = cut wrongly

# What is still to be fitted in a club.
fit-stage-tip = the weight in the tip
fit-stage-grip = the grip
fit-stage-added = what is added
fit-stage-waits = nothing yet

# What a head is made of.
head-material-unknown = not known
head-material-forged = forged carbon steel
head-material-cast = cast stainless steel
head-material-brittle = titanium, zinc or other

# What happened to a club.
club-deed-built = built
club-deed-arrived = arrived
club-deed-measured = measured
club-deed-worked = worked on
club-deed-changed = changed
club-deed-retired = retired

# What the sheet of a kind of job asks.
asked-grip-model = grip model
asked-wraps = wraps
asked-grip-size = grip size
asked-grip-graphics = which way the grip's label faces
asked-shaft-model = shaft model
asked-ferrule-model = ferrule model
asked-adhesive = adhesive
asked-length = length
asked-extension-mass = mass of the extension
asked-swing-weight = swing weight
asked-swing-inertia = swing inertia
asked-loft = loft
asked-lie = lie
