### Weight class


# What the command prints.
weight-class-line = { $name }  { PLAIN($from_g) } to { $to_g }  { $n }: { $codes }
weight-class-all =
    { $n ->
        [one] { $n } part, { $mean_g }
       *[other] { $n } parts, mean { $mean_g }, scatter { MASS($sd_g, digits: 2) }
    }
weight-class-not-weighed = Not weighed: { $codes }
