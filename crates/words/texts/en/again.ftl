### The same again: clubs as they were built, and what differs today

again-swing-weight = built { LETTER($built_points) }, its sheet asked { LETTER($asked_points) }
again-length = built { LENGTH($built_mm, digits: 2) } to the cap, its sheet asked { LENGTH($asked_mm, digits: 2) }
again-loft = built with loft { $built_deg }, its sheet asked { $asked_deg }
again-lie = built with lie { $built_deg }, its sheet asked { $asked_deg }
again-not-read = { $what } was never read: the old sheet’s figure stands in
again-as-others = { $what } from the line through the other clubs
again-no-model = { $kind }: no maker’s model is known; choose one on the sheet
again-model-gone = { $kind }: { $model } is not in the library any more; choose another on the sheet
again-none-free = { $kind }: none of { $model } is free
again-none-weighed =
    { $n ->
        [one] { $kind }: 1 is free, not weighed
       *[other] { $kind }: { $n } are free, none weighed
    }
again-same = { $kind } { $part } weighs the same
again-heavier = { $kind } { $part }, the nearest, is { $by_g } heavier
again-lighter = { $kind } { $part }, the nearest, is { $by_g } lighter
again-other-lot = { $kind } now of lot { $lot }; it was { $was }

again-fault-no-club = no club is named
    .next = Name clubs by their codes, a job that was handed over, or a customer
again-fault-several-players = { $club } and { $other } are of several players
    .next = One sheet is for one player: take their clubs apart
again-fault-not-handed-over = job { $job } is not handed over yet
    .next = Finish it first: what is built again is what was read last
again-fault-no-others = fewer than { $fewest } other clubs of its sort were read
    .next = Read the others first, or build it like its own last figures

again-page = The same again
again-button = Build this again
again-note = Again: { $clubs }
again-means = The new sheet asks what was built and read last, not what the old sheet asked.
again-column-club = club
again-column-asks = the new sheet asks
again-column-says = what differs
again-asks = { LETTER($swing_weight_points) }, { LENGTH($length_mm, digits: 2) }, loft { $loft_deg }, lie { $lie_deg }
again-as-others-check = To match the other clubs as they are today
again-others = The line through the other clubs gives today:
again-due = New ones due
again-make = Save as a new sheet
again-line = { $like }: { $asks }
