### Readings: what was read, forecast and asked

# Why a forecast or a statistic cannot be worked out.
estimation-not-finite = { $place } is { FIGURE($value) }, which is not a finite number
    .next = Enter the value again
estimation-negative = { $place } is { FIGURE($value) }, and must be 0 or more
estimation-not-positive = { $place } is { FIGURE($value) }, and must be greater than 0
estimation-reading-without-uncertainty = the reading { $id } has a standard deviation and a rounding step of 0
    .next = Enter how well it was read
estimation-too-sharp = the reading { $id } is { FIGURE($ratio) } times sharper than what was known before, more than { FIGURE($limit) }
    .next = Enter a wider uncertainty for the reading, or a narrower one for what was known
estimation-duplicate = “{ $key }” occurs more than once in { $what }
    .next = Give each its own name
estimation-unknown = “{ $key }” is not in { $what } of this job, and { $wanted_by } asks for it
estimation-club-missing = { $wanted_by } asks for a quantity of a club, and names no club
estimation-own-deviations = { $wanted_by } takes off the club “{ $club }”, which has deviations of its own
estimation-no-piece = the club “{ $club }” has no { $role }
    .next = Add the piece or ask for another
estimation-nothing-hangs = the club “{ $club }” balances nearer to its butt than the pivot, so it cannot swing from there
estimation-nothing-on-club = nothing that weighs is on the club “{ $club }”, so it has no balance point
estimation-outside-drift = { FIGURE($at_h) } h is outside { FIGURE($from_h) } to { FIGURE($to_h) } h, which the drift of the scale “{ $scale }” covers
    .next = Add knots to the drift
estimation-not-covariance = { $place } is not a covariance: { $reason }
    .next = Reset the learned values
estimation-not-converged = the figures did not settle after { $iterations } rounds
    .next = Look for a reading that was typed wrong by a large factor
estimation-too-few =
    { $count ->
        [one] { $place } has one value, and at least { $least } are needed
       *[other] { $place } has { $count } values, and at least { $least } are needed
    }
estimation-shape = { $place } has { $found } values where { $expected } are expected
estimation-singular = the values of { $place } do not give a single answer
    .next = Add readings that differ from each other
estimation-limits = the lower limit of { $place } is { FIGURE($lower) }, and must be below the upper limit of { FIGURE($upper) }
covariance-negative-variance = the variance in row { $row } is { FIGURE($value) }
covariance-not-symmetric = row { $row }, column { $column } differs from row { $column }, column { $row }
covariance-not-positive = its values contradict each other

# What is refused of readings at the bench.
reading-refused-nothing = nothing was entered
    .next = Enter what “{ $step }” asks for
reading-refused-kept-before = this entry was kept already, as { $entries }
    .next = Load the page again; if that was wrong, take it back and enter it again
reading-refused-taken-back = this reading is taken back already
    .next = Nothing needs to be done
reading-refused-not-kept = nothing was kept
    .next = Enter it again
reading-refused-twice = the { $what } is entered twice
    .next = Enter the one that holds; a second reading is an entry of its own
reading-refused-no-figure = “{ $typed }” is no figure for the { $what }
    .next = Enter a number, for example 2700
reading-refused-yes-or-no = “{ $typed }” is no answer to “{ $what }?”
    .next = Enter yes or no
reading-refused-as-kept = { $what } “{ $typed }”

estimation-outside = { $place } is { FIGURE($value) }, and must be between { FIGURE($low) } and { FIGURE($high) }

# The answer of a look.
reading-yes = yes
reading-no = no

reading-cpm = { CPM($figure_cpm) }
reading-seconds = { PLAIN($figure_s, digits: 3) } s
reading-inertia = { PLAIN($figure_kg_cm2, digits: 0) } kg·cm²

# Beside the largest figure of a step: half of the band, or of the sheet's tolerance.
reading-band-expected = ± { $band } expected
reading-band-asked = ± { $band } asked

# A forecast with half of its band: “D9.7 ± 0.6”.
reading-with-band = { $value } ± { $band }
# What the sheet asks: “asked 21.0° ± 0.5°”.
reading-asked = asked { $value } ± { $band }

# The unit beside an entry.
reading-unit-degrees = degrees
