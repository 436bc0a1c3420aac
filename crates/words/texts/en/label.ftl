### Labels of parts

label-title = Labels
label-scan-square = scan the square code
label-of-part = { $code }, { $what }, { $mass }
label-part = { $name } { $number }

# The page of labels.
label-none = No parts match.
label-none-next = Choose the parts on the stock page, then print their labels.
label-next = The next, from { $from } of { $total }
label-sheet = Sheet
label-strip = Strip, one a page
label-back = Back to the stock
label-print-sheet = Print this page at 100 %, without margins of its own: each label is 62 × 29 mm.
label-print-strip = Print this page at 100 %, without margins of its own: each label is 62 × 29 mm, one on each page of the strip.
label-count =
    { $n ->
        [one] { $n } label
       *[other] { $n } labels
    }
