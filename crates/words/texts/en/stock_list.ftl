### Stock list

# What is refused of remembered columns.
layout-fault-bad-name = “{ $name }” cannot be the name of remembered columns
    .next = Give 1 to { $most } letters, for example the supplier's name
layout-fault-bad-line = “{ $name }” has its headings on a line that no list has
    .next = Give the line of the headings, from 1 to { $most }, or leave it out
layout-fault-no-headings = “{ $name }” has no headings to be known by
    .next = Give the headings of the list as they are written

# Why a list of parts or models is refused as a whole.
stock-file-empty = the file is empty
    .next = Its first line must name the columns, for example { $columns }
stock-file-other-file = this is { $what }, not a CSV file or an XLSX workbook
stock-file-not-text = line { $line } is not UTF-8 text (byte { $at_byte })
    .next = Save the file as CSV in UTF-8
stock-file-not-csv = the file does not read as CSV: { $problem }
    .next = Save it as CSV, comma-separated, in UTF-8
stock-file-no-header = the first line does not name all columns: it lacks { $missing } and reads “{ $found }”
    .next = Write for example { $columns }
stock-file-no-column = no column has the { $missing }
    .next = Choose the column, or enter what holds for every row
stock-file-unknown-column = the column { $names } is not known
    .next = Choose what it is or leave it aside; known are { $known }
stock-file-two-columns = the column “{ $name }” is there twice
    .next = Keep one of the two
stock-file-not-xlsx = the workbook cannot be read: { $problem }
    .next = Open it, save it again as XLSX, or save its sheet as CSV
stock-file-unpacked-too-large = the workbook is more than { $limit_mb } MB when unpacked
    .next = Save the sheet with the parts alone, or as CSV
stock-file-too-many-rows = the list has more than { $limit } rows
    .next = Split it and import the pieces one after the other
stock-file-too-many-columns = the list has more than { $limit } columns
    .next = Take out those that are not about parts
stock-file-too-many-cells = the sheet has more than { $limit } cells or { $letters_mb } MB of text
    .next = Save the columns with the parts alone, or as CSV
stock-file-no-sheet = there is no sheet “{ $name }”
    .next =
        { $known ->
            [none] A text has no sheets: leave the name out
           *[other] There are { $known }
        }
stock-file-no-header-line = line { $line } is empty, so it cannot name the columns
    .next = The first line with something in it is { $first }
stock-file-merged-headings = the cells { $cells } among the headings are merged
    .next = Split them and give each column its own heading
stock-file-unknown-field = “{ $name }” is not kept of a part
    .next = Known are { $known }
stock-file-no-heading = there is no column “{ $heading }” for the { $field }
    .next = The columns are { $found }
stock-file-field-twice = “{ $first }” and “{ $second }” cannot both be the { $field }
    .next = Choose one of the two
stock-file-wrong-unit = “{ $unit }” cannot be the unit of the { $field }
    .next =
        { $two_meanings ->
            [none]
                { $known ->
                    [none] Only the mass, the length and the balance point have one to choose
                   *[other] Choose one of { $known }
                }
           *[other] { $two_meanings }
        }
stock-file-not-json = the models do not read as JSON at line { $line }, column { $column }: { $what }
    .next = Give a list of models, [ … ]

other-file-locked = a workbook locked with a password
    .next = Save it without the password and import that
other-file-old-spreadsheet = an old spreadsheet (.xls)
    .next = Save it as an XLSX workbook or as CSV and import that
other-file-binary-workbook = a binary workbook (.xlsb)
    .next = Save it as an XLSX workbook or as CSV and import that
other-file-open-document = an OpenDocument file
    .next = Save it as an XLSX workbook or as CSV and import that
other-file-zipped = a zipped file of something else
    .next = Unpack it and import the list itself
other-file-pdf = a PDF
    .next = Ask for the list as CSV or XLSX
other-file-utf16 = text in UTF-16
    .next = Save it as CSV in UTF-8
other-file-binary = a binary file
    .next = Import a CSV file or an XLSX workbook
other-file-web-page = a web page
    .next = Import the CSV file itself
other-file-json = JSON
    .next = Import it as models, or the parts as CSV

# A unit that means two things.
unit-fault-gram-or-grain = It means gram to some and grain to others: choose g or grain

# What is refused of a list of models.
model-file-fault-not-a-list = it is not a list of models
model-file-fault-field = { $what }
    .next = Correct the field, or take it out
model-file-fault-code-twice = the code { $code } is in the list before
    .next = Give each model its own
model-file-fault-code-of-other = this is the code of a { $kind } already
    .next = Choose another

# What is wrong with a cell or a row of a list of parts.
cell-fault-unreadable = { $what }
cell-fault-no-owner = this is no code of a customer
    .next = Write for example CU-3, or leave it empty where the part is the shop’s
cell-fault-part = { $what }
cell-fault-impossible = { $value } cannot be the { $name } of a { $kind }, which is between { $low } and { $high }
    .next = Check the figure and its unit
cell-fault-no-model = no model is named
    .next = Write the code of its model
cell-fault-unknown-model = there is no such model
    .next =
        { $known ->
            [none] Add the model first
           *[other] Known are { $known }
        }
cell-fault-model-spelling = there is no such model
    .next = Write { $code }
cell-fault-other-kind = it is a { $model } model and the row a { $kind }
    .next = Correct one of the two
cell-fault-parallel-number = a parallel tip has no number
    .next = Leave the cell empty
cell-fault-no-numbers = a { $kind } has no number
    .next = Leave the cell empty
cell-fault-number-missing = the number is missing
    .next = Write one of { $known }
cell-fault-unknown-number = the model has no such number
    .next = Write one of { $known }
cell-fault-code-missing = the code is missing
    .next = Use 1 to 32 letters, digits, - _ or ., for example H7-014
cell-fault-bad-code = this cannot be a code
    .next = Use 1 to 32 letters, digits, - _ or ., for example H7-014
cell-fault-code-in-stock = a part in stock has this code
    .next = Give the new part its own
cell-fault-code-before = line { $line } has this code too
    .next = Give each part its own
cell-fault-kind-missing = the kind is missing
    .next = Write one of { $known }
cell-fault-unknown-kind = there is no such kind of part
    .next = Write one of { $known }
cell-fault-of-job = a part that is { $state } belongs to a job
    .next = Write free, or leave the row out
cell-fault-unknown-state = there is no such state
    .next = Write free, ordered, pulled or rejected
cell-fault-bad-count = it is not a whole number from 0
    .next = Write how many are in the box, or leave it empty
cell-fault-not-weighed = a { $kind } in the shop is weighed
    .next = Weigh it to 0.1 g, or write ordered
cell-fault-neither-mass-nor-count = there is neither a mass nor a count
    .next = Weigh it, or count how many are in the box
cell-fault-quote-open = the row has { $has } cells and the header { $width }
    .next = A quote in it is not closed
cell-fault-too-many-cells = the row has { $has } cells and the header { $width }
    .next = Put a cell that holds a comma in quotes, for example "256,1"
cell-fault-too-few-cells = the row has { $has } cells and the header { $width }
    .next = Add the missing commas
cell-fault-formula = the cell { $place } holds a formula whose value was not saved with it
    .next = Open the workbook in the program that made it, save it again, or write the value itself
cell-fault-date = the cell { $place } is a date or a time
    .next = Format the cell as text and write its text again
cell-fault-error = the cell { $place } shows the error { $error }
    .next = Correct its formula, or write the value
cell-fault-merged = the cells { $cells } are merged, and only the first of them holds a value
    .next = Split them and write the value into each

# Figures of a part, in a sentence about one.
figure-name-mass = mass
figure-name-length = length
figure-name-balance-point = balance point
figure-name-frequency = frequency
figure-name-loft = loft
figure-name-lie = lie
figure-name-other = { $name }

# What is wrong in a row.
row-fault-cell = { $column } “{ $cell }”: { $what }
row-fault-row = { $what }
row-fault-line = line { $line }, { $what }
row-fault-line-as-whole = line { $line }: { $what }

# What is refused of a list to import.
list-fault-too-large = this file is { $size_mb } MB; at most { $most_mb } MB can be read
    .next = Split it and import the pieces one after the other

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
