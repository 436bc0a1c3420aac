### Planner

# What the planner refuses.
planner-refused-no-clubs = there is no club to plan
    .next = Give at least one club
planner-refused-not-finite = { $what } of club { $club } is { FIGURE($value) }, which is not a finite number
    .next = Correct the reading or leave the part out
planner-refused-out-of-range = { $what } is { $value }: it must be between { $low } and { $high }
    .next = Check the figure and its unit
planner-refused-unknown-part = club { $club } names { $kind } { $part }, and the stock lists only { $n }
    .next = Add the part to the stock first
planner-refused-listed-twice = club { $club } lists { $kind } { $part } twice
    .next = Keep one of the two
planner-refused-plan-shape = the plan has { $got } clubs, and the question has { $expected }
    .next = Give the plan that belongs to these clubs
planner-refused-cost-row = row { $row } of the costs has { $got } entries, and the first has { $expected }
    .next = Give one cost for every column
planner-refused-cost-value = the cost of row { $row }, column { $column } is { FIGURE($value) }
    .next = Give a number, or infinity for a pair that is not allowed
planner-refused-check-failed = the plan failed its check: { $log }

planner-asked-base-deviation = base deviation
planner-asked-cap-of-tip-weight = cap of tip weight
planner-asked-contribution-of-part = contribution of a part
planner-asked-contribution-of-tip-weight = contribution of a tip weight
planner-asked-cost-of-unbuilt-club = cost of an unbuilt club
planner-asked-extra-cost-of-part = extra cost of a part
planner-asked-loss-of-pair-of-tip-weights = loss of a pair of tip weights
planner-asked-mass-of-part = mass of a part
planner-asked-mass-of-tip-weight = mass of a tip weight
planner-asked-mass-of-parts-not-chosen = mass of the parts not chosen
planner-asked-nominal-shaft-mass = nominal shaft mass
planner-asked-points-per-gram-of-head = points per gram of head
planner-asked-priority-of-job = priority of a job
planner-asked-quantum-of-cost = quantum of cost
planner-asked-target-mass = target mass
planner-asked-weight-of-loss = weight of the loss
planner-asked-zero-of-head-scale = zero of the head scale
planner-asked-weight-of-gram-of-tip-weight = weight of a gram of tip weight
planner-asked-weight-of-second-tip-weight = weight of a second tip weight
planner-asked-weight-of-gram-of-shaft-range = weight of a gram of shaft range
planner-asked-weight-of-gram-of-whole-mass = weight of a gram of whole mass
planner-asked-standard-deviation-of-finish = standard deviation of the finish
planner-asked-tolerance = tolerance
planner-asked-standard-deviation-of-what-reading-tells = standard deviation of what the reading tells
planner-asked-standard-deviation-of-what-stays-unknown = standard deviation of what stays unknown
planner-asked-spread-of-spare-grips = spread of the spare grips
planner-asked-number-of-spare-grips = number of spare grips

# What is refused of a search for a plan.
search-fault-seconds = a search of { FIGURE($value) } s is not possible
    .next = Give 0 to { FIGURE($most) } s; a first plan is there at once
search-fault-seed = { $seed } is too large for a seed
    .next = Give a whole number from 0 to { $most }
search-fault-changed = stock or readings changed since this plan was proposed
    .next = Look at the new plan, then accept it
