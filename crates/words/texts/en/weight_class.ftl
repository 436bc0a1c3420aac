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

# What is refused of a question about weights.
sorting-fault-width-and-count = a width and a count of classes are both given
    .next = Give one of the two
sorting-fault-no-club = no club is asked about
    .next = Name a job, a sheet or a club with its length and swing weight
