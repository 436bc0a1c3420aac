### Capability: how well the shop meets its tolerances

capability-title = Capability
capability-crumb = of the swing weight, over all finished clubs
capability-none = No club is finished yet.
capability-none-next = Each finished club counts here with the verdict of its record. Finish a job first.
capability-means = Cp is how many times the shop's spread fits into the tolerance: at 1 a centred shop loses 3 clubs in 1000, and 1.33 is a usual aim. Cpk also counts how far the mean is off the target. Each club counts by its own tolerance. In brackets: 95 times in 100 the figure is in this range, with this number of clubs.
capability-all = All clubs
capability-all-finished = All finished clubs
capability-by-month = By month
capability-of-months = Capability by month
capability-by-model = By head model
capability-of-models = Capability by head model
capability-which = which
capability-month = month
capability-model = model
capability-clubs = clubs
capability-mean = mean off by
capability-in = in
capability-too-close = too close to say
capability-out = out
capability-cp = Cp
capability-cpk = Cpk
capability-too-few = too few
capability-every = all
capability-index = { $value } ({ $low } to { $high })
