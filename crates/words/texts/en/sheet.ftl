### Sheet

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
