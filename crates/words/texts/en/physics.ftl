### Physics

# What to do about a refused entry.
advice-enter-measured-figure = Enter the measured figure
advice-enter-figure-without-sign = Enter the figure without a sign, or leave it out
advice-deviation-apart = Its standard deviation is given alone
advice-weighed-or-geometry = Give the weighed figure or the geometry, not both
advice-give-or-describe-joint = Give it, or describe the joint
advice-ratio-volume-needs-densities = A ratio by volume needs the densities of both parts to be weighed out
advice-one-point-or-two-around = Give one point of the sheet, or the two between which the shop's temperature lies
advice-two-temperatures = Take two temperatures from the sheet, or give one point alone
advice-warmth-shortens = Warmth shortens every time; the two points are probably exchanged
advice-points-of-a-time = Give one or two points of the sheet for pot_life, handling or full_cure
advice-one-point-or-two = Give one point of the sheet, or two
advice-tip-does-not-fit = The tip does not fit into the bore; ream it, or measure both again
advice-diameter-in-mm = Give the diameter in millimetres
advice-ask-of-glue = Ask for joint, batch, cure or pull
advice-weighed-mass-alone = Give the weighed mass alone, it is the better figure
advice-place-in-inches = This looks like millimetres; give the place in inches below the cap
advice-core-narrower-than-grip = The core is inside the grip and must be narrower
advice-thickness-in-inches = This looks like millimetres; give the thickness in inches
advice-diameter-in-inches = This looks like millimetres; give the diameter in inches
advice-list-a-place-on-grip = List a place along the grip, or leave the list out
advice-count-layers-again = Count the layers again
advice-tape-length-in-inches = Give the tape's length in inches
advice-balance-point-on-shaft = The balance point lies on the shaft; measure it from the butt end
advice-length-leaves-no-shaft = This length leaves no shaft, or the head within the fulcrum
advice-list-lengths-of-set = List the lengths of the set
advice-parts-pendulum-or-series = Give parts, a pendulum reading, or a series of lengths
advice-rod-or-own-inertia = A part is an even rod or has its own inertia, give one
advice-hang-below-pivot = The club must hang with its balance point below the pivot; measure both from the butt end
advice-swing-less = Let it swing less, and give the greatest angle from the vertical
advice-list-parts-of-club = List the parts of the club with mass and place
advice-ask-of-lie = Ask for length, aim or bend
advice-loft-from-vertical = Give the loft in degrees from the vertical
advice-hands-on-club = The hands must be on the club
advice-club-cannot-reach = So short a club cannot reach the ground with the hands at this height
advice-error-not-lie = Give the error of the lie, not the lie itself
advice-measured-beside-wanted = Give the measured angle beside the wanted one
advice-wanted-lie-or-loft = Give the wanted lie, the wanted loft, or both
advice-makers-limit-holds = The maker's limit holds; take another head, or set allow_beyond_limit at the risk of a crack
advice-lie-is-to-the-ground = The lie is the angle between shaft and ground
advice-check-angles-and-step = Check the wanted angles and step_deg
advice-record-four-periods = Record the swing for at least four periods, without a stop
advice-axes-at-same-instants = Give both axes at the same instants
advice-check-sensor = It is silent: check that the sensor is plugged in and the right input was recorded
advice-record-longer = Record for longer: 10 s or more is good
advice-samples-a-second = Give the samples per second
advice-usual-frequencies = Clubs swing at 3 to 6 Hz, bare shafts at up to 20 Hz
advice-record-faster = Record at a higher rate, 100 samples a second or more
advice-record-faster-or-look-lower = Record at a higher rate, or look for lower frequencies
advice-largest-sample = Give the largest size a sample can have
advice-record-ten-seconds = Record for longer, 10 s or more
advice-count-first-sample = Count from the first sample
advice-recording-ends-there = The recording ends there
advice-start-before-end = Start before the end of the part to use
advice-use-longer-part = Use a longer part of the recording
advice-no-swing-in-noise = No swing stands out of the noise: record a plucked club, closer or with more gain
advice-turn-gain-down = Turn the gain down and record again, or use a later part with start_s
advice-give-noise-with-correlations = With correlations the noise cannot be found from the readings: give the standard deviation of one
advice-spread-angles = Spread the angles around the whole turn, 30 or 60 degrees apart
advice-one-kind-of-reading = Give the kind of reading that was taken, and leave the others out
advice-read-six-directions = Read at six or more different directions around the shaft; twelve, 30 degrees apart, are better
advice-one-reading-an-angle = Give one reading for each angle
advice-what-was-held = Give what was held fixed while the shaft was turned
advice-no-reading-without-error = No reading is without error: leave it out to have it found from the readings
advice-leave-out-or-give-readings = Leave it out, or give the readings it belongs to
advice-enter-reading-without-sign = Enter the reading without a sign
advice-about-one-in-twenty = 0.05 is usual
advice-least-asymmetry = Give the least asymmetry worth turning a shaft for
advice-least-bow = Give the least bow worth a remark
advice-deflection-of-rollers = Give the deflection that the rollers hold
advice-check-readings = Check the readings for a slip of the keys
advice-one-of-the-two = Give one of the two
advice-total-mass-or-parts = Give total_mass_g and balance_point_mm, or a list of parts
advice-leave-out-or-list-parts = Leave it out, or list the parts
advice-deviations-of-parts = Give mass_g_sd and position_mm_sd of the parts
advice-leave-old-mass-out = Leave old_mass_g out: the grip that is named comes off
advice-check-extreme-figures = Check the figures for extreme values
advice-check-figures = Check the figures for a slip of the key or of the unit
advice-add-document = Add it to the document
advice-see-example = See the example of this calculation
advice-sort-from-butt = Sort the table from the butt end to the tip end, each place once
advice-no-shaft-balances-there = No shaft of this mass line balances there; measure again, from the butt end
advice-density-at-both-ends = Give the density at least at both ends
advice-each-step-whole = Give each step's length and mass
advice-lie-of-wood-or-iron = Give the lie of a wood or an iron; a putter is measured along its axis
advice-cuts-leave-a-piece = The cuts must leave a piece of the shaft
advice-mass-line-one-way = Give the mass line one way
advice-taper-tip-at-butt = Taper tips are cut at the butt only; set allow_taper_tip_trim to cut it all the same
advice-sd-apart = Its sd is given alone
advice-leave-one-out = Leave one of them out
advice-length-or-butt-trim = Give the finished length, or butt_trim_mm to learn which length results
advice-tip-outside-bore = The tip would not reach into the bore
advice-table-to-both-ends = The table must reach from the butt end to the tip end of this shaft
advice-raw-shaft-too-short = The raw shaft is too short for this finished length; take a longer blank or trim less at the tip
advice-start-table-at-butt = Start the table at the butt end, at 0
advice-share-from-zero-to-one = A share between 0 and 1, such as 0.95
advice-degrees-of-freedom = Give the number of readings less the number of figures taken from them
advice-two-different-inputs = Name two different inputs
advice-no-deviation-of-zero = Leave out the standard deviation of a mass or inertia that is zero
advice-correlations-or-first-order = Leave the correlations out, or use the first order
advice-check-signs = Check their signs: what goes with a third thing goes together
advice-correlation-range = A correlation lies between -1 and 1
advice-stiffness-above-zero = Give the stiffness there in N·m², above zero; a steel iron shaft has 20 to 30 near its tip
advice-mass-of-shaft-or-head = Give the mass of the shaft or of the head
advice-check-clamp-and-trims = Check length, clamp and trims and their unit, mm
advice-rows-to-both-ends = Add rows up to both ends of the free part, or check which end the positions are measured from
advice-shaft-used-up = The shaft is used up: shorten the cuts or check the length and its unit, mm
advice-about-thirty = 30 is a good figure
advice-stiffness-at-both-ends = Give the stiffness at both ends of the shaft
advice-thin-table-out = Thin the table out: one row a centimetre is plenty
advice-ask-in-second-document = Ask for the others in a second document
advice-length-of-raw-shaft = Give the length of the raw shaft
advice-force-that-bends = Give the force that bends the shaft; 1 kg hung is 9.80665 N
advice-mass-of-head-or-zero = Give the mass of the head, or zero for a bare shaft
advice-zero-for-small-body = Give zero for a body that is small
advice-length-in-clamp = Give the length of butt inside the clamp
advice-cut-or-zero = A cut takes away; give zero for none
advice-two-rows-a-step = A step takes two rows, one for each side; remove the third
advice-rows-at-two-places = Give rows at two places at least
advice-mass-of-a-metre = Give the mass of a metre of shaft, zero or more
advice-sort-by-position = Sort the table by position, smallest first
advice-deviation-zero-or-more = Give a standard deviation of zero or more, or leave it out
advice-meant = { CAPITAL($meant) }
advice-range = { CAPITAL($of) } is { $low } to { $high }
advice-inputs = Inputs here: { $known }
advice-topics =
    { $near ->
        [none] The topics are { $known }
       *[other] Did you mean { $near }? The topics are { $known }
    }
advice-known =
    { $near ->
        [none] Known here: { $known }
       *[other] Did you mean { $near }? Known here: { $known }
    }
advice-one-swing = A club with this balance point swings there and back in { PLAIN($shortest_s, digits: 3) } to { PLAIN($longest_s, digits: 3) } s; time ten swings and divide by ten
advice-check-table = The table gives { CPM($table_cpm, digits: 0) } and the reading is { CPM($reading_cpm, digits: 0) }; check the length in the clamp, the head and the unit of stiffness_n_m2, or take the table of this shaft
advice-read-without-head = Was the shaft read without its head? Then give measured.tip_body with mass 0; the table gives { CPM($table_cpm, digits: 0) } and the reading is { CPM($reading_cpm, digits: 0) }; check the length in the clamp, the head and the unit of stiffness_n_m2, or take the table of this shaft
advice-half-swing = This looks like half a swing; one swing, there and back, is then { PLAIN($one_s, digits: 3) } s
advice-several-swings =
    { $n ->
        [2] This looks like two swings; one swing, there and back, is then { PLAIN($one_s, digits: 3) } s
        [5] This looks like five swings; one swing, there and back, is then { PLAIN($one_s, digits: 3) } s
        [10] This looks like ten swings; one swing, there and back, is then { PLAIN($one_s, digits: 3) } s
       *[other] This looks like twenty swings; one swing, there and back, is then { PLAIN($one_s, digits: 3) } s
    }
advice-too-short = The recording is too short, { $has } where { $needed } are needed; record for 10 s or more
advice-short-after-pluck = The recording is too short after the pluck, { $has } where { $needed } are needed; record for 10 s or more

# Two inputs that contradict each other or do not go together.
clash-same-input = { $name }: an input cannot be correlated with itself
clash-deviation-changes = the standard deviation of { $name } changes what there is to calculate
clash-second-order-correlated = second-order terms are asked for with correlated inputs
clash-correlations-impossible = the stated correlations cannot all hold at once
clash-both-given = { $first } and { $second } are both given
clash-both-determine = { $first } and { $second } are both given, and each determines the other
clash-taper-trim = tip_trim_mm is { FIGURE($trim_mm) } on a taper tip
clash-points = { $field } has { $n } points
clash-same-temperature = both points of { $field } are at { FIGURE($at_c) } °C
clash-no-stiffness = stiffness_line gives the shaft no stiffness between { PLAIN($from_mm, digits: 2) } and { LENGTH($to_mm, digits: 2) } from the butt
clash-no-mass = neither the shaft nor the tip body has mass
clash-no-free-shaft = clamp and trims leave { LENGTH($free_mm, digits: 2) } of free shaft
clash-not-covered = stiffness_line covers { PLAIN($from_mm, digits: 2) } to { LENGTH($to_mm, digits: 2) } from the butt, but the shaft is free from { PLAIN($free_from_mm, digits: 2) } to { LENGTH($free_to_mm, digits: 2) }
clash-three-rows = stiffness_line has three rows at { FIGURE($place_mm) }
clash-one-place = stiffness_line has all its rows at { FIGURE($place_mm) }
clash-samples-differ = axis_1 has { $first } samples, but axis_2 has { $second }
clash-no-tone = the samples do not determine a tone
clash-angles-too-close = angles_deg are so close together that a bow cannot be told from an asymmetry
clash-one-kind = exactly one of forces_n, deflections_mm and frequencies_cpm is needed
clash-readings-differ = { $field } has { $n } entries, but angles_deg has { $angles }
clash-other-kind = { $field } does not go with the kind of reading given
clash-no-stiff-direction = the readings change so much around the shaft that one direction would have no stiffness
clash-club-twice = the club is given twice, by parts and by total_mass_g or balance_point_mm
clash-without-parts = { $field } is given without parts
clash-deviations-with-parts = total_mass_g_sd or balance_point_mm_sd is given with parts
clash-named-grip = the part named grip weighs { FIGURE($named_g) }, but what_if.grip takes off { FIGURE($off_g) }

# Why the document of a calculation cannot be read, or its result not written.
calc-read-not-an-input = correlations name “{ $name }”, which is not an input of this calculation
calc-read-no-topic = there is no topic “{ $name }”
calc-read-unknown-field =
    { $place ->
        [none] unknown field “{ $name }”
       *[other] unknown field “{ $name }” in { $place }
    }
calc-read-unknown-choice = unknown choice “{ $name }” for { $place }
calc-read-other = { $place }: { $log }
calc-read-unwritable = the result cannot be written ({ $log })
calc-read-extreme = the figures are so extreme that { $place } is not a number any more

# A computation that goes in steps.
settling-two-planes = the two planes
settling-tone = the tone
settling-bending-mode = the bending mode of the shaft
settling-stiffness-profile = the stiffness along the shaft

# What was found in place of what a field takes.
found-null = an empty value
found-word = the word { $word }
found-number = the number { $text }
found-text = the text “{ $text }”
found-long-text = the text “{ $text }…
found-list = a list
found-object = an object with named fields

# What a field takes.
wanted-number = a number
    .next = Write it plain, without quotes or a unit
wanted-count = a whole number of zero or more
    .next = Write it plain, without quotes or a unit
wanted-yes-no = true or false
    .next = Write the word without quotes
wanted-text = a text
    .next = Put it in double quotes
wanted-choice = one of its words
    .next = Put the word in double quotes
wanted-list = a list
    .next = Put the entries in square brackets, with a comma between them
wanted-object = an object with named fields
    .next = Write each figure with its name, as { "{" }"mass_g": 120.0{ "}" }

# What a figure is of.
quantity-length-shaft = the length of a shaft
quantity-length-club = the length of a club
quantity-mass-shaft = the mass of a shaft
quantity-mass-club = the mass of a club
quantity-mass-part = the mass of a part
quantity-balance-point-club = the balance point of a club
quantity-place-on-club = a place on a club
quantity-fulcrum = the fulcrum
quantity-mass-grip = the mass of a grip
quantity-centre-grip = the centre of a grip
quantity-length-grip = the length of a grip
quantity-cap-grip = the cap of a grip
quantity-change-length = a change of length
quantity-metre-shaft = a metre of shaft
quantity-bores-distance-to-ground = the bore's distance to the ground
quantity-depth-bore = the depth of a bore
quantity-tip-shaft = the tip of a shaft
quantity-soles-point-contact = the sole's point of contact
quantity-radius-hosel = the radius of a hosel
quantity-radius-sole = the radius of a sole
quantity-mass-head = the mass of a head
quantity-head-on-clamped-shaft = the head on a clamped shaft
quantity-speed-head = the speed of a head
quantity-radius-swing = the radius of a swing
quantity-shear-strength-adhesive = the shear strength of an adhesive
quantity-density-adhesive = the density of an adhesive
quantity-adhesive-joint = the adhesive of a joint
quantity-temperature-workshop = the temperature of a workshop
quantity-temperature-products-sheet = a temperature of a product's sheet
quantity-frequency-clamped-shaft = the frequency of a clamped shaft
quantity-factor-on-stiffness-table = the factor on a stiffness table
quantity-radius-gyration-club = the radius of gyration of a club
quantity-spacers-mix = the spacers of a mix
quantity-spare-mix = the spare of a mix
quantity-joints-batch = the joints of a batch

# A unit by its name.

# What a calculation refuses.
calc-refused-not-finite = { $field } is not a finite number
    .next =
        { $unit ->
            [none] Enter a figure
           *[other] Enter a figure in { $unit }
        }
calc-refused-out-of-range = { $field } is { $value }, but must be { $bound } { $limit }
calc-refused-missing = { $field } is missing
calc-refused-too-few = { $field } has { $n } entries, but needs at least { $needed }
calc-refused-wrong-kind = { $field } is { $found }, but must be { $what }
calc-refused-not-converged = { $what } did not settle after { $n } steps
    .next = Check the figures for a slip of the keys
bound-above = above
bound-at-least = at least
bound-below = below
bound-at-most = at most

advice-shaft-bends-everywhere = A shaft bends everywhere a little; only the very tip of a table may be zero
