### Stock list

stock-list-title = Import parts
stock-list-file = File
stock-list-file-hint = A workbook (XLSX), or a table saved as CSV in UTF-8
stock-list-rows = Or its rows
stock-list-look = Check the list
stock-list-look-first = Nothing is kept until you have seen the result.
stock-list-form = Form of the list
stock-list-form-size = Any list with one part a row, up to { $rows } rows and { $size_mb } MB. One line names the columns; in the next step you choose which column is which.
stock-list-form-names = These names are recognized in any order: <code>{ $names }</code>. A code and a model are required.
stock-list-form-cells = Write cells as in the workshop: 256.1 or 256,1, 8.9 oz, 36 3/4 in. A cell without a unit is in the unit of its column.
stock-list-form-models = Add the models first: <a>load models</a>.
stock-list-remembered = Remembered columns
stock-list-remembered-hint = a list with the same headings is recognized
stock-list-forget = Forget
stock-list-nothing = There is no file and no text. Choose a file, or paste its rows
stock-list-not-whole = The file did not come back complete from the page. Choose it again.
stock-list-load-again = Load it again.

# The second step: which column is which.
stock-list-twice = “{ $first }” and “{ $second }” cannot both be the { $name }. Choose one
stock-list-columns-next = Choose below which column is which, then check again. Nothing is kept yet.
stock-list-known = This is a list like “{ $name }”.
stock-list-known-next = Its columns are used as remembered; change what is different.
stock-list-not-kept = nothing is kept yet
stock-list-keep-all =
    { $n ->
        [one] Keep { $n } part
       *[other] Keep { $n } parts
    }
stock-list-keep-good =
    { $n ->
        [one] Keep the good row
       *[other] Keep the { $n } good rows
    }
stock-list-look-again = Check again
stock-list-another = Another file
stock-list-sheet = Sheet
stock-list-header-line = Line of the headings
stock-list-remember = Remember these columns as
stock-list-remember-hint = For example the supplier's name; the next list with the same headings is recognized. Empty: not remembered
stock-list-columns = Columns
stock-list-columns-caption = Columns of the file
stock-list-heading = heading
stock-list-is = is
stock-list-unit = unit
stock-list-first-cells = first cells
stock-list-means = Meaning of “{ $heading }”
stock-list-unit-of = Unit of “{ $heading }”
stock-list-not-used = not used
stock-list-choose = choose
stock-list-every-row = For every row
stock-list-every-row-hint = what the list leaves out
stock-list-as-in-column = as in its column

# What it gives.
stock-list-good = good rows
stock-list-doubtful = of them doubtful
stock-list-bad = bad rows
stock-list-good-first = Good rows (first 50)
stock-list-good-rows = Good rows
stock-list-bad-rows = Bad rows
stock-list-doubtful-rows = Doubtful rows
stock-list-doubtful-hint = good, but check them
stock-list-line = line { $line }
stock-list-more = And { $n } more.
stock-list-more-bad = And { $n } more, all in the file of bad rows.
stock-list-bad-file = Save the bad rows, correct them (the first column says what is wrong, and is ignored), and import that file.
stock-list-save-bad = Save the bad rows
stock-list-remembered-as = The columns are remembered as <strong>{ $name }</strong>.
stock-list-not-remembered = The columns are not remembered: { $what }
stock-list-import-more = Import more
stock-list-kept =
    { $n ->
        [one] { $n } part kept.
       *[other] { $n } parts kept.
    }
stock-list-refused =
    { $n ->
        [one] { $n } row was refused.
       *[other] { $n } rows were refused.
    }

# What the command prints.
stock-list-models = { $kept } models kept, { $refused } refused
stock-list-done = { $kept } parts kept, { $refused } rows refused
stock-list-unused = columns not used: { $headings }
stock-list-warning = line { $line }, { $code }: { $doubt }
