### Kinds of job

job-kind-new = New club
job-kind-new-say = Built from stock.
job-kind-regrip = Regrip
job-kind-regrip-say = Old grip off, new grip on. The grip's mass keeps the swing weight or moves it.
job-kind-bend = Bend
job-kind-bend-say = Loft and lie read, bent, read again.
job-kind-shorten = Shorten
job-kind-shorten-say = Grip off, butt cut, grip on. An inch off takes about six points.
job-kind-lengthen = Lengthen
job-kind-lengthen-say = Grip off, extension glued into the butt, grip on. An inch on adds about six points.
job-kind-rebalance = Rebalance
job-kind-rebalance-say = Lead tape, powder or a weight in the butt, to one swing weight.

kind-fault-bad-key = “{ $key }” is not a key: 1 to 32 small letters, digits or _
kind-fault-of-the-trade = the trade has a kind “{ $key }” already: choose another key
kind-fault-no-label = a kind of job has a name
kind-fault-no-model = a new { $kind } is put on, but the sheet does not ask for its model: add “{ $asked }”
kind-fault-not-taken = a club that is there keeps its { $kind }: a kind may take grip, shaft, ferrule and tip weight

club-work-fault-not-asked = the kind “{ $kind }” does not ask for { $asked }
club-work-fault-needs = the kind “{ $kind }” needs { $asked }
club-work-fault-unread = the kind “{ $kind }” needs the { $what } of { $club }: the plan rests on it, and it was never read
club-work-fault-grip-too-long = the grip is { $grip_mm } long, and only { $shaft_mm } of shaft stand out of the head of { $club }
club-work-fault-longer = { $asked_mm } is longer than { $club } is ({ $now_mm }): a cut only shortens
club-work-fault-shorter = { $asked_mm } is shorter than { $club } is ({ $now_mm }): an extension only lengthens
club-work-fault-too-long = { $club } would get { $by_mm } longer: an extension is not trusted beyond { $most_mm }
club-work-fault-no-part = no { $kind } of model { $model } is free for { $club }
club-work-fault-in-job = { $club } is in job { $job } already, which is not over
club-work-fault-twice = { $club } is named twice
club-work-fault-no-clubs = a job needs a club
club-work-next-figure = Read it, note it on the club, then make the job
club-work-next-part = Weigh one in, or choose another model
club-work-next-job = Finish or drop that job first

club-job-page = Job on clubs
club-job-no-clubs = No club chosen.
club-job-no-clubs-next = Tick the clubs on the Clubs page.
club-job-choose = Show what it asks
club-job-make = Make the job
club-job-due-needed = Enter the day when it is due
club-job-wraps = Wraps over the base layer
club-job-wraps-hint = a whole number
club-job-shops-own = the shop's own, or none
club-job-now = now { $now }
club-job-keeps = empty: it keeps what it reads on arrival
club-job-keeps-now = now { $now }; empty: it keeps what it reads on arrival
club-job-extension-hint = weigh the piece; it reaches 2 in into the shaft

job-kind-page = Kinds of job
job-kind-make = Make a kind
job-kind-remove = Remove
job-kind-like = Like
job-kind-like-hint = what it asks and which parts it takes come from there
job-kind-show-steps = Show its steps
job-kind-name = Name
job-kind-key = Key
job-kind-key-hint = small letters, digits and _, such as clean_up
job-kind-steps = Steps
job-kind-column-name = kind
job-kind-column-key = key
job-kind-column-new-parts = new parts
job-kind-column-asks = asks
job-kind-column-steps = steps
job-kind-column-own = own
