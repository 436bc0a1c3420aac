### A code scanned at the bench

scan-put-in = { $part } is the { $kind } of this { $club } now.
scan-already = { $part } is already in this { $club }.
scan-free = { $part } is a free { $kind }.
scan-other-model = { $part }: { $kind } { $model }; this { $club } takes { $wants }.
scan-other-number = { $part }: { $kind } { $model } { $number }; this { $club } takes { $wants }.
scan-other-club = { $part } belongs to the { $club } of job { $job }.
scan-some-club = { $part } belongs to another club.
scan-other-step = { $part } is a free { $kind }; this step takes no { $kind }.
scan-not-free = { $part } is { $state } and cannot go into a club.

scan-next-nothing-changed = Nothing was changed.
scan-next-can-go-in = It can take the place of the planned one.
scan-next-takes-back =
    { $readings ->
        [one] Putting it in takes back the reading with the planned one.
       *[other] Putting it in takes back the { $readings } readings with the planned one.
    }
scan-next-into-its-tray = Put it back into its tray; nothing was changed.
scan-next-choose-step = This step takes no part. Choose the step that does.
scan-next-step-takes = This step takes: { $kinds }.
scan-next-open-in-stock = Open it under Stock, or scan another.

# The page.
scan-label = Scan or type a code
scan-placeholder = Scan a part or a job card
scan-go = Put in or open
scan-club-of-card = The club of this card
scan-put-it-in = Put it in
scan-to-club = To the { $club }
scan-open-part = Open { $part }
