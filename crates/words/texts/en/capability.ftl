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

# How often the forecasts held.
capability-bands = How often the forecasts held
capability-bands-mean = Before each reading Setwright says where it should come out, and promises that 95 of 100 readings do. Here the shop's own readings since { $since_on } are counted against the forecast that stood before each. Readings that were taken back or read again are left out. In brackets: the share of the shop in the long run lies here, 95 times in 100; readings of one job count as one case.
capability-bands-none = No reading of the last year had a forecast yet.
capability-bands-by-step = Forecasts that held, by step
capability-bands-by-month = Forecasts that held, by month
capability-bands-step = step
capability-bands-read = reading
capability-bands-of = readings
capability-bands-share = held
capability-bands-verdict = what it says
capability-bands-percent = { PLAIN($percent, digits: 0) } % ({ PLAIN($low, digits: 0) } to { PLAIN($high, digits: 0) })
capability-bands-every = every step

promise-too-sure = too sure: fewer held than promised
promise-too-careful = too careful: more held than promised
promise-kept = as promised
promise-too-few = too few readings to say
