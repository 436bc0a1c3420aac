### Sheet

sheet-correct-it = Correct it

# Why a short sheet is refused.
short-sheet-word = “{ $word }” at character { $n }: { $what }
short-sheet-no-clubs = the sheet does not say which clubs of { $known }
    .next = Write their numbers, for example 5-PW
short-sheet-too-long = this text has { $n } characters, and a short sheet has at most { $most }
    .next = Write each club's words once, and what holds for all before the first club
short-sheet-no-head-model = the set has no head model
    .next = Choose at least one
short-sheet-models = { $what }
short-sheet-cap-needed = { $what }. Its cap is needed to turn one length into the other
short-sheet-inertia-needs-models = { $what }. Equal inertia needs all models of the set
short-sheet-no-shaft-for = the set has no shaft model for a { $kind }
    .next = Choose a shaft for it
short-sheet-no-grip-for = the set has no grip model for a { $kind }
    .next = Choose a grip for it
short-sheet-fitted-unknown = the fitted club is a { $number }, which no head model of the set has
    .next = Choose its number, or other head models than { $known }
short-sheet-fitted-several = the fitted club is a { $number }, and more than one club of the set has that number
    .next = Give its kind with its number: 5w, 5h or 5i
short-sheet-fitted-length-end = the length of the fitted club does not say what it is measured to
    .next = Write whether it ends at the cap or at the shaft's end, or write the set's length
short-sheet-fitted-cap-unknown = the fitted club and the chart are measured to different ends, and the fitted club's cap is not known
    .next = Give the thickness of its grip's cap or its grip model
short-sheet-unequal-swing-weights = the rule of the set is one swing weight, but the { $number } would get { LETTER($first_points, digits: 0) } and the { $other } { LETTER($other_points, digits: 0) }
    .next = Write the swing weight, for example D3, or give the fitted club's
short-sheet-no-step = the rule of the set is a stepped swing weight, but no step is written
    .next = Write the step, for example D2 +0.5 a club
short-sheet-inertia-needs-fitted = equal inertia needs the fitted club with its swing weight
    .next = Give the number and the swing weight (or mass and balance point) of the fitted club
short-sheet-fitted-other-kind = the fitted { $number } is of another kind than every club of the set
    .next = Give a fitted club of the set's kind
short-sheet-no-head-for-inertia = no head gives the { $number } the inertia of the fitted { $fitted }
    .next = Check the fitted club's readings and the lengths

# What is wrong with one phrase of a short sheet.
short-word-two-meanings = it can mean one figure, or a club and a figure; put a comma after the club, or a + before the figure
    .next = Write for example 3, 1/2 over
short-word-named-before = the { $number } is named before
    .next = Write for example 5-9 D2; P-S D4
short-word-said-before = “{ $word }” at character { $n } already gives this for the same clubs
    .next = Write for example 5-9 D2; P-S D4
short-word-which-figure = it does not say whether it is length, loft or lie
    .next = Write for example +1/2 in, 1 strong or 2 up
short-word-swing-weight = a swing weight has a letter from A to G and points from 0 to 9.9
    .next = Write for example D3 or D2.5
short-word-length-offset = no club is so much longer or shorter than its chart
    .next = Write for example +1/2 in
short-word-length = a length needs its unit, a difference its sign, and both must be possible for a club
    .next = Write for example 36 3/4 in or +1/2
short-word-graphics = it does not say whether grip or shaft is meant
    .next = Write for example grip down or shaft up
short-word-comma = a comma between two digits is a decimal comma; put a space after a comma that separates
    .next = Write for example 5-PW, +1/2, 2 up, D3, 2 wraps
short-word-not-a-word = it is not a word of the short sheet
    .next = Write for example 5-PW, +1/2, 2 up, D3, 2 wraps
short-word-layers = a grip goes over { $most } layers at most
    .next = Write for example 2 wraps + 1 lower hand
short-word-tolerance = a tolerance must be more than 0 and no more than 30
    .next = Write for example ±0.3
short-word-wedge-offset = wedges may have { FIGURE($limit_points) } more or less than their set at most
    .next = Write for example wedges +2 points
short-word-swing-weight-step = a set may step by { FIGURE($limit_points) } a club at most
    .next = Write for example D2 +0.5 a club
short-word-swing-weight-range = a swing weight is between { LETTER($low_points, digits: 0) } and { LETTER($high_points, digits: 0) }
    .next = Write for example D3
short-word-frequency = a club's frequency is 50 to 600 cpm, and a set steps by 30 cpm a club at most
    .next = Write for example 300 cpm
short-word-total-mass = a club weighs { FIGURE($low_g) } to { FIGURE($high_g) }, and a set steps by { FIGURE($step_g) } a club at most
    .next = Write for example total 428 g
short-word-lie = a lie is between { FIGURE($low_deg) } and { FIGURE($high_deg) }
    .next = Write for example 2 up or lie 62
short-word-loft = a loft is between { FIGURE($low_deg) } and { FIGURE($high_deg) }
    .next = Write for example 1 strong or loft 34
short-word-no-model-of-kind = the set has no { $kind } model, but { $known }
    .next = Write for example 5-PW
short-word-no-such-club = there is no { $number } in { $known }
    .next = Write for example 5-PW
short-word-backwards = the range runs backwards
    .next = Write for example 5-PW
short-word-different-kinds = its ends are clubs of different kinds
    .next = Write for example 3w-5w, 5-PW
short-word-several = more than one club of the set has this number: it is in { $known }
    .next = Write for example 5w or 5i
short-word-no-fitted-club = there is no fitted club whose swing weight it could start from
    .next = Write for example D2 +0.5 a club
short-word-steps-under-one-swing-weight = the rule of the set is one swing weight, and this steps; choose the stepped rule or write one swing weight
    .next = Write for example D3
short-word-second-swing-weight = the rule of the set is one swing weight, and { LETTER($first_points, digits: 0) } is written for other clubs
    .next = Write for example D3, wedges +2 points
short-word-swing-weight-under-inertia = the rule of the set is equal inertia, which gives each club its swing weight; leave this out or choose another rule
    .next = Write for example 5-PW, +1/2, 2 up
short-word-bend-lie = a head bends { FIGURE($limit_deg) } at most
    .next = Write for example 2 up or lie 62
short-word-bend-loft = a head bends { FIGURE($limit_deg) } at most
    .next = Write for example 1 strong or loft 34

# The numbers that a head model of the set has.
known-clubs-model = { $code } ({ $numbers })

# What is refused of changing or approving a sheet.
sheet-fault-approved = this sheet is approved; its job keeps it as it was
    .next = Write a new sheet for a change
sheet-fault-approved-as = this sheet is approved already, as job { $job }
    .next = Write a new sheet for another set
sheet-fault-stop =
    { $club ->
        [none] { $what }
       *[other] the { $club }: { $what }
    }
