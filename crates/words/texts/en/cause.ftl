### What may be behind a doubted reading

cause-nothing-wrong = nothing wrong, just an unlikely reading
cause-neighbour-head = the { $found } head is on the { $own }
cause-other-head = another { $club } head than planned
cause-mass-noted = the mass of the { $part } was noted wrong when it came in
cause-film-on = film or a label is still on the head
cause-head-not-seated = the head is not down on its seat
cause-tip-not-seated = the weight sticks out of the tip and holds the head off
cause-screw-heavier = the screw in the head is { $by_g } too heavy
cause-screw-lighter = the screw in the head is { $by_g } too light
cause-ferrule-missing = the ferrule is not on
cause-tip-left-out = the { $planned_g } weight is not in the tip
cause-tip-swapped = { $found_g } is in the tip and not { $planned_g }
cause-tip-added = { $found_g } is in the tip, which should be empty
cause-other-grip = another grip than planned is on
cause-cap-missing = the grip has no cap
cause-grip-not-home = the grip is not pushed home
cause-grip-off = the grip is not on
cause-grip-on = the grip is on already
cause-strip-more = one strip of tape too many is under the grip
cause-strip-less = one strip of tape is missing under the grip
cause-solvent-in = solvent is still in the grip
cause-shaft-long = the shaft is { LENGTH($by_mm, digits: 2) } too long
cause-shaft-short = the shaft is { LENGTH($by_mm, digits: 2) } too short
cause-other-shaft = another shaft than planned
cause-butt-off-stop = the butt was off the stop
cause-scale-not-zeroed = the scale was not zeroed
cause-scale-off-zero =
    { $n ->
        [one] the scale was off zero for one reading
       *[other] the scale was off zero for { $n } readings in a row
    }
cause-ferrule-was-off = the ferrule was off at an earlier reading and is on now
cause-heads-exchanged = the heads of the { $first } and the { $second } are exchanged
cause-grips-exchanged = the grips of the { $first } and the { $second } are exchanged
cause-tips-exchanged = the tip weights of the { $first } and the { $second } are exchanged
cause-joints-heavy = all joints of this set are about { $by_g } heavier than usual
cause-joints-light = all joints of this set are about { $by_g } lighter than usual
cause-clamped-short = the clamp held too little of the butt
cause-clamped-deep = the clamp held too much of the butt
cause-tip-trim-more = the tip is cut { LENGTH($by_mm, digits: 2) } too much
cause-tip-trim-less = the tip is cut { LENGTH($by_mm, digits: 2) } too little
cause-shaft-of-club = the shaft of the { $club } is in this club
cause-stiffer-shaft = a shaft of a stiffer flex than planned
cause-softer-shaft = a shaft of a softer flex than planned
cause-raw-noted = the frequency of the raw shaft was noted wrong when it came in
cause-head-loose = the head is not firm on the shaft
cause-digits-swapped = two digits changed places, { $meant } was meant
cause-swings-miscounted = a swing too many or too few was counted, { $meant } was meant
cause-other-unit = it was in another unit, { $meant } was meant
cause-misread = it was misread, { $meant } was meant
cause-else-reading = something else with this reading
cause-else-club = something else in this club
cause-both = { $first }, and { $second }

# What to do about it.
cause-to-do-seat-again = Seat the club again and read once more.
cause-to-do-look-over = Look the club over from butt to head, then read once more.
cause-to-do-take-head = Read the number on the sole; take the planned head.
cause-to-do-take-part = Compare the part's code with the card; take the planned part.
cause-to-do-correct-mass = Compare the part's code with the card. If it is the planned part, correct its mass in Stock.
cause-to-do-fill-tip = Take the head off and put the weight in the tip.
cause-to-do-weigh-tip = Take the head off and weigh what is in the tip.
cause-to-do-glued-tip = The joint is glued: correct it outside, or pull the head with heat.
cause-to-do-push-tip = Take the head off and push the weight down into the tip.
cause-to-do-push-head = Push the head down to its seat, as far as the mark on the shaft.
cause-to-do-glued-head = The joint is glued: measure the length; if it is off, pull the head with heat.
cause-to-do-put-ferrule = Put the ferrule on.
cause-to-do-glued-ferrule = If the club was glued without its ferrule, clear “ferrule on” at this reading, or pull the head with heat.
cause-to-do-peel = Peel film and label off the head.
cause-to-do-dry = Let the grip dry, then read again.
cause-to-do-push-butt = Push the butt against the stop and read again.
cause-to-do-enter-at-its-step = Take the reading back and enter it at the step with the grip on.
cause-to-do-put-grip = Put the grip on, or enter the reading at the step without it.
cause-to-do-look-at-cap = Look at the end of the grip; without a cap, put another grip on.
cause-to-do-push-grip = Feel for the end of the shaft under the cap; push the grip home while it still slides.
cause-to-do-compare-grip = Compare the grip's code with the card, and count the strips of tape.
cause-to-do-cut-shaft = Measure the shaft and cut it.
cause-to-do-longer-shaft = Measure the shaft; if it is short, take another blank or extend the butt.
cause-to-do-extend-shaft = Measure the length; if it is short, extend the butt.
cause-to-do-zero-scale = Zero the empty scale, then read again.
cause-to-do-zero-scale-read-run =
    { $n ->
        [one] Zero the empty scale, then take that reading again.
       *[other] Zero the empty scale, then take those { $n } readings again.
    }
cause-to-do-take-back-without-ferrule = Take the reading from before the ferrule was on back, or enter it with “ferrule on” cleared.
cause-to-do-exchange-heads = Exchange the two heads, then read both clubs again.
cause-to-do-glued-heads = Read the numbers on both soles. A glued head comes off with heat only.
cause-to-do-exchange-grips = Exchange the two grips while they still slide, or plan both clubs with the grips that are on.
cause-to-do-exchange-tips = Take both heads off, exchange the two tip weights, then read both clubs again.
cause-to-do-glued-tips = Weigh both clubs. In a glued club, correct the weight outside, or pull the head with heat.
cause-to-do-believe-joints = Keep the readings as they are: the clubs that are still open are planned with this.
cause-to-do-time-again = Hang the club again and count the swings aloud from zero: the first pass only starts the watch.
cause-to-do-look-at-display = Look at the display again; correct the entry if it was mistyped.
cause-to-do-take-screw = Read the mark on the screw; put the planned one in.
cause-to-do-clamp-again = Push the butt to the clamp’s stop, clamp the club again and read once more.
cause-to-do-measure-tip = Measure from the shaft’s first step, or its label, to the tip; a tip cut too far stays cut: take another shaft.
cause-to-do-compare-shaft = Compare the shaft’s label with the card; take the planned shaft.
cause-to-do-correct-raw = Compare the shaft’s label with the card. If it is the planned shaft, correct its frequency in Stock.
cause-to-do-firm-head = Push the head down to its mark until it does not rattle, then read again.
cause-to-do-glued-loose = Twist the head by hand: a joint that moves is pulled with heat and glued again.
cause-to-do-both = { $first } { $second }

# What is likely.
likely-most = Most likely: { $cause } ({ $odds }). { $to_do }
likely-maybe = It may be: { $cause } ({ $odds }). { $to_do }
likely-one-of-two = It may be: { $first } ({ $first_odds }), or { $second } ({ $second_odds }).

# The heading over the causes on the bench's screen.
cause-title = What may be behind it

# The measurement that tells the causes apart.
telling-head-mass = To find out: weigh the head.
telling-head-mass-assembled = To find out: take the head off and weigh it.
telling-shaft-mass = To find out: weigh the shaft.
telling-shaft-mass-assembled = To find out: take the head off and weigh the shaft.
telling-grip-mass = To find out: weigh the grip.
telling-total-mass = To find out: weigh the club as it is now.
telling-swing-weight = To find out: seat the club again, butt on the stop, and read the swing weight once more.
telling-shaft-length = To find out: measure the shaft.
telling-shaft-length-assembled = To find out: take the head off and measure the shaft.
telling-finished-length = To find out: measure the length to the cap.
telling-balance-point = To find out: find the balance point of the club on an edge.
telling-check-weight = To find out: put the check weight on the scale.
telling-empty-scale = To find out: look at the empty scale. Does it show zero?
telling-ferrule-on = To find out: look at the tip. Is the ferrule on?
telling-head-number = To find out: look at the sole. Is the number this club’s?
telling-clamp-again = To find out: clamp the club again, butt on the stop, and read the frequency once more.
telling-again = To find out: read it once more.

# What the command line says.
cause-none-doubted = No reading of this club is doubted.
cause-doubted-reading = { $step }, { $what }: { $typed } is doubted.
cause-line = { $odds }: { $cause }. { $to_do }
