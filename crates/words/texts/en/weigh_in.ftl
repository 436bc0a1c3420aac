### Weigh-in

# What is refused of weighing a part in.
weigh-in-fault-no-mass = there is no mass to judge
    .next = Give mass_g, or mass as typed, for example 268.4
weigh-in-fault-changed = { $code } was changed or planned since it was weighed in
    .next = Open it under Stock and write there what is wrong with it
weigh-in-fault-bad-key = “{ $key }” cannot be a request key
    .next = Give 1 to 64 letters, digits and -, or leave it out

# What a weighed part may be. $way says whether such parts are heavier or lighter than the number it was weighed as.
weigh-likely-as-said = it is the part you chose
weigh-likely-next-head =
    { $way ->
        [heavier] it looks like the next number, { $number }: { $club } heads are { $by_g } heavier
       *[other] it looks like the next number, { $number }: { $club } heads are { $by_g } lighter
    }
weigh-likely-next-shaft =
    { $way ->
        [heavier] it looks like the next number, { $number }: { $number } shafts are { $by_g } heavier
       *[other] it looks like the next number, { $number }: { $number } shafts are { $by_g } lighter
    }
weigh-likely-before-head =
    { $way ->
        [heavier] it looks like the number before, { $number }: { $club } heads are { $by_g } heavier
       *[other] it looks like the number before, { $number }: { $club } heads are { $by_g } lighter
    }
weigh-likely-before-shaft =
    { $way ->
        [heavier] it looks like the number before, { $number }: { $number } shafts are { $by_g } heavier
       *[other] it looks like the number before, { $number }: { $number } shafts are { $by_g } lighter
    }
weigh-likely-other-head =
    { $way ->
        [heavier] it looks like another number, { $number }: { $club } heads are { $by_g } heavier
       *[other] it looks like another number, { $number }: { $club } heads are { $by_g } lighter
    }
weigh-likely-other-shaft =
    { $way ->
        [heavier] it looks like another number, { $number }: { $number } shafts are { $by_g } heavier
       *[other] it looks like another number, { $number }: { $number } shafts are { $by_g } lighter
    }
weigh-likely-other-model =
    { $number ->
        [none] it looks like another model: the { $model } weighs { $expected_g }
       *[other] it looks like another model: the { $model } { $number } weighs { $expected_g }
    }
weigh-likely-wrapped = it is { $by_g } too heavy: a film or a label may still be on it
weigh-likely-slip = no part in the models weighs that

# What its mass says.
weigh-finding-as-expected = it weighs what it should
weigh-finding-not-compared = there is no mass to compare
weigh-finding-looks = { $mass_g }: { $likely }
weigh-finding-too-heavy =
    { $number ->
        [none] { $mass_g } is { $by_g } more than this { $kind } should weigh, { $expected_g }
       *[other] { $mass_g } is { $by_g } more than the { $number } should weigh, { $expected_g }
    }
weigh-finding-too-light =
    { $number ->
        [none] { $mass_g } is { $by_g } less than this { $kind } should weigh, { $expected_g }
       *[other] { $mass_g } is { $by_g } less than the { $number } should weigh, { $expected_g }
    }

# What to do then.
weigh-next-take-off = Take it off and weigh it again
weigh-next-read-sole = Look at the number on its sole
weigh-next-read-part = Read the number printed on it
weigh-next-weigh-again = Weigh it again on an empty pan

# Heads as received that cannot be bent to their model's figures.
bend-doubt-loft = its loft is { $is_deg }, { $off_deg } off the model's { $model_deg }: it can be bent to { $least_deg } to { $most_deg } only
bend-doubt-lie = its lie is { $is_deg }, { $off_deg } off the model's { $model_deg }: it can be bent to { $least_deg } to { $most_deg } only
bend-doubt-loft-unbendable = its loft is { $is_deg }, { $off_deg } off the model's { $model_deg }: it must not be bent
bend-doubt-lie-unbendable = its lie is { $is_deg }, { $off_deg } off the model's { $model_deg }: it must not be bent

# The page of the weigh-in.
weigh-in-title = Weigh in
weigh-in-no-models = There are no models yet.
weigh-in-no-models-next = Every part belongs to a model: add the model first.
weigh-in-which-number = <strong>Which number?</strong> Choose it once; it stays for the parts that follow.
weigh-in-choose-model = choose the model first
weigh-in-number-first = Choose the number first
weigh-in-booked = Order { $order } is booked in.
weigh-in-booked-next = Weigh in the parts that came, { $n } in all.
weigh-in-this-model = Weigh in this model
weigh-in-another-model = Change model
weigh-in-numbers = Numbers
weigh-in-count = Or how many in the box
weigh-in-count-hint = Count the box now; weigh each piece when you use it
weigh-in-lot-and-place = Lot and place
weigh-in-stays = Stays for the next part
weigh-in-code-hint = The next code; type over it, or scan a label that is already printed
weigh-in-mass-only = Ask the mass only
weigh-in-with-angles = Ask loft and lie of each
weigh-in-keep = Keep, next
weigh-in-as-it-is = Keep it as it is
weigh-in-again = Weigh it again
weigh-in-it-is = It is the { $number }
weigh-in-done = Done
weigh-in-key-same = asks again
weigh-in-key-again = weigh it again
weigh-in-key-next-box = next box; from the last one: keep
weigh-in-key-next = keep, next part
weigh-in-key-undo = undo the last one

# The large sign over it, and what was kept.
weigh-in-question = <strong>{ CAPITAL($finding) }.</strong> { $next }. Not kept yet.
weigh-in-in-box = { $n } in the box
weigh-in-kept-as = Kept as the { $number }.
weigh-in-bend = <strong>{ CAPITAL($doubt) }.</strong> It is kept; put it aside before it is glued.
weigh-in-total =
    { $n ->
        [one] { $n } part
       *[other] { $n } parts
    }
weigh-in-last = Last parts
weigh-in-off-model = { MASS($off_g, signed: 1) }
weigh-in-undo = Undo
weigh-in-settings = Labels and sound
weigh-in-print = Print each part's label as it is kept
weigh-in-print-hint = On this tablet's printer, one label of 62 × 29 mm. The browser asks each time unless it is set up to print at once.
weigh-in-sound = A tone for each part kept, a double tone for a question
weigh-in-settings-keep = Save for the shop

# The picture of the masses.
weigh-in-heap-none = None weighed yet; the maker's mass is { $nominal_g }
weigh-in-heap-words =
    { $sd_g ->
        [none] { $n } weighed, { $mean_g } on average, { MASS($off_g, signed: 1) } from the maker's { $nominal_g }
       *[other] { $n } weighed, { $mean_g } on average, { MASS($off_g, signed: 1) } from the maker's { $nominal_g }; they scatter by { $sd_g }
    }
weigh-in-heap-title = Masses of { $name }: { $words }
weigh-in-heap-maker = maker { $nominal_g }

# What the command prints.
weigh-in-kept = { $code } is kept; the next code is { $next }
weigh-in-sure = { $finding }. { $next }, or keep it with --sure
weigh-in-odds = { $hundredths } in 100: { $likely }
