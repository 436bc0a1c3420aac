### Where a club finishes, line by line

outlook-title = Where it finishes
outlook-stands = as it stands
outlook-if-read =
    { $n ->
        [one] once { $n } more step is read
       *[other] once { $n } more steps are read
    }
outlook-advised = with it
# More likely out than in; what to do stands below.
outlook-rather-out = More likely out than in.
outlook-finish = { LETTER($finish_points) } ± { PLAIN($band_points) }
outlook-how = How the forecast narrowed
