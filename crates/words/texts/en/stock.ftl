### Stock

# What is refused of models and parts in stock.
stock-fault-model-code-taken = “{ $code }” is the code of a { $kind } already
    .next = Choose another code
stock-fault-models-unwritable = the models could not be written: { $log }
    .next = Look at the figures of the models
stock-fault-not-by-hand = { $code } is { $state } and cannot be made { $to } by hand
    .next = Held and used come from jobs: change the plan of its club instead
stock-fault-bad-code = “{ $code }” cannot be the code of a part
    .next = Give the code on its label, up to 64 letters
stock-fault-not-added-as = { $code } cannot be added as { $state }
    .next = Held and used come from jobs: add it as free

stock-title = Stock
stock-weigh-in = Weigh in
stock-import = Import a list
stock-export-csv = Export CSV
stock-export-xlsx = Export XLSX
stock-print-labels = Print labels
stock-print-label = Print its label
stock-models = Models
stock-back = Back to the stock
stock-count-and-customers = { $parts }, { $n } of customers
stock-count =
    { $n ->
        [one] { $n } part
       *[other] { $n } parts
    }
stock-went-out = <a>{ $code }</a> was built into a club and is no longer in the shop.
stock-none-found = No part matches.
stock-none-found-next = Remove a filter, or weigh the part in.
stock-all-parts = All parts
stock-with-gone = Include parts in clubs
stock-no-models = The stock is empty, and there are no models yet.
stock-no-models-next = A model holds the maker's figures of a head, shaft or grip. Add the models first, then weigh in the parts.
stock-new-head-model = New head model
stock-load-models = Load models from a file
stock-empty = No part is in stock yet.
stock-empty-next = Weigh in heads, shafts and grips one by one, or import a list.

stock-kinds = Kinds
stock-all-kinds = all
stock-kinds-head = heads
stock-kinds-adapter = adapters
stock-kinds-shaft = shafts
stock-kinds-grip = grips
stock-kinds-tip-weight = tip weights
stock-kinds-ferrule = ferrules
stock-kinds-adhesive = adhesives
stock-kinds-tape = tapes

stock-search = Code, lot or place
stock-any-model = any model
stock-in-shop = in the shop
stock-any-state = any state
stock-find = Find
stock-clear = Clear

stock-parts = Parts in stock
stock-not-weighed = not weighed
stock-left = { $n } left
stock-pages = Pages
stock-page-before = Back
stock-page-next = Next
stock-page = { $first }–{ $last } of { $total }

# One part.
stock-model-mass = model { $model_g }
stock-line = its line { $line_cpm }
stock-where = where
stock-in-club = in a club
stock-why-hint = Kept with the change
stock-change = Change
stock-see-now = See it as it is now
stock-figure-wrong = Correct a figure
stock-still-below = What you typed is still below.
stock-mass-hint-g = 256.1, or 9.03 oz
stock-mass-hint-oz = 9.034, or 256.1 g
