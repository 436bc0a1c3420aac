### Scales: how each stands, its checks, its trust, its calibration

# What is refused of checks and calibrations.
check-fault-taken-back = this check is taken back already
    .next = Nothing needs to be done
check-fault-trusted = the { $name } is trusted already
    .next = Nothing needs to be done
check-fault-only-overdue = the { $name } is only out of trust because its calibration is overdue
    .next = Enter its new calibration, or when it is due
check-fault-not-trusted = the { $name } is out of trust already
    .next = Nothing needs to be done
check-fault-wrong-time = a check at { $at } cannot be entered; it is { $now_at } now
    .next = Leave “at” out, or give the time at which it was read, at most two weeks ago
check-fault-no-weight = the { $name } has no check weight
    .next = Enter a check weight for it first, under Scales, Weights and gauges
check-fault-nobody-calibrated = the name of who calibrated it is missing
    .next = Enter the laboratory, or who did it here
check-fault-calibrated-later = { $calibrated_on } is still to come
    .next = Enter the day on which it was calibrated
check-fault-due-before = it would be due again on { $due_on }, not after { $calibrated_on }
    .next = Enter a later day, or leave it empty

scale-state-not-trusted = not trusted
scale-state-no-weight = no check weight
scale-state-checked = checked today
scale-state-not-checked = not checked today

scale-clock-behind = The clock shows { $now_at }, before the last entry of { $last_at }. Set this machine's clock right; nothing is lost.

# The overview.
scale-health-title = Scales
scale-health-crumb = check weights, trust, gauge studies
scale-health-setup = Weights and gauges
scale-health-serial = Scales on a serial line
scale-health-check = Check it
scale-health-enter-weight = Enter a check weight
scale-health-closer = Details
scale-health-last = Last check: { $reading } for { $standard }, { $by }, { $checked_at }.
scale-health-never = It was never checked.
scale-health-studies = Gauge studies
scale-health-new-study = New study
scale-health-studies-about = How much of the spread you see is the scale and the hands? Several parts, read by several builders, several times each.
scale-health-study-found = <a>{ CAPITAL($scale) }, { $begun_at }</a>: { PERCENT($gauge_share) } is the scale and the hands
scale-health-study-open = <a>{ CAPITAL($scale) }, { $begun_at }</a>
scale-health-study-read = { $done } of { $of } read

# The chart of a scale's checks.
check-chart-title = Error of the { $scale } with { $standard }
check-chart-none = No check yet.
check-chart-tolerance = Green: within tolerance.
check-chart-limits = Dashed: control limits, computed from the filled points.
check-chart-no-limits = Control limits appear after eight checks.
check-chart-red = Red: out of control.
check-chart-below = Below: change since the previous check.
check-chart-caption = { $title }, in { $unit }
check-chart-day = day
check-chart-error = error
check-chart-range = from the one before
check-chart-says = what it shows
check-chart-jump = { $range }, a jump

# One scale.
scale-health-kept-right = Kept: { $reading }, as it should be.
scale-health-kept-much = Kept: { $reading }, { $by } too much.
scale-health-kept-little = Kept: { $reading }, { $by } too little.
scale-health-kept-next = The scale is trusted. Open jobs use it from now on.
scale-health-checks =
    { $n ->
        [one] 1 check
       *[other] { $n } checks
    }
scale-health-no-checks = No check since its chart was started.
scale-health-no-checks-no-weight = No check since its chart was started. The scale has nothing to be checked with yet: <a>enter a check weight</a>.
scale-health-crumb-one = scales · { $measures }
scale-health-until-then = Until then its readings count with ± { $by } more.
scale-health-done = What was done
scale-health-done-hint = For example: levelled, zeroed again. It goes into the list with your name
scale-health-word = Why it is right all the same
scale-health-word-hint = No check was passed since: this is your word, and goes into the list with your name
scale-health-trust = It passed: trust it again
scale-health-trust-word = Trust it on my word

scale-health-figure-error = reads high by
scale-health-figure-error-note =
    { $n ->
        [one] ± { $band }, from 1 check
       *[other] ± { $band }, from { $n } checks
    }
scale-health-figure-drift = drifts in a week by
scale-health-figure-drift-note = ± { $band }
scale-health-figure-no-drift-note = ± { $band }: no drift to speak of
scale-health-figure-jobs = jobs use
scale-health-figure-jobs-unchecked = ± { $band }, without a check of today
scale-health-figure-jobs-checked =
    { $n ->
        [one] ± { $band } with 1 check of today, ± { $without } without
       *[other] ± { $band } with { $n } checks of today, ± { $without } without
    }
scale-health-figure-scatter = scatters by
scale-health-figure-scatter-note = one re-seated reading, as stated

scale-health-calibration = Calibration and check weights
scale-health-weights = Weights
scale-health-standard = { $standard }: { $value } ± { $sd }
scale-health-standard-of = of { $certified_on }
scale-health-standard-allowed = may be off by { $allowed }
scale-health-no-calibration = No calibration entered yet.
scale-health-enter-calibration = Enter a calibration
scale-health-calibrated-on = Calibrated on
scale-health-by-whom = By whom
scale-health-by-whom-hint = The laboratory, or who did it here
scale-health-next-due = Due again on
scale-health-next-due-hint = Empty: never asked for
scale-health-note = Certificate, note
scale-health-adjusted = It was adjusted: start a new chart
scale-health-keep-calibration = Save the calibration
scale-health-calibrated = Calibrated
scale-health-calibrated-by = { $calibrated_on }, { $by }
scale-health-due = Due again
scale-health-overdue = overdue
scale-health-not-said = no date given
scale-health-needs-day = Enter the day

# What happened to it.
scale-health-events = History
scale-health-earlier = Earlier
scale-health-event-by = { $by }, { $happened_at }
scale-health-wrong = That was wrong
scale-health-why = Why
scale-health-take-back = Take it back
scale-health-event-check = { $standard }: <strong>{ $reading }</strong>
scale-health-event-outside = outside
scale-health-event-as-it-is = kept as it is
scale-health-event-bench = at the bench
scale-health-event-taken-back = A check was taken back: { $reason }
scale-health-event-calibrated = Calibrated on { $calibrated_on } by { $by }
scale-health-event-adjusted = Calibrated on { $calibrated_on } by { $by }, adjusted: a new chart begins
scale-health-event-trusted = trusted again
scale-health-event-word = on this word alone
scale-health-event-chart = A new chart begins: { $reason }
scale-health-event-noise = Its scatter is stated as { $now } after a gauge study; it was { $before }
scale-health-distrust = Do not trust it
scale-health-seen = What was seen
scale-health-seen-hint = For example: dropped, does not come back to zero
scale-health-new-chart = Start a new chart
scale-health-new-chart-hint = For example: moved to the other bench. Earlier checks stay in the list

# The command.
scale-command-column-key = key
scale-command-column-scale = scale
scale-command-column-state = state
scale-command-column-last = last check
scale-command-column-error = reads high by
scale-command-never = never
scale-command-state = The { $scale }: { $state }.
scale-command-error = It reads high by { $error }
scale-command-error-unknown = It was never checked
scale-command-jobs =
    { $n ->
        [one] Jobs use { $error }, from 1 check of today
       *[other] Jobs use { $error }, from { $n } checks of today
    }
scale-command-weight = Check weight { $key }: { $standard }, { $value }, may be off by { $allowed }
scale-command-as-it-is = { $question } { $next } To keep it as it is: --as-it-is
scale-command-repeated = Already saved.
