### A club that lives on

club-change-grip = grip { $from_g } → { $to_g }
club-change-shaft = shaft { $from_g } → { $to_g }
club-change-length = length { $from_mm } → { $to_mm }
club-change-loft = loft { $from_deg } → { $to_deg }
club-change-lie = lie { $from_deg } → { $to_deg }
club-change-added = { $action } { $mass_g }

owned-club-fault-no-player = a club has a player and a number
    .next = Give both
owned-club-fault-long-number = a club's number has { $most } letters at most
    .next = Put the rest into its name
owned-club-fault-nothing-read = nothing was read
    .next = Give at least one figure
owned-club-fault-odd = that would be odd: { $odd }
    .next = Look at it again; if the figures are right, say so
arrival-odd-of-kind = { $club } with { $what } { $read }, where { $from } to { $to } is usual
arrival-odd-pieces-over-whole = the pieces weigh { $pieces_g }, the whole club { $total_g }
arrival-odd-whole-over-pieces = the whole club weighs { $total_g }, head, shaft and grip { $pieces_g }
arrival-odd-balance = with this swing weight and mass it would balance at { $balance_mm } of { $length_mm }
club-life-sure = The figures are right
owned-club-fault-stale = { $club } was changed meanwhile
    .next = Load it again, then decide

club-life-page = Clubs
club-life-search = Code, name, player or model
club-life-note = Note a club
club-life-new = A club from elsewhere
club-life-none = No club found.
club-life-none-next = Clubs built here are noted when they are handed over. Note one from elsewhere to work on it.
club-life-count = { $n ->
    [one] { $n } club
   *[other] { $n } clubs
}
club-life-caption = Clubs
club-life-of = { $club } of { $player }
club-life-pick = Pick { $club }
club-life-job-on-these = Job on the ticked clubs
club-life-column-pick = pick
club-life-column-code = code
club-life-column-club = club
club-life-column-swing-weight = swing weight
club-life-column-length = length
club-life-column-mass = mass
club-life-column-job = job
club-life-column-player = player
club-life-column-day = day
club-life-column-what = what
club-life-column-changed = changed
club-life-column-read = read
club-life-column-by = by
club-life-player = Player
club-life-kind = Sort
club-life-number = Number
club-life-number-hint = such as 7, P or 54
club-life-hand = Hand
club-life-label = Name of its own
club-life-label-hint = empty: number and player
club-life-material = Head
club-life-material-hint = limits bending where the maker says nothing
club-life-on-arrival = Read on arrival
club-life-on-arrival-hint = What you leave out stays a wide guess until it is read.
club-life-length = Length to the cap
club-life-swing-time =
    { $n ->
        [one] Time of one swing
       *[other] Time of { $n } swings
    }
club-life-swing-time-hint = Seconds, hung { $pivot_mm } from the cap; of another number 18.81/10. With mass and swing weight it gives the swing inertia
club-life-grip-size = Grip size, 50 mm below the cap
club-life-weighed-pieces = Pieces that were weighed loose
club-life-note-field = Note
club-life-nothing-read = Nothing was read of this club yet.
club-life-its-life = Its life
club-life-made-of = Made of
club-life-not-weighed = about { MASS($about_g, digits: 0) }, not weighed
club-life-work = Work on it
club-life-in-job = On the bench in job { $job }
club-life-measure = Read it again
club-life-change = Change name or player
club-life-retire = Given up: lost, broken or sold
club-life-all = All clubs
club-life-picture = Swing weight of { $club } since it was noted
