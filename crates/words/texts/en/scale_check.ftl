### A check of a scale, the questions about it, weights and gauges

check-question-other-unit = { $shown } is far from the { $wanted } of { $standard }, but { $typed } would be right
check-question-other-standard = { $shown } is what { $other } should show, not { $standard } ({ $wanted })
check-question-far-off = { $shown } is { $by } away from the { $wanted } of { $standard }
check-question-next-other-unit = Was it { $typed }? Say so, or keep { $shown } as it is.
check-question-next-other-standard = Was { $other } on it? Say so, or keep { $shown } as it is.
check-question-next-far-off = Look at what is on it and read again, or keep { $shown } as it is.

scale-check-link = Check it
scale-check-none = The { $scale } has nothing to be checked with.
scale-check-none-next = A check weight with its certified figure, or a club whose swing weight was assigned, tells whether a scale can be trusted.
scale-check-enter-weight = Enter a check weight
scale-check-title = Check the { $scale }
scale-check-crumb = scales
scale-check-choice = { $standard }: { $value } ± { $allowed }
scale-check-on-scale = On the scale
scale-check-put = Put <strong>{ $standard }</strong> on the { $scale }.
scale-check-allowed = ± { $allowed } is allowed
scale-check-keep = Keep
scale-check-keep-new = Keep the new entry
scale-check-how-mass = Zero it first, set the weight down in the middle, wait until it stands still.
scale-check-how-swing-weight = Zero it first, seat the club against the stop, wait until it stands still.
scale-check-how-other = Clamp and set it as always.
scale-check-shows = It shows
scale-check-shows-empty = it shows
scale-check-answers = What was it?
scale-check-was = It was { $typed }
scale-check-was-on = { $standard } was on it
scale-check-as-it-is = Keep “{ $typed }” as it is
scale-check-or-again = Or read the { $scale } again and enter that:

# Weights and gauges.
scale-setup-title = Weights and gauges
scale-setup-crumb = scales
scale-setup-weights = Check weights and check clubs
scale-setup-change = Change under Shop
scale-setup-new-weight = Another check weight or check club
scale-setup-name = Name
scale-setup-name-hint = For example: 200 g weight; or the check club
scale-setup-scale = For the
scale-setup-value = Should show
scale-setup-value-hint = With its unit where it is not the scale's own: 200.003, 7.05 oz, D1.4
scale-setup-sd = Uncertainty (1 SD)
scale-setup-sd-hint = In the scale's unit: half of what the certificate gives with k = 2
scale-setup-tolerance = May be off by
scale-setup-tolerance-hint = In the scale's unit. Empty: what the scale's own figures allow
scale-setup-certified = Certified on
scale-setup-certificate = Certificate
scale-setup-certificate-hint = Number, by whom; or how the swing weight was assigned
scale-setup-mass = Mass of a check club
scale-setup-keep = Save
scale-setup-gauges = Other gauges
scale-setup-gauge = <strong>{ CAPITAL($gauge) }</strong>: { $measures }, step { $step }, scatters by { $scatter }
scale-setup-new-gauge = Another gauge: frequency, loft and lie, length
scale-setup-gauge-hint = For example: frequency gauge
scale-setup-measures = It measures
scale-setup-step = Step of its display
scale-setup-step-hint = In cpm, degrees or mm
scale-setup-scatter = Scatter
scale-setup-scatter-hint = One re-seated reading, one standard deviation; a gauge study finds it
scale-setup-back = Scales
scale-setup-weight = <strong>{ $standard }</strong> <tag>{ $scale }</tag> { $value }, known to { $sd }
scale-setup-remove = Remove
scale-setup-needs-name = Give it a name
scale-setup-needs-figure = Enter this figure
scale-setup-needs-sd = Say how surely it is known
