### Recall: whom something reached, and the marks on clubs until somebody has looked

recall-of-lot = lot { $lot }
recall-of-part = part { $part }
recall-of-model = model { $model }
recall-of-scale = scale { $scale }
recall-of-scale-days = scale { $scale }, { $from_on } to { $to_on }
recall-of-builder = { $builder }
recall-of-builder-days = { $builder }, { $from_on } to { $to_on }

recall-reach-batch = glued from batch { $batch }, lot { $lot }, mixed { $mixed_at }
recall-reach-part = has { $kind } { $part }
recall-reach-had-part = had { $kind } { $part }; it was taken out
recall-reach-may-have-tape = may have tape of roll { $part }: taped { $since_at }, since the roll came. No step notes the roll
recall-reach-named = its sheet names { $model }
recall-reach-read =
    { $n ->
        [one] 1 reading, { $first_at }
       *[other] { $n } readings, { $first_at } to { $last_at }
    }
recall-reach-read-by =
    { $n ->
        [one] 1 reading by them, { $first_at }
       *[other] { $n } readings by them, { $first_at } to { $last_at }
    }
recall-reach-done-by =
    { $n ->
        [one] 1 entry of theirs in the log, { $last_at }
       *[other] { $n } entries of theirs in the log, the last { $last_at }
    }
recall-reach-mixed-by = glued from batch { $batch }, which they mixed { $mixed_at }

recall-fault-nothing = a recall needs something to go by
    .next = Name a lot, a part, a model, a scale or a builder
recall-fault-several = a recall goes by one thing
    .next = Name one of lot, part, model, scale and builder
recall-fault-no-days = days go with a scale or a builder
    .next = Leave the days out: a lot, a part or a model is recalled whole
recall-fault-no-first-day = the first day is missing
    .next = Give both days, or the first alone: then it goes until today
recall-fault-backwards = the last day is before the first
    .next = Swap them
recall-fault-no-word = a word is missing
    .next = Say in a few words what to look at, or what was found
recall-fault-long-word = { $letters } letters are too many for one line, { $most } at most
    .next = Say it shorter

recall-refusal-not-in-recall = { $club } is not in this recall
    .next = Take the club’s key from the list
recall-refusal-no-club = no club is ticked
    .next = Tick the clubs to mark
recall-refusal-nameless = whoever clears a mark is named
    .next = Say who you are on the page Shop, or with --by
recall-refusal-cleared = this mark was cleared already by { $by }, { $at }: { $word }
    .next = Nothing is left to do

open-point-marked = marked: { $word }

# The page.
recall-page = Recall
recall-title = Recall: { $of }
recall-count =
    { $n ->
        [one] 1 club
       *[other] { $n } clubs
    } { $players ->
        [one] of 1 player
       *[other] of { $players } players
    }
recall-means = A bad lot, a wrong part, a scale found off: every club that it reached, its player, and how to reach them.
recall-what = Go by
recall-of-what-lot = lot of adhesive or parts
recall-of-what-part = one part, or a box
recall-of-what-model = model
recall-of-what-scale = scale
recall-of-what-builder = builder
recall-which = Which
recall-which-hint = Scan or type it: the lot, the code, the name
recall-from = First day
recall-days-hint = Only for a scale or a builder
recall-to = Last day
recall-ask = Find the clubs
recall-nobody = No club has anything to do with { $of }.
recall-nobody-next = Check it on the tins, the label or the name.
recall-still-here = still in the shop
recall-here =
    { $n ->
        [one] 1 club has not been handed over. It comes first.
       *[other] { $n } clubs have not been handed over. They come first.
    }
recall-addresses = Addresses as CSV
recall-clubs = Clubs
recall-players = Players
recall-in-job = job { $job }
recall-never-in-job = noted
recall-read = { $what } { $figure }
recall-last-read = read: { $read }
recall-column-pick = mark
recall-column-club = club
recall-column-player = player
recall-column-where = where
recall-column-why = why
recall-column-mark = marked
recall-column-phone = phone
recall-column-email = e-mail
recall-column-address = address
recall-column-clubs = clubs

# Marks.
mark-page = Marked clubs
mark-count =
    { $n ->
        [one] 1 mark stands
       *[other] { $n } marks stand
    }
mark-word = Mark the ticked clubs with
mark-word-of = Look at: { $of }
mark-word-hint = It stays on the club’s page, its job card and the bench until somebody says what they found
mark-them = Mark them
mark-none = No club is marked.
mark-none-next = A recall marks clubs that somebody has to look at.
mark-with-player = with the player
mark-in-shop = in the shop
mark-from = { $of }; { $by }, { $at_at }
mark-found = What was found
mark-clear = Clear
mark-cleared = Cleared by { $by }, { $at_at }: { $found }
mark-column-club = club
mark-column-where = where
mark-column-word = look at
mark-column-clear = clear
mark-on-card = Look at
today-marked =
    { $n ->
        [one] 1 club is marked from a recall
       *[other] { $n } clubs are marked from a recall
    }
today-marked-here =
    { $n ->
        [0] none of them in the shop
        [one] 1 of them in the shop
       *[other] { $n } of them in the shop
    }
done-marked = The clubs are marked.
done-mark-cleared = The mark is cleared.

# The command line.
recall-line = { $key }: { $club } of { $player }, { $place }
recall-line-marked =
    { $n ->
        [0] No club marked: the marks are there already
        [one] 1 club marked
       *[other] { $n } clubs marked
    }
mark-line = { $id }  { $club } of { $player }: { $word }
