### Weight class: parts sorted by weight, and the tray

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

# What the command prints.
weight-class-line = { $name }  { PLAIN($from_g) } to { $to_g }  { $n }: { $codes }
weight-class-all =
    { $n ->
        [one] { $n } part, { $mean_g }
       *[other] { $n } parts, mean { $mean_g }, scatter { MASS($sd_g, digits: 2) }
    }
weight-class-unweighed = Not weighed: { $codes }
weight-class-page = Sort by weight
weight-class-no-models-next = Sorted parts are of a model: add the model first.
weight-class-crumb =
    { $n ->
        [one] { $what }, 1 part
       *[other] { $what }, { $n } parts
    }
weight-class-number = Number
weight-class-number-hint = Empty: all of the model
weight-class-width = Width of a class
weight-class-width-hint = Empty: { $usual_g }
weight-class-classes = Or the number of classes
weight-class-columns = Places in a row of the tray
weight-class-sort = Sort
weight-class-none = No free, weighed part of { $what } is in stock.
weight-class-none-next = Weigh them in, or choose another number.
weight-class-weigh-in = Weigh in
weight-class-parts = parts
weight-class-mean = mean
weight-class-scatter = scatter
weight-class-scatter-note = one standard deviation
weight-class-print = Print this page: the classes with their codes, then the tray as it is filled.
weight-class-list = Classes
weight-class-caption = Weight classes
weight-class-column-class = class
weight-class-column-masses = masses
weight-class-column-parts = parts
weight-class-column-codes = codes
weight-class-not-weighed = <b>Not weighed, so not sorted:</b> { $codes }
weight-class-tray = Tray
weight-class-tray-hint = { $rows } rows of { $columns }, the lightest first; each class begins a row
weight-class-tray-caption = The tray, row by row
weight-class-row = row
