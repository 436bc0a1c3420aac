### What the scripts of a page show

# Entries that wait for the network.
script-waits = Kept on this tablet, not sent yet: { $what }. It is sent once when the network is back.
script-refused = Not accepted when it was sent later: { $what }. { $why }
script-enter-again = Enter it again.
script-seen = Understood
script-no-next = The network is away: the next club cannot be shown.

# Entries that were typed ahead and must not go to another club than they were meant for.
script-lost-away = The network is away. Not kept: { $typed }. Look at the club, then enter it again.
script-lost-refused = The entry before was not taken. Not kept: { $typed }. Look at the club, then enter it again.
script-lost-done = Nothing more is asked here. Not kept: { $typed }. Look at the club, then enter it again.

# A list that is being read.
script-reading-list = Reading the list …
script-parts-read = { $done } of { $all } parts

# A scale that settles while an entry is still open.
script-scale-busy = { $name }: { $text } came and was not taken. Finish this one, then lift the part and put it back.

# A code that was scanned.
script-no-look-up = { $code } could not be looked up: there is no network.
script-typed-first = { $typed } is typed and not kept yet. Press Enter for it, then scan { $code } again.

# The keypad at the thumb.
script-delete = Delete

# The list of keys, and the key of a pedal.
script-keys-here = Keys on this page
script-keys-all = All keys, and this tablet’s settings
script-close = Close
script-pedal-types = { $key } types a letter or moves the cursor, so it cannot be the pedal. Set the pedal to another key.

# Clocks of the glue that ring.
script-ring-pot-life = Batch { $batch }: the pot life is over. Glue no more from this cup.
script-ring-handling = Batch { $batch } has handling strength.
script-ring-cured = Batch { $batch } is cured.
script-ring-soon = Pot life of batch { $batch }:
script-ring-snooze = In 5 minutes

# The open job, held on the tablet.
script-held = The network is away: this is what was held of the job. What you enter is sent once it is back.
script-not-held = The network is away, and this page is not held on the tablet.
