### Margins against the Equipment Rules of golf

# What the rules limit.
limited-length = length
limited-shaft-lean = shaft from the vertical
limited-shaft-along = shaft along the line of play
limited-straight-shaft = straight shaft
limited-bending = bending and twisting
limited-neck = neck
limited-grip-length = grip length
limited-grip-across = grip across
limited-grip-shape = grip shape
limited-wood-head = wood head
limited-clubs = clubs carried

# A limit.
rules-limit-length-at-least = at least { $at_mm }
rules-limit-length-at-most = at most { $at_mm }
rules-limit-angle-at-least = at least { $at_deg }
rules-limit-clubs-at-most = at most { $n } clubs
rules-limit-lean-along = at most { ANGLE($forward_deg, digits: 0) } forward and { ANGLE($back_deg, digits: 0) } back
rules-limit-straight = straight from the top of the grip to within { $above_sole_mm } above the sole
rules-limit-bends-alike = the same however the shaft is turned
rules-limit-neck = shaft at the heel, neck at most { $most_mm }
rules-limit-round-grip = circular across, except putters
rules-limit-wood-head = heel to toe at most { $heel_to_toe_mm } and more than face to back, sole to crown at most { $height_mm }, at most { $volume_cc } cc (+{ $volume_play_cc }), inertia at most { $inertia_g_cm2 } g·cm² (+{ $inertia_play_g_cm2 })

# How a length was come by.
length-basis-plane = by the 60° plane; along the shaft axis { $axis_mm }
length-basis-plane-assumed = by the 60° plane, ± { $open_mm } because the contact of the sole is assumed, not measured; along the shaft axis { $axis_mm }
length-basis-axis = along the shaft axis

# A club against a limit.
rules-length-inside = { $what } { $measured_mm }, { $by_mm } inside the limit of { $limit_mm }
rules-length-beyond = { $what } { $measured_mm }, { $by_mm } beyond the limit of { $limit_mm }
rules-length-at = { $what } exactly at the limit of { $limit_mm }
rules-angle-inside = { $what } { $measured_deg }, { $by_deg } inside the limit of { $limit_deg }
rules-angle-beyond = { $what } { $measured_deg }, { $by_deg } beyond the limit of { $limit_deg }
rules-angle-at = { $what } exactly at the limit of { $limit_deg }
rules-clubs = { $n } clubs; a player carries at most { $limit }
rules-not-measured = { $what }: not measured
rules-grip-round = grip round by its model; not measured
rules-grip-ribbed = grip ribbed by its model; only the governing bodies decide which ribs are allowed
rules-grip-flat-sided = grip flat-sided by its model, on a club that is not a putter

# A clause, as it is cited.
rules-clause =
    { $clause ->
        [G-10] local rule G-10, where it is in force
       *[other] { $clause }
    }
