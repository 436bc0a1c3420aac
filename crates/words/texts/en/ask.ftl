### Ask: which head masses to order

# What is refused of asking for heads by weight.
ask-fault-inside-fulcrum = the { $number }'s head is between the stop and the fulcrum of the scale
    .next = Check the length: a club shorter than 14 inches has no swing weight on this scale

# What the command prints.
ask-head-swing-weight = swing weight
ask-head-wanted = heads wanted
ask-head-supply = supplied
ask-head-inside = inside
ask-head-any-shaft = with any shaft
ask-head-order = order for one
ask-from-to = { PLAIN($from_g) } to { $to_g }
ask-mean = { PLAIN($mean_g) } ± { $sd_g }
ask-usable-share = { PERCENT($share, digits: 1) }
ask-none-fits = none fits
ask-page = Heads to order by weight
ask-still-here = Your entries are still here. Look for the red marks.
ask-nothing = There are no heads to order yet.
ask-nothing-next = Add head, shaft and grip models, or write a sheet.
ask-for-job = For a job or a sheet
ask-for-club = For one club
ask-sheet = { $player }, not approved
ask-count =
    { $n ->
        [one] 1 club
       *[other] { $n } clubs
    }

# The form of one club.
ask-field-head = Head
ask-field-number = Number
ask-field-shaft = Shaft
ask-field-grip = Grip
ask-field-ferrule = Ferrule
ask-no-ferrule = none
ask-field-length = Length
ask-field-length-to = Measured
ask-field-swing-weight = Swing weight
ask-field-wraps = Full wraps
ask-field-mean = Supplier's mean
ask-field-mean-hint = Empty: from the stock or the model
ask-field-scatter = Supplier's scatter
ask-field-scatter-hint = One standard deviation
ask-field-cap = Most in the tip
ask-field-cap-hint = Empty: the shop's own limit
ask-field-within = Allowed deviation
ask-field-within-hint = Points; empty: 0
ask-find = Find the heads
ask-number-needed = Enter the number, for example 7
ask-length-needed = Enter the length of the club, for example 37 1/4
ask-swing-weight-needed = Enter the swing weight, for example D2
ask-mean-and-scatter = Enter both the mean and the scatter, or neither

# The answer.
ask-caption = Head masses to order
ask-column-head = head
ask-column-club = club
ask-column-masses = order heads of
ask-column-supply = supplier's heads
ask-column-inside = usable
ask-column-order = for one usable head
ask-mean-scatter = { PLAIN($mean_g) } ± { $scatter_g }
ask-from-supplier = as the supplier states
ask-from-stock = as weighed here
ask-from-model = the model's
ask-nearly-all = over 99 %
ask-hardly-any = under 1 %
ask-share = { PERCENT($inside_share) }
ask-any-shaft = { $share } with any shaft
ask-hopeless = no such head
ask-hint-window = Lightest head: full tip weight ({ $cap_g }) and the lightest grip. Heaviest: no tip weight and the heaviest grip.
ask-hint-no-grip = Where no grip of the model is in stock, the model's mass counts.
ask-hint-chance = “Usable” is the chance of one head of the supplier's, with a shaft of the model's own mass and with the next shaft of the rack. Order this many to get a usable one 95 times in 100.
