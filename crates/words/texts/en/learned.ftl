### What the shop has learned

# What is refused of the learned values.
learned-fault-unknown = nothing has been learned under “{ $key }”
    .next =
        { $known ->
            [none] Finish a job first: the shop learns from its readings
           *[other] Known are { $known }
        }

# What is refused of changing what the shop has learned.
learning-fault-nothing = the shop has learned nothing yet
    .next = Finish a job first: it learns from its readings

# What is refused of a figure that a builder says.
told-fault-one-figure = for { $of }, one figure is needed
    .next = Enter either what it puts on or what it takes off, in points: a joint puts on 0.75, a grip takes off 9.5
told-fault-puts-on = { $of } cannot put on { POINTS($points, digits: 2) }: it sits at the butt end, behind the fulcrum, and takes off
    .next = Enter the figure as what it takes off
told-fault-takes-off = { $of } cannot take off { POINTS($points, digits: 2) }: it sits by the head and puts on
    .next = Enter the figure as what it puts on
told-fault-limits = { $points } is not possible for { $of }: it must be between { $least_points } and { $most_points }
    .next = Enter what one of it does to one club, in points of swing weight, for example 0.75 for a joint, 9.5 for a grip, 0.25 for a wrap, 0.6 for a ferrule
told-fault-unknown-model = there is no model “{ $model }” for { $of }
    .next =
        { $known ->
            [none] Add the model under Stock first
           *[other] Enter one of { $known }
        }
told-fault-no-model = it is not said which model { $of } is of
    .next =
        { $known ->
            [none] Add the model under Stock first
           *[other] Enter its code, one of { $known }
        }
told-fault-not-told = nobody has said what { $of } of the model “{ $model }” does
    .next = Open Learned to see what was said

# What a learned value is of.
learned-what-head-centre = { $head }: centre of the head beyond the ground point
learned-what-grip-centre = { $grip }: centre of the grip from its cap
learned-what-cap = { $grip }: thickness of the cap
learned-what-shaft-centre = { $shaft }: balance point of the cut shaft against its mass line
learned-what-shaft-cut = { $shaft }: mass of what is cut off against its mass line
learned-what-shaft-stiffness = { $shaft }: stiffness against its table, or against its mass and diameters
learned-what-shaft-tilt = { $shaft }: how much stiffer toward the tip than that
learned-what-clamp-gives = the frequency clamp: how much longer a shaft acts in it than it is
learned-what-grip-gives = the same with the grip in the clamp, on top
learned-what-joint = { $adhesive }: adhesive in one joint
learned-what-tape-mass = { $tape }: mass of the tape against its model
learned-what-solvent = solvent left in a fresh grip
learned-what-scale-offset = the { $scale } reads high by
learned-what-scale-noise = the { $scale }, one reading to the next
learned-what-scale-today = the { $scale }, one day to the next
learned-what-scale-drift = the { $scale }, from morning to evening
learned-what-hand = readings by { $name } against the shop's
learned-what-told = { $name }: what { $of } puts on or takes off
learned-what-scatter = { $of }
learned-what-unknown = { $key }, from another version of the program

# The page.
learned-title = Learned
learned-changed = last changed { $changed_at }
learned-kept = Saved.
learned-kept-next = Open jobs use it from now on.
learned-empty = The shop has learned nothing yet.
learned-empty-next = It learns from the readings of each finished job: how heavy your joints and your tape are, where heads and grips have their centre, what your scales are off by. Build one job to its end; the next one is then forecast more sharply.
learned-open-bench = Bench
learned-about = What earlier jobs have taught, and what the next job begins with. “±” is where the true value is 95 times in 100. The line in a picture is where a new shop begins.
learned-group-glue = Glue and tape
learned-group-heads = Heads and shafts
learned-group-grips = Grips
learned-group-scales = Scales
learned-group-other = From another version
learned-locked = locked
learned-of-model = { $difference } against the model's own figure. A new shop begins with ± { $new_shop }.
learned-of-new-shop = A new shop begins with ± { $new_shop }.
learned-from =
    { $clubs ->
        [one] Learned from 1 club.
       *[other]
            { $jobs ->
                [one] Learned from { $clubs } clubs in 1 job.
               *[other] Learned from { $clubs } clubs in { $jobs } jobs.
            }
    }
learned-picture = { $what }: where it comes from
learned-picture-job = job { $job }
learned-which = Which clubs
learned-which-job = <a>Job { $job }</a>: { $clubs }
learned-change = Reset or lock
learned-why = Why
learned-why-hint = Goes into the history
learned-reset = Reset
learned-lock = Lock
learned-unlock = Unlock
learned-change-hint = A locked value is used as it is and learns nothing. A value that you reset begins as in a new shop.
learned-scatter = Scatter
learned-scatter-about = About two in three fall within this. Smaller means tighter forecasts.
learned-scatter-of =
    { $n ->
        [one] A new shop begins with { $new_shop }. From 1 reading.
       *[other] A new shop begins with { $new_shop }. From { $n } readings.
    }
learned-column-what = what
learned-column-now = now
learned-column-new-shop = new shop
learned-column-readings = counts as … readings
learned-column-from = where it comes from
learned-column-change = change
learned-history = History
learned-history-job = <a>Job { $job }</a> finished
learned-history-value = <strong>{ CAPITAL($cause) }</strong>: { $what }
learned-history-all = <strong>{ CAPITAL($cause) }</strong>: everything
learned-history-reason = , because “{ $reason }”
learned-history-by = { $by }, { $changed_at }
learned-all = Start as a new shop
learned-all-about = All values go back to what a new shop begins with, the locked ones too. The history stays.
learned-all-hint = For example: moved, all scales new
learned-reset-all = Reset everything
learned-no-button = nothing was chosen to do
learned-no-button-next = Press one of the buttons beside the value

# The command.
learned-command-empty = The shop has learned nothing yet. It learns from the readings of each finished job.
learned-command-column-mean = mean
learned-command-column-key = key
learned-command-column-clubs = clubs in jobs
learned-command-column-scatter = what scatters
learned-command-clubs = { $clubs } in { $jobs }

# The command that tells how capable the shop is.
learned-capability-none = No club is finished yet: each finished club counts with what its record says.
learned-capability-index = { $index } ({ $low } to { $high })
learned-capability-too-few = too few
learned-capability-column-clubs = clubs
learned-capability-column-mean = mean off by
learned-capability-column-in = in
learned-capability-column-close = too close
learned-capability-column-out = out
learned-capability-column-cp = Cp
learned-capability-column-cpk = Cpk

# What a builder knows of his shop.
told-title = What you know
told-about = What a joint, a grip, a wrap and a ferrule do to the swing weight of a middle iron in your shop. It counts as one reading in each forecast, and your clubs overrule it once they say something else. Withdrawn, it is as if it had never been said.
told-say = Say what you know
told-say-more = Change it, or say more
told-hint = In points of swing weight, as you work with them. Leave empty what you do not know.
told-keep = Keep
told-skip = Skip: I have no figures
told-withdraw = Withdraw
told-of = { CAPITAL($of) }: { $name }
told-puts-on = puts on { $by_points }
told-takes-off = takes off { $by_points }
told-sure = { $sure } (± { PLAIN($sd_points, digits: 2) })
told-by = by { $by }, { $told_at }
told-learned = { $learned_points } ± { PLAIN($band_points, digits: 2) }
told-learned-change = { $change } ± { PLAIN($band_points, digits: 2) }
told-nothing-learned = nothing yet
told-nothing-typed = Enter at least one figure, for example 0.75 for a joint, or skip the question.
told-column-of = of
told-column-model = model
told-column-said = said
told-column-learned = your clubs say
told-column-models = the models say
told-form-joint-points = A joint puts on
told-form-joint-sure = How sure of the joint
told-form-joint-model = Adhesive
told-form-grip-points = A grip takes off
told-form-grip-sure = How sure of the grip
told-form-grip-model = Grip
told-form-wrap-points = A wrap of tape takes off
told-form-wrap-sure = How sure of the wrap
told-form-wrap-model = Tape
told-form-ferrule-points = A ferrule puts on
told-form-ferrule-sure = How sure of the ferrule
told-form-ferrule-model = Ferrule
