### What the check of a sheet finds

# The sheet as a whole, and its clubs against each other. The club that a finding is about is shown before it.
sheet-check-too-many-clubs = { $n } clubs are more than one sheet holds
sheet-check-no-player = no player is named
sheet-check-no-clubs = the sheet has no clubs
sheet-check-overdue =
    { $n ->
        [one] it was due yesterday, { $due_on }
       *[other] it was due on { $due_on }, { $n } days ago
    }
sheet-check-more-than-played = the sheet has { $n } clubs; a player carries at most { $most }
sheet-check-no-such-number = { $head } has no { $number }
sheet-check-tolerance-too-fine = ±{ POINTS($tolerance_points, digits: 2) } is finer than the { $scale } can tell; one reading is known to ±{ POINTS($reading_points, digits: 2) }
sheet-check-tolerance-too-wide = ±{ $tolerance_points } is more than any player overlooks
sheet-check-twice = this club is on the sheet twice
sheet-check-mixed-ends = the length of the { $one } is { $one_to }, that of the { $other } { $other_to }
sheet-check-same-loft = { $loft_deg } is also the loft of the { $other }
sheet-check-loft-order = { $loft_deg } is stronger than the { $other } at { $other_deg }
sheet-check-same-length = { $length_mm } is also the length of the { $other }
sheet-check-length-order = at { $length_mm } it is longer than the { $other } at { $other_mm }

# The readings of the reference club.
sheet-reference-no-length-end = its length may end at the cap or at the shaft end, the thickness of the cap apart
sheet-reference-no-scale = no scale is named for its swing weight; two scales can differ by more than the tolerance
sheet-reference-no-clamp = no clamped length is given for its frequency
sheet-reference-read-later = it was read on { $read_on }, which is still to come
sheet-reference-readings-apart = it read { LETTER($first_points) } and { LETTER($other_points) }; two scales are not that far apart
sheet-reference-unknown-grip = there is no grip model “{ $code }”
sheet-reference-coupler = its swing weight includes a coupler of { $coupler_g }, which the built club does not have
sheet-reference-other-swing-weight = it read { LETTER($read_points) }, and the sheet asks { LETTER($asked_points) } of the same number
sheet-reference-balance-point = it balances { $at_mm } from the cap on a length of { $length_mm }; clubs balance at about three quarters of their length
sheet-reference-contradiction = { $mass_g } balancing { $at_mm } from the cap makes { LETTER($makes_points) }, but { LETTER($read_points) } was read: { $apart_points } apart, where the readings explain ±{ PLAIN($explained_points) } (mass ±{ PLAIN($of_mass_points, digits: 2) }, balance point ±{ PLAIN($of_balance_points, digits: 2) }, scale ±{ PLAIN($of_scale_points, digits: 2) })
sheet-reference-not-one-club = { $mass_g } balancing { $at_mm } from the cap makes { LETTER($makes_points) }, but { LETTER($read_points) } was read: { $apart_points } apart, where the readings explain ±{ PLAIN($explained_points) } (mass ±{ PLAIN($of_mass_points, digits: 2) }, balance point ±{ PLAIN($of_balance_points, digits: 2) }, scale ±{ PLAIN($of_scale_points, digits: 2) }); these are not readings of one club

# Whether the models of one club go together.
bore-of-head = { $name }
bore-of-adapter = the adapter { $name }
sheet-fit-wrong-hand = { $head } is a { $hand } head, and the sheet is for a { $player } player
sheet-fit-wrong-kind = { $head } is of the kind { $kind }, and the sheet has { $asked } here
sheet-fit-no-adhesive = no adhesive is named, here or for the shop
sheet-fit-no-tape = it has layers of tape, but no tape is named, here or for the shop
sheet-fit-no-base-layer = no base layer of tape holds the grip
sheet-fit-many-layers = { $n } layers of tape are more than a grip usually goes over
sheet-fit-no-adapter-model = { $head } takes an adapter, and no adapter model fits it
sheet-fit-no-such-setting = the adapter of { $head } has no setting “{ $setting }” with its figures
sheet-fit-tip-too-thick = the tip of { $shaft } is { LENGTH($tip_mm, digits: 3) } and the bore of { $bore } { LENGTH($bore_mm, digits: 3) }: it does not go in
sheet-fit-tip-too-thin = the tip of { $shaft } is { LENGTH($tip_mm, digits: 3) } and the bore of { $bore } { LENGTH($bore_mm, digits: 3) }: { LENGTH($play_mm, digits: 3) } of play, more than adhesive fills
sheet-fit-tip-loose = the tip of { $shaft } is { LENGTH($tip_mm, digits: 3) } and the bore of { $bore } { LENGTH($bore_mm, digits: 3) }: { LENGTH($play_mm, digits: 3) } of play
sheet-fit-taper-trim = { $shaft } has a taper tip and a tip trim; taper tips are cut at the butt only
sheet-fit-ferrule-size = { $ferrule } is { LENGTH($inside_mm, digits: 3) } inside and the tip { LENGTH($tip_mm, digits: 3) }
sheet-fit-no-blank = { $shaft } has no blank for the { $club }; it has { $known }
sheet-fit-cannot-be-cut = { $what }
sheet-fit-blank-too-short =
    { $trim_mm ->
        [none] the blank of { $shaft } is { $blank_mm } long, and the club needs { $needed_mm } of shaft: { $short_mm } too short
       *[other] the blank of { $shaft } is { $blank_mm } long before a tip trim of { $trim_mm }, and the club needs { $needed_mm } of shaft: { $short_mm } too short
    }
sheet-fit-bend-from-stock =
    { $limit_deg ->
        [none] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and this head must not be bent; a head in stock is near enough
       *[other] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and the maker allows { $limit_deg }; a head in stock is near enough
    }
sheet-fit-bend-to-limit =
    { $limit_deg ->
        [none] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and this head must not be bent; as made it is within the tolerance
       *[other] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and the maker allows { $limit_deg }; bent that far it is within the tolerance
    }
sheet-fit-bend-too-far =
    { $limit_deg ->
        [none] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and this head must not be bent
       *[other] { $what } { $asked_deg } is { $by_deg } from the { $made_deg } of the model, and the maker allows { $limit_deg }
    }

# What the stock does not have.
sheet-stock-neighbour-blank = no blank of { $shaft } for the { $club } is free in stock; the model allows that of the { $blanks }
sheet-stock-no-shaft = no { $shaft } shaft that fits is free in stock
sheet-stock-no-grip = no { $grip } grip is free in stock
sheet-stock-no-ferrule = no { $ferrule } is free in stock
sheet-stock-no-adapter = { $head } takes an adapter, and none is free in stock
sheet-stock-no-head = no { $head } head for the { $club } is free in stock
sheet-stock-heads-too-heavy = the stock does not reach { LETTER($asked_points) }: the lightest free head, { $head_g }, makes { LETTER($reads_points) } with nothing in the tip
sheet-stock-heads-too-light =
    { $tip_g ->
        [none] the stock does not reach { LETTER($asked_points) }: the heaviest free head, { $head_g }, makes { LETTER($reads_points) }, and no tip weight in stock fits
       *[other] the stock does not reach { LETTER($asked_points) }: the heaviest free head, { $head_g }, makes { LETTER($reads_points) } with { $tip_g } in the tip
    }

# What to do.
sheet-next-at-most-clubs = Write at most { $most } clubs on a sheet
sheet-next-name-player = Write the player's name
sheet-next-add-club = Add at least one, for example by writing 5-PW
sheet-next-new-date = Agree a new date, or leave it if this date is meant
sheet-next-some-stay-home = Nothing to do if some stay at home
sheet-next-choose-number = Choose one of { $known }, or another head model
sheet-next-measure-as-rules-do = Measure the finished club as the rules do, or enter the sole of the head under Stock, Models
sheet-next-change-or-tell = Change it, or tell the player that the club is beyond a limit of the Equipment Rules
sheet-next-allow-more = Allow more, usually ±0.3 points
sheet-next-allow-less = Allow less, usually ±0.3 points
sheet-next-correct-reading = Correct the reading and its unit, or leave it out
sheet-next-name-end = Enter which of the two it is
sheet-next-name-scale = Enter the scale, and read the club on your own when it is here
sheet-next-give-clamp = Enter the clamped length
sheet-next-correct-date = Correct the date
sheet-next-add-grip-model = Add the model, or enter the thickness of its cap and leave the model out
sheet-next-head-carries-coupler = The target stays what the player felt; the built head carries that mass instead
sheet-next-if-fitting-meant-it = Nothing to do if the fitting meant that
sheet-next-measure-balance-point = Measure from the outside of the cap to the edge it balances on, both in the same unit
sheet-next-measure-from-cap = They agree if the balance point was measured from the shaft end, { $cap_mm } inside the cap: measure from the outside of the cap
sheet-next-read-again = Read all three again, or leave out the one that you do not trust
sheet-next-take-one-out = Take one out, or give it its right number
sheet-next-one-end = Measure all clubs of a set to the same end
sheet-next-correct-loft = Correct the loft of one of the two
sheet-next-correct-length = Correct the length of one of the two
sheet-next-if-one-length = Nothing to do if they are meant to be one length
sheet-next-choose-hand = Choose the model for the player's hand, or correct the hand of the sheet
sheet-next-write-kind = Write { $kind }, or choose another head model
sheet-next-name-adhesive = Choose one: its mass and its cure times count
sheet-next-name-tape = Choose one: its mass counts
sheet-next-if-no-tape = Nothing to do if the grip goes on without tape
sheet-next-larger-grip = Choose a larger grip if this many layers are meant
sheet-next-add-adapter = Add the adapter under Stock, Models
sheet-next-thinner-shaft = Choose a shaft of the bore's size; ream only within the head maker's limits
sheet-next-shaft-of-bore = Choose a shaft of the bore's size
sheet-next-use-shim = Use a shim, or a shaft of the bore's size
sheet-next-take-trim-out = Take the trim out of the model, unless the { $club } is meant to be softer or stiffer
sheet-next-ferrule-of-tip = Choose a ferrule of the tip's size
sheet-next-shaft-with-number = Choose a shaft model with this number, or add the blank to the model
sheet-next-longer-blank = Choose a longer blank, less trim or a shorter club
sheet-next-plan-measured-head = Plan with the head that was measured
sheet-next-measure-loose-head = Measure the loose head before it is glued
sheet-next-other-head = Choose another number or head model
sheet-next-choose-setting = Choose one of { $known }
sheet-next-enter-settings = Enter what each setting changes under Stock, Models, or leave the setting out
sheet-next-set-adapter = The setting “{ $setting }” comes nearest: ask for it, or for other angles
sheet-next-bend-less = Ask for less, or measure loose heads: one may be nearer as received
sheet-next-order-blank = A neighbour's blank changes the flex: order the right one, or give a reason on the job
sheet-next-order = Order one
sheet-next-order-shaft = Order one, or choose another shaft model
sheet-next-order-grip = Order one, or choose another grip model
sheet-next-order-heads = Order heads of { PLAIN($from_g) } to { $to_g }
sheet-next-order-heads-or-change = Order heads of { PLAIN($from_g) } to { $to_g }, or change length, grip or swing weight
sheet-next-correct = Correct it
