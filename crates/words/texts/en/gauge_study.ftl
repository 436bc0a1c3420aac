### Gauge studies

# What is refused of a gauge study.
study-fault-part-unnamed = a part of the study has no name
    .next = Give each part its own name
study-fault-builder-unnamed = a builder of the study has no name
    .next = Give each builder their own name
study-fault-part-twice = the part “{ $name }” is named twice
    .next = Give each its own name
study-fault-builder-twice = the builder “{ $name }” is named twice
    .next = Give each their own name
study-fault-too-few = { $parts } parts, { $builders } builders and { $trials } trials are too few
    .next = Take at least 5 parts, 2 builders and 2 trials; 10, 3 and 3 are recommended
study-fault-too-many = { $parts } parts, { $builders } builders and { $trials } trials are more than a study takes
    .next = Take at most 20 parts, 5 builders and 5 trials
study-fault-not-finished = { $n } of { $of } readings are still to be taken
    .next = Go on with the study

study-advice-more = { $parts } parts, { $builders } builders and { $trials } trials are recommended; with fewer the shares are rough.
study-found-spread = Of the spread you see, { PERCENT($gauge_share) } is the scale and the hands: one hand's readings scatter by { $scale }, the hands differ by { $hands }.
study-question-far = “{ $typed }” is far from what { $part } read before. Look at what is on the scale and at the unit, then enter it again, or keep it as it is.
study-next-hands-differ =
    { $classes ->
        [0] The scale does not tell these parts apart at all. The hands differ more than the scale scatters: agree on how a part is seated and when the figure is taken, then study it again.
        [1] The scale does not tell these parts apart at all. The hands differ more than the scale scatters: agree on how a part is seated and when the figure is taken, then study it again.
       *[other] The scale tells these parts apart in { $classes } classes only; { $wanted } are wanted. The hands differ more than the scale scatters: agree on how a part is seated and when the figure is taken, then study it again.
    }
study-next-repeat =
    { $classes ->
        [0] The scale does not tell these parts apart at all. Read each part { $times } times, re-seated, and take the mean; or take a finer scale.
        [1] The scale does not tell these parts apart at all. Read each part { $times } times, re-seated, and take the mean; or take a finer scale.
       *[other] The scale tells these parts apart in { $classes } classes only; { $wanted } are wanted. Read each part { $times } times, re-seated, and take the mean; or take a finer scale.
    }
study-next-finer-scale =
    { $classes ->
        [0] The scale does not tell these parts apart at all: they are within { $within } of each other. Take a finer scale, or parts that differ as much as your stock does.
        [1] The scale does not tell these parts apart at all: they are within { $within } of each other. Take a finer scale, or parts that differ as much as your stock does.
       *[other] The scale tells these parts apart in { $classes } classes only; { $wanted } are wanted: they are within { $within } of each other. Take a finer scale, or parts that differ as much as your stock does.
    }

# A new study.
study-new-title = New gauge study
study-crumb = scales
study-about = Several parts, each read several times by several builders, in random order. It shows how much of the spread you see is the scale and the hands. Pause and resume at any time.
study-scale = Scale
study-trials = How often each reads each part
study-trials-hint = 2 to 5; 3 is recommended
study-builders = Who reads
study-builders-hint = A name a line, 2 to 5; 3 are recommended. Alone? Yourself in the morning and yourself in the evening
study-parts = Parts
study-parts-hint = A code or a number a line, 5 to 20; 10 are recommended, as different from each other as your stock is. Mark them so that the figure read cannot be seen
study-begin = Start
study-needs-whole = A whole number is needed

# A study at the bench.
study-title = Gauge study
study-progress = { $scale } · { $done } of { $of } read
study-progress-bar = How many are read
study-taken = The scale states this scatter from now on.
study-queued = study, { $part }
study-turn = { $builder } reads <strong>{ $part }</strong>
study-as-it-is = Keep “{ $typed }” as it is
study-keep = Keep
study-place = Reading { $place } of { $of }. Earlier readings are hidden on purpose. Stop whenever you like: the study waits under Scales.
study-again = { $part } again: that was wrong
study-stop = Stop here

# What it found.
study-more-than = more than { $most }
study-good = good: below 10 %
study-usable = usable: 10 to 30 %
study-poor = poor: above 30 %
study-figure-share = scale and hands
study-figure-classes = classes told apart
study-figure-classes-note = 5 or more are wanted
study-figure-noise = one reading scatters by
study-figure-noise-note = rounding taken off
study-states = The { $scale } states a scatter of <strong>{ $noise }</strong>. Forecasts use what is stated.
study-take = State { $noise } from now on
study-figures = Figures
study-caption = What the study found
study-column-what = what
study-column-variance = by analysis of variance
study-column-ranges = by averages and ranges
study-row-equipment = one hand's repeats
study-row-appraiser = between the hands
study-row-interaction = hands that differ from part to part
study-row-gauge = scale and hands together
study-row-part = between the parts
study-row-total = everything
study-row-share = share of scale and hands
study-about-figures = Figures are standard deviations. Spreads add up like the sides of a right triangle, so the shares do not add up to 100 %. { $parts } parts, { $builders }, each { $trials } times, started { $begun_at }.
study-back = Scales

# The command.
study-command-none = No gauge study yet. Start one on the page Scales.
study-command-one = { $id }  { $scale }, started { $begun_at }: { $done } of { $of } read
