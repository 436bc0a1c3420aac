### Sheet form

# A new sheet.
sheet-form-player = Player
sheet-form-known = Name of a known customer
sheet-form-take-known = Begin with them
sheet-form-which-customer = several customers have this name: { $codes }. Type the code of the one it is for
sheet-form-player-needed = Enter the player's name
sheet-form-due = Due
sheet-form-due-needed = Enter the day when the set is due
sheet-form-hand = Hand
sheet-form-note = Note
sheet-form-note-hint = Anything else that the bench should know
sheet-form-written = The sheet
sheet-form-written-hint = For example: 5-PW, +1/2, 2 up, D3, 2 wraps. Write the clubs first, then what they should be; words before the first club are for all clubs.
sheet-form-written-needed = Write the sheet, for example 5-PW, +1/2, 2 up, D3
sheet-form-understands = What it understands
sheet-form-rule = What ties the set together
sheet-form-look = Show the clubs
sheet-form-save = Save
sheet-form-meaning = Clubs as read
sheet-form-not-saved = Nothing is saved yet. A sheet with findings may be saved and put right later; only the job waits for it.
sheet-form-no-model = There is no { $kind } model yet.
sheet-form-needs-models = A sheet needs the models it is built from. Add a head, a shaft and a grip model first.
sheet-form-new-model = New { $kind } model
sheet-form-load-models = Load models from a file

# Phrases of a short sheet, by what they set. The phrases are what the program reads: they stay as they are.
sheet-form-say-clubs = clubs
sheet-form-phrases-clubs = 5-PW · 5 to P · 5, 7, 9 · 3w · 7-iron · driver · wedges · all
sheet-form-say-length = length
sheet-form-phrases-length = +1/2 · -1/4 in · +12 mm · 1/2 over · std · 36 3/4 in · to the cap · to the shaft end
sheet-form-say-lie = lie
sheet-form-phrases-lie = 2 up · 1° flat · lie 62 · lie +1
sheet-form-say-loft = loft
sheet-form-phrases-loft = 1 strong · 1 weak · loft 34 · loft -1
sheet-form-say-swing-weight = swing weight
sheet-form-phrases-swing-weight = D3 · D2.5 · D2 +0.5 a club · wedges +2 points
sheet-form-say-tape = tape
sheet-form-phrases-tape = 2 wraps (beside the base) · 2 wraps + 1 lower hand · no wraps
sheet-form-say-labels = labels
sheet-form-phrases-labels = grip down · logo away · shaft up
sheet-form-say-frequency = frequency
sheet-form-phrases-frequency = 300 cpm · 300 cpm +4 a club
sheet-form-say-total-mass = total mass
sheet-form-phrases-total-mass = total 428 g · total 428 g +7 a club
sheet-form-say-soft-side = soft side
sheet-form-phrases-soft-side = soft side heel · toe · target · away
sheet-form-phrases-adapter = adapter +1 · adapter at flat
sheet-form-say-tolerance = tolerance
sheet-form-phrases-tolerance = ±0.3 (points) · ±1.5 mm · ±0.5° · ±2 cpm

# The models of the set.
sheet-form-heads = Heads
sheet-form-head-needed = Tick at least one head model
sheet-form-head-choice =
    { $hand ->
        [left] { $head } ({ $kind }, left)
       *[right] { $head } ({ $kind })
    }
sheet-form-head = Head
sheet-form-shaft = Shaft
sheet-form-shaft-needed = Choose a shaft
sheet-form-grip = Grip
sheet-form-grip-needed = Choose a grip
sheet-form-ferrule = Ferrule
sheet-form-adhesive = Adhesive
sheet-form-tape = Tape
sheet-form-choose = choose
sheet-form-none = none
sheet-form-shops-own = the shop's own
sheet-form-as-above = as above
sheet-form-others = Others for woods, hybrids, wedges or putters
sheet-form-own =
    { $part ->
        [shaft] { $club ->
            [wood] Shaft of woods
            [hybrid] Shaft of hybrids
            [wedge] Shaft of wedges
           *[putter] Shaft of putters
        }
        [grip] { $club ->
            [wood] Grip of woods
            [hybrid] Grip of hybrids
            [wedge] Grip of wedges
           *[putter] Grip of putters
        }
       *[ferrule] { $club ->
            [wood] Ferrule of woods
            [hybrid] Ferrule of hybrids
            [wedge] Ferrule of wedges
           *[putter] Ferrule of putters
        }
    }

# The reference club.
sheet-form-reference = The reference club, where one was read
sheet-form-reference-hint = The readings of the club that the fitting settled on. What the sheet leaves out is taken from it.
sheet-form-reference-number = Number
sheet-form-reference-number-hint = 7, PW, 1 for the driver
sheet-form-reference-number-needed = Enter the number of the club that was read, for example 7
sheet-form-reference-length-in = 37 1/4, or 94.6 cm
sheet-form-reference-length-mm = 946, or 37 1/4 in
sheet-form-reference-swing-weight-hint = D2.1
sheet-form-reference-mass = Total mass
sheet-form-reference-balance = Balance point from the cap
sheet-form-reference-balance-in = 28 3/8, or 720 mm
sheet-form-reference-balance-mm = 720, or 28 3/8 in
sheet-form-reference-clamp = Clamped length
sheet-form-reference-clamp-in = 5
sheet-form-reference-clamp-mm = 127
sheet-form-reference-scale = Scale that read the swing weight
sheet-form-reference-scale-hint = balance for the shop's own, else its name
sheet-form-reference-sd = True swing weight, known to ±
sheet-form-reference-sd-hint = Only where it comes from a calibrated scale: 0 for exact. Empty: it is what the scale showed that day
sheet-form-also-read = Read again
sheet-form-also-read-hint = On another day or scale, one reading a line under the headings, for example D2.1, balance, 2026-03-02
sheet-form-also-read-swing-weight = swing weight
sheet-form-also-read-scale = scale
sheet-form-also-read-on = read on
sheet-form-reference-grip = Its grip
sheet-form-reference-cap = Thickness of its cap
sheet-form-reference-coupler = Coupler of a fitting club
sheet-form-reference-read-on = Read on

# One club, changed by hand.
sheet-club-length = Length
sheet-club-length-in = 36 3/4, or 93.3 cm
sheet-club-length-mm = 933, or 36 3/4 in
sheet-club-length-needed = Enter the length, for example 36 3/4
sheet-club-measured = Measured
sheet-club-measured-from = From where the shaft axis meets the ground
sheet-club-swing-weight = Swing weight
sheet-club-swing-weight-putter = Leave it blank where none is asked
sheet-club-swing-weight-hint = D2, D2.5 or 213.5 oz in
sheet-club-swing-weight-needed = Enter the swing weight, for example D2
sheet-club-loft = Loft
sheet-club-loft-needed = Enter the loft, for example 31
sheet-club-lie = Lie
sheet-club-lie-needed = Enter the lie, for example 62
sheet-club-frequency = Frequency
sheet-club-not-asked = Leave empty if not asked for
sheet-club-total-mass = Total mass
sheet-club-mass-g = 428 g, or 15.1 oz; leave empty if not asked for
sheet-club-mass-oz = 15.1 oz, or 428 g; leave empty if not asked for
sheet-club-grip-and-shaft = Grip and shaft
sheet-club-layers = layers
sheet-club-too-many-layers = That is more than a grip goes over. Enter 0 to 20 layers
sheet-club-tape-base = Tape, base
sheet-club-tape-full = Tape, full length
sheet-club-tape-lower = Tape, lower hand
sheet-club-grip-label = Grip label
sheet-club-shaft-label = Shaft label
sheet-club-adapter-setting = Setting of the adapter
sheet-club-adapter-usual = as its model is built
sheet-club-soft-side = Soft side
sheet-club-tip-weight = Weight in the tip
sheet-club-tip-weight-usual = in any club but a driver
sheet-club-tip-weight-yes = allowed
sheet-club-tip-weight-no = not allowed
sheet-club-not-given = not given
sheet-club-tolerances = Tolerances
sheet-club-points = points
sheet-club-swing-weight-tolerance = Swing weight ±
sheet-club-length-tolerance = Length ±
sheet-club-loft-tolerance = Loft ±
sheet-club-lie-tolerance = Lie ±
sheet-club-frequency-tolerance = Frequency ±
sheet-club-tolerance-needed = Enter the tolerance
sheet-club-tolerance-zero = Tolerance must be greater than 0
sheet-club-models = Models
sheet-club-change = Change this club
sheet-club-remove = Take it off the sheet
sheet-club-back = Back to the sheet
