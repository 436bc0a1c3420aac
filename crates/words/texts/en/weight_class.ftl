### Weight class

# What is refused of sorting parts into weight classes.
sort-fault-tray-row =
    { $n ->
        [0] a tray row needs at least one place
       *[other] a tray row cannot have { $n } places
    }
    .next = Give 1 to 40 places
sort-fault-too-many-parts = { $n } parts are more than can be sorted at once
    .next = Choose a model and number with at most { $most }
sort-fault-too-many-classes = that makes { FIGURE($n) } classes
    .next = Make them wider: at most { $most } fit on a sheet
