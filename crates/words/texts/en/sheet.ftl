### Sheet


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

# The list.
sheet-title = Sheets
sheet-list = Fitting sheets
sheet-none-yet = No sheet yet.
sheet-none-yet-hint = Write down a fitting as you would on paper, or load a sheet that was saved as a file.
sheet-new = New sheet
sheet-load-file = Load a file
sheet-find = Find
sheet-none-found = No sheet matches.
sheet-none-found-hint = Try a shorter search, or show all.
sheet-all = All sheets
sheet-last-shown = The latest { $n } sheets. Search by player for earlier ones.
sheet-more-than = more than { $n } sheets
sheet-count =
    { $n ->
        [one] 1 sheet
       *[other] { $n } sheets
    }
sheet-column-player = player
sheet-column-due = due
sheet-column-clubs = clubs
sheet-column-job = job
sheet-job = Job { $job }
sheet-not-approved = not approved

# A saved sheet.
sheet-of = Sheet of { $player }
sheet-crumb =
    { $n ->
        [one] due { $due_on } · { $hand } · 1 club
       *[other] due { $due_on } · { $hand } · { $n } clubs
    }
sheet-clubs = Clubs
sheet-clubs-of = Clubs of the sheet
sheet-written = Written: { $text }
sheet-note = <b>Note:</b> { $note }
sheet-save-file = Save this sheet as a file
sheet-to-job = To job { $job }
sheet-approved = approved
sheet-approve = Approve and make the job
sheet-not-approved-yet =
    { $n ->
        [one] It cannot be approved yet: put 1 finding below right first.
       *[other] It cannot be approved yet: put { $n } findings below right first.
    }
sheet-approve-refused = Not approved: { $what }
sheet-change-head = Change player, date, hand or note
sheet-change = Change
sheet-as-it-is-now = Show it as it is now
sheet-typed-is-below = What you typed is still below.

# A club of the sheet.
sheet-field-club = club
sheet-field-length = length
sheet-field-swing-weight = swing weight
sheet-field-loft = loft
sheet-field-lie = lie
sheet-field-cpm = cpm
sheet-field-frequency = frequency
sheet-field-total-mass = total mass
sheet-field-tape = tape
sheet-field-labels = labels
sheet-field-soft-side = soft side
sheet-field-tolerance = tolerance
sheet-field-head = head
sheet-field-shaft = shaft
sheet-field-grip = grip
sheet-field-ferrule = ferrule
sheet-field-grip-label = grip label
sheet-field-adapter-setting = adapter setting
sheet-adapter = adapter { $setting }
sheet-field-shaft-label = shaft label
sheet-length = { $length_mm } { $to }
sheet-cpm = { CPM($cpm) }
sheet-grip-label = grip { $way }
sheet-shaft-label = shaft { $way }
sheet-tolerance = ±{ $swing_weight_points }, ±{ $length_mm }, ±{ $loft_deg } loft, ±{ $lie_deg } lie
sheet-wraps-base = base { $base }
sheet-wraps-full = base { $base } + { $full } full
sheet-wraps-lower = base { $base } + { $lower } lower hand
sheet-wraps-all = base { $base } + { $full } full + { $lower } lower hand
sheet-origins = Where each value comes from
sheet-not-noted = not noted

# What was found.
sheet-findings = Findings
sheet-nothing-found = nothing found
sheet-nothing-found-of = The sheet fits its models, the stock and the rules that were checked.
sheet-no-problems = No problems found.
sheet-findings-of =
    { $severity ->
        [stop] Must be put right ({ $n })
        [warn] Look at this ({ $n })
       *[note] Notes ({ $n })
    }
sheet-finding = { CAPITAL($what) }. { $next }.
sheet-finding-of-sheet = sheet
sheet-finding-of-club = the { $club }: { $what }
sheet-finding-by-clause = { $what } ({ $clause })
sheet-finding-line = { $severity }: { $what }. { $next }
sheet-findings-stop =
    { $n ->
        [one] 1 finding must be put right before this sheet can be built
       *[other] { $n } findings must be put right before this sheet can be built
    }
sheet-job-made =
    { $n ->
        [one] Job { $job } is made: 1 club. Plan it with: setwright plan { $job }
       *[other] Job { $job } is made: { $n } clubs. Plan it with: setwright plan { $job }
    }

# The reference club.
sheet-reference-club = Reference club: { $club }
sheet-reference-mass = total mass
sheet-reference-balance = balance point from the cap
sheet-reference-clamp = clamped length
sheet-reference-scale = scale
sheet-reference-cap = cap
sheet-reference-coupler-mass = coupler
sheet-reference-read-on = read on
sheet-reference-known-to = true swing weight
sheet-reference-once-more = { CAPITAL($last) }. Read the club once more on your scale on the day you read the first club: the bench says what that is worth.
sheet-reference-within = known to ± { PLAIN($sd_points, digits: 2) } points
sheet-reference-also-read = read again
sheet-reference-again =
    { $read_on ->
        [none]
            { $scale ->
                [none] { LETTER($swing_weight_points) }, scale and day not noted
               *[other] { LETTER($swing_weight_points) } on the scale “{ $scale }”, day not noted
            }
       *[other]
            { $scale ->
                [none] { LETTER($swing_weight_points) } on { $read_on }, scale not noted
               *[other] { LETTER($swing_weight_points) } on { $read_on } on the scale “{ $scale }”
            }
    }

# A sheet as a file.
sheet-load-title = Load a sheet
sheet-load = Load the sheet
sheet-back = Back to the sheets
sheet-file = File
sheet-file-hint = A sheet that was saved here as a file, or written by another program in the same form
sheet-file-text = Or its text
sheet-file-text-hint = Paste the whole document
sheet-file-schema = The form of the file (JSON, with a schema that programs can check against): <a>sheet schema</a>.
sheet-file-refused = The sheet could not be read.
sheet-file-refused-next = Nothing was saved; the place is named under the text.
sheet-file-missing = There is no file and no text. Choose a file, or paste the sheet
sheet-file-line =
    { $line ->
        [none] Line { $n }: { $what }. Correct it, then load it again.
       *[other] Line { $n }: { $what }. It reads “{ $line }”. Correct it, then load it again.
    }

# Whose a sheet is.
sheet-of-customer = Of <a>{ $name }</a>, { $code }
sheet-of-deleted = Of { $code }, who was deleted on request
sheet-of-nobody = Belongs to no customer
sheet-of-another = Somebody else of this name
