### What is refused, wherever it comes from

refusal-with-next = { $what }. { $next }
refusal-without-next = Correct it
refusal-unknown = there is no { $what } “{ $name }”

entry-out-of-range = { $entry } is { $value }: it must be between { $low } and { $high }
    .next = Check the figure and its unit
entry-no-figure = { $entry } takes no figure
    .next = Leave it out
entry-unreadable = { $entry }: { $what }

# An entry, as a person finds it.
entry-of-field = { $name }
entry-of-number = number { $number }: { $name }
entry-of-blank =
    { $number ->
        [none] blank for all numbers: { $name }
       *[other] blank for { $number }: { $name }
    }
entry-of-tip-trim = tip trim of { $number }
entry-of-length-of = length of the { $number }
entry-of-reading = { $what }

# Something that was named and does not exist.
not-found-named = there is no { $what } “{ $name }”
not-found-model = there is no { $kind } model “{ $code }”
not-found-number = { $model } has no number “{ $number }”
not-found-blank = the shaft model { $model } has no blank for “{ $number }”
noun-model = model
noun-usual-model = usual model
noun-part = part
noun-sheet = sheet
noun-customer = customer
noun-job = job
noun-club = club
noun-slot = place in the tray
noun-step = step
noun-reading = reading
noun-scale = scale
noun-check-weight = check weight
noun-check = check
noun-study = study
noun-batch = batch
noun-order = order
noun-plan-weight = weight
noun-record = record
noun-label = code
noun-layout = layout
noun-job-kind = kind of job
noun-learned = learned value
noun-mark = mark
noun-anything = customer, job, part, lot or order

# What to do about something that does not exist.
find-it-known = Known are { $known }
find-it-known-or-add = Known are { $known }; or add it under Stock, Models
find-it-add-model = Add the { $kind } first, under Stock, Models
find-it-look-up-model = Look it up under Stock, Models
find-it-add-blank = Add the blank to the shaft model
find-it-choose-shaft = Choose a shaft model that has this number
find-it-one-of = Write { $known }

# What the program could not work out.
work-fault-belief = the forecast could not be worked out: { $what }
work-fault-plan = the plan could not be worked out: { $what }
work-fault-program = the program made a mistake: { $log }. Nothing was saved
    .next = Please report it to the makers of the program

noun-part-or-card = part or job card

noun-club-of-job = club of this job
noun-earlier-reading = earlier reading of this club
