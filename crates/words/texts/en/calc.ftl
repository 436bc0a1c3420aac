### Calculations: their names and their pages

calc-title-swing-weight = Swing weight
calc-summary-swing-weight = Moment about the fulcrum, points and letter of a club, from its parts or from its mass and balance point.
calc-title-inertia = Inertia
calc-summary-inertia = Inertia of a club from its parts or from a pendulum, and head masses for equal inertia or equal swing weight.
calc-title-trim = Shaft trimming
calc-summary-trim = Mass, balance point and mass line of a shaft after its cuts, and the cut that gives a finished length.
calc-title-frequency = Frequency and deflection
calc-summary-frequency = Frequency and deflection of a clamped club, calibrated to a reading, and what a change does to it.
calc-title-soft-side = Soft side and bow
calc-summary-soft-side = Which way a shaft is soft and which way it is bowed, from readings around it, and how sure that is.
calc-title-pluck = Recording of a plucked club
calc-summary-pluck = Frequency and damping from a recording; with two axes also the soft and the stiff direction.
calc-title-grip-size = Grip size
calc-summary-grip-size = Diameter along a grip on its shaft, layers of tape for a wanted size, and what the tape does to the swing weight.
calc-title-lie = Lie and loft
calc-summary-lie = Lie when the length changes, aim error of a wrong lie, and bending steps within the maker's limit.
calc-title-glue = Glue
calc-summary-glue = Adhesive in a joint and a batch, pot life and cure at a temperature, and the stress of the swing.

calc-index = Calculations
calc-index-crumb = for one club at a time; nothing is saved
calc-all = All calculations
calc-crumb = Calculation
calc-example = The figures are an example.
calc-example-next = Replace these; leave blank what you don't need.
calc-not-used =
    { $count ->
        [one] One entry could not be used.
       *[other] { $count } entries could not be used.
    }
calc-not-used-next = Look for the red marks.
calc-recording = Recording
calc-recording-hint = WAV with one or two channels, or CSV with time and one or two axes.
calc-recording-read = Read the recording
calc-recording-samples = Enter samples instead
calc-figures = Figures
calc-calculate = Calculate
calc-back-to-example = Back to the example
calc-sd-hint = ± is one standard deviation of the reading; leave it blank where you do not know it.
calc-usual = usual
calc-numbers-hint = Numbers, one after the other
calc-numbers-unit-hint = Numbers in { $unit }, one after the other
calc-rows-first-line = First line: { $columns }
calc-rows-hint = One line for each, below the line that names the columns
calc-more-figures = More figures
calc-what = what
calc-value = value
calc-one-sd = one standard deviation
calc-yes = yes
calc-no = no

calc-what-if = What if
calc-what-if-show = Show it
calc-what-if-planned = As planned
calc-what-if-head-g = head
calc-what-if-tip-g = tip weight
calc-what-if-grip-g = grip
