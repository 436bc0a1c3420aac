### Ask


# What the command prints.
ask-head-swing-weight = swing weight
ask-head-wanted = heads wanted
ask-head-supply = supplied
ask-head-inside = inside
ask-head-any-shaft = with any shaft
ask-head-order = order for one
ask-from-to = { PLAIN($from_g) } to { $to_g }
ask-mean = { PLAIN($mean_g) } ± { $sd_g }
ask-share = { PERCENT($share, digits: 1) }
ask-none-fits = none fits
