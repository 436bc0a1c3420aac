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
