### Order

# What is refused of an order.
order-fault-masses-backwards = the masses asked for run from { FIGURE($from_g) } to { FIGURE($to_g) }
    .next = Give the lightest first, then the heaviest
order-fault-expected-too-early = it is expected on { $expected_on }, before it was ordered on { $ordered_on }
    .next = Check the two days
order-fault-too-long = the supplier or the remark is too long
    .next = Use fewer words: at most 200 letters for the supplier, 2000 for the remark
order-fault-more-for-jobs = { $for_jobs } are meant for jobs, and { $ordered } are ordered
    .next = Order more, or name fewer for the jobs
order-fault-bad-count = { $n } is not a number of parts
    .next = Give a whole number from 1 to { $most }

# What is refused of placing and booking in orders.
order-refused-nothing = nothing is ordered
    .next = Name at least one part
order-refused-job-waits-not = job { $job } is { $state } and waits for nothing
    .next = Order without naming it, or name another
order-refused-nothing-to-come = nothing of order { $order } is still to come: it is { $state }
    .next = Nothing needs to be done
order-refused-nothing-changed = nothing was changed
    .next = Give another supplier, another day or a remark
order-refused-job-lacks-nothing = job { $job } lacks nothing that is not ordered already
    .next = Look at its plan and at the orders
order-refused-job-lacks-nothing-as = job { $job } is { $state } and lacks nothing
    .next = Look at the orders of another job
order-refused-stale = order { $order } was changed on another screen in the meantime, or sent twice
    .next = Nothing was booked in. Look at what changed, then enter it again
order-refused-other-kind = { $model } is a { $kind }, and order { $order } is of a { $wanted }
    .next = Choose what came, or book it in by weighing it in
order-refused-number-missing = no number is given for { $model }
    .next = Give one of { $known }
order-refused-no-number = a { $kind } { $model } has no number
    .next = Leave the number out
order-refused-unknown-number = { $model } has no number { $number }
    .next = Give one of { $known }

# What is asked before parts of an order are booked in.
order-ask-cancelled =
    { $note ->
        [none] order { $order } was cancelled by { $by }
       *[other] order { $order } was cancelled by { $by } (“{ $note }”)
    }
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-closed-short =
    { $note ->
        [none] order { $order } was closed short by { $by }
       *[other] order { $order } was closed short by { $by } (“{ $note }”)
    }
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-all-here = all of order { $order } are here already
    .next = If they came all the same, confirm it, and they are booked in; else check the count
order-ask-more = { $n } are more than the { $open } of order { $order } that are still to come
    .next = If they came all the same, confirm it, and they are booked in; else check the count

# A number of parts of one model: “2 heads Siskin 7”.
order-parts-head =
    { $count ->
        [one] 1 head
       *[other] { $count } heads
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-adapter =
    { $count ->
        [one] 1 adapter
       *[other] { $count } adapters
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-shaft =
    { $count ->
        [one] 1 shaft
       *[other] { $count } shafts
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-grip =
    { $count ->
        [one] 1 grip
       *[other] { $count } grips
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-tip-weight =
    { $count ->
        [one] 1 tip weight
       *[other] { $count } tip weights
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-ferrule =
    { $count ->
        [one] 1 ferrule
       *[other] { $count } ferrules
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-adhesive =
    { $count ->
        [one] 1 adhesive
       *[other] { $count } adhesives
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-tape =
    { $count ->
        [one] 1 tape
       *[other] { $count } tapes
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }

# When parts are expected.
order-expected-no-day = no day named yet
order-expected-today = expected today
order-expected-tomorrow = expected tomorrow
order-expected-soon = expected { WEEKDAY($expected_on) }
order-expected-later = expected { WEEKDAY($expected_on) } { DAY($expected_on) }
order-expected-yesterday = overdue: they were expected yesterday, { WEEKDAY($expected_on) } { DAY($expected_on) }
order-expected-overdue = { $days } days overdue: they were expected on { WEEKDAY($expected_on) } { DAY($expected_on) }

# What a job waits for.
order-wait-ordered = waits for { $parts }, { $expected }
order-wait-not-ordered = lacks { $parts }, not ordered

# The same where a mark beside it says “lacks” or “waits for” already.
order-waits-lacks = lacks
order-waits-for = waits for
order-waits-overdue = waits for, overdue
order-waits-rest = { $parts }, { $expected }
order-waits-rest-not-ordered = { $parts }, not ordered

# The places of the stock.
order-places = Places of the stock
order-place-parts = Parts
order-place-orders = Orders

# Masses that will do.
order-window = { PLAIN($from_g) } to { $to_g }
order-window-from = { $from_g } or more
order-window-to = { $to_g } or less

# The list of orders.
order-number = Order { $order }
order-job = job { $job }
order-for-job = { $n } for <a>job { $job }</a>
order-shelf = the shelf
order-supplier-open = not settled yet
order-no-day = no day named yet
order-overdue =
    { $days ->
        [one] 1 day overdue
       *[other] { $days } days overdue
    }
order-new = New order
order-export = Export CSV
order-open-only = Show open orders only
order-all = All orders
order-none-ever = Nothing was ordered yet.
order-none = Nothing is on order.
order-none-next = Order from a plan that lacks parts, or from the shortage list.
order-page-of = Page { $page }, { $total } in all.
order-newer = Newer
order-older = Older
order-count =
    { $n ->
        [one] 1 order
       *[other] { $n } orders
    }
order-count-open =
    { $n ->
        [one] 1 open order
       *[other] { $n } open orders
    }
order-here-of = { $n } here
order-list-caption = Orders, the newest first
order-column-order = order
order-column-state = state
order-column-what = what
order-column-for = for
order-column-supplier = supplier
order-column-expected = expected

# A new order.
order-no-models = There are no models yet.
order-no-models-next = Every ordered part is of a model: add the model first.
order-new-head-model = New head model
order-field-model = Model
order-field-number = Number
order-field-number-hint = Of a head or taper blank
order-field-count = How many
order-field-from = Lightest that will do
order-field-from-hint = 262.5; may be left out
order-field-from-hint-oz = 9.259; may be left out
order-field-to = Heaviest that will do
order-field-for = For
order-field-supplier = Supplier
order-field-later = May be settled later
order-field-expected = Expected on
order-field-note = Remark
order-place = Order
order-back = Back
order-count-needed = Enter how many, for example 4
order-group-head = Heads
order-group-adapter = Adapters
order-group-shaft = Shafts
order-group-grip = Grips
order-group-tip-weight = Tip weights
order-group-ferrule = Ferrules
order-group-adhesive = Adhesives
order-group-tape = Tapes

# One order.
order-figure-ordered = ordered
order-figure-here = here
order-figure-open = to come
order-history = History
order-event-other = { $n } came in their place: { $what }
order-event-came = { $n } came
order-event-supplier = supplier { $supplier }
order-event-expected = expected { $expected_on }
order-event-remark = remark
order-came-heading = Parts came
order-came = How many came
order-came-needed = Enter how many came, for example 4
order-came-number = Another number came
order-came-number-hint = Only where it is not the one ordered
order-came-model = Another model came
order-came-model-hint = Its code; only where it is not the one ordered
order-came-short = The rest does not come
order-came-anyway = They came all the same: book them in
order-came-button = Book in and weigh
order-came-more = More came
order-tell = Change supplier or day
order-keep = Keep
order-close = Close the order
order-close-why = Why? The order keeps the reason.
order-close-short = The supplier sends no more
order-cancel = Cancel the order

# What the plan of a job lacks.
order-wanted = Parts to order
order-wanted-open = to order
order-wanted-ordered = ordered
order-wanted-clubs = for the { $clubs }
order-wanted-of-them = { $n } of them ordered
order-wanted-button = Order these for this job

# Orders that are to come today or are late.
order-due = Expected
order-due-today = today
order-due-from = from { $supplier }
