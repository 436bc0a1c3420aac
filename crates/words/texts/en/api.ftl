### Api

# What sort of problem, in a few words.
problem-title-not-found = Not found
problem-title-conflict = Conflict
problem-title-not-saved = Not saved
problem-title-too-large = Too large
problem-title-content-type = Wrong content type
problem-title-refused = Refused
problem-title-method = Method not allowed
problem-title-internal = Internal error
problem-title-check = Please check

# What is refused before any use case is asked.
edge-fault-content-type = this address takes a JSON document
    .next = Send it with “Content-Type: application/json”
edge-fault-foreign-page = another site's page sent this, so nothing was changed
    .next = Open Setwright in a tab of its own and enter it there
edge-fault-not-encrypted = this came over the network without encryption, so nothing was read or changed
    .next = Write https:// and port { $port } in the address
edge-fault-no-own-root = this bench has no certificate of its own
    .next = Open the bench’s address itself
edge-fault-unknown-name = this server does not go by the name “{ $name }”
    .next = Use the address that it printed when it started; if the name is right, start it with --name and that name
edge-fault-no-page = there is no such page
    .next = Begin again at Today
edge-fault-no-api-address = the API has no such address
    .next = All addresses are in /api/v1/openapi.json
edge-fault-no-api-method = this address does not take that method
    .next = All of them are in /api/v1/openapi.json
edge-fault-panicked = the program made a mistake; nothing was half saved
    .next = Go back and try again, and tell its makers what you did
edge-fault-too-large =
    { $size_mb ->
        [none] this file is too large: at most { $most_mb } MB can be read
       *[other] this file is { $size_mb } MB; at most { $most_mb } MB can be read
    }
    .next = Split it and send the pieces one by one
edge-fault-method = this address does not take that method
    .next = Go back and use the buttons of the page
edge-fault-no-address = there is no such address
    .next = Begin again at Today
edge-fault-request = the request could not be taken
    .next = Load the page again
edge-fault-unread = the request could not be read: { $what }
    .next = Check the address and what was sent with it
edge-fault-no-codes = no codes are given
    .next = Write them as codes=H7-014,H7-015
edge-fault-not-a-model = { $place }: must be a model, an object { "{" } … { "}" }. Nothing of the list was kept
    .next = Correct it and send it again
edge-fault-not-models = { $what }
    .next = Give a list of models, [ … ]
edge-fault-mapping = the mapping: { $what }
edge-fault-unwritable = the document could not be written: { $log }
edge-fault-no-file = no file came
    .next = Choose a recording first
edge-fault-file-broken = the file did not arrive whole
    .next = Choose it again and send it once more
edge-fault-no-calculation = there is no calculation “{ $name }”
    .next = Choose one under Calculations
edge-fault-no-step = job { $job } has no step “{ $step }”
    .next = Choose one of its steps at the bench
edge-fault-too-many-labels = { $n } labels are more than { $most }
    .next = Print them in smaller lots
edge-fault-no-action = no button was pressed
    .next = Press one of the buttons beside the value
edge-fault-nothing-chosen = nothing was chosen to be done
    .next = Nothing was changed. Go back and enter it again
edge-fault-mistyped = { $what }
    .next = Nothing was changed. Go back and enter it again
edge-fault-not-seconds = “{ $text }” is not a number of seconds
    .next = Touch one of the times to search longer
edge-fault-not-entry-time = “{ $text }” is not the time of an entry
    .next = Load the page again and enter it once more
edge-fault-no-spacers-number = the share of spacers “{ $text }” is not a number
    .next = Enter for example 3
edge-fault-no-room-number = the temperature “{ $text }” is not a number
    .next = Enter for example 21
edge-fault-not-a-time = “{ $text }” is not a day and time
    .next = Choose when the cup was mixed, or leave it empty for now
edge-fault-not-picks = “{ $text }” does not say what goes into which club
    .next = Open the grid again and take it there
edge-fault-no-state = this club has no state
    .next = Load the job again

# What a refusal calls an entry that it stands beside.
entry-name-it = it
entry-name-labelled = { $label }

# Over a form whose entry was not kept.
page-still-below = What you typed is still below.

# Over a form that could not be used.
form-wrong =
    { $n ->
        [one] One entry could not be used.
       *[other] { $n } entries could not be used.
    }
form-wrong-next = Nothing was saved; what you typed is still here. Look for the red marks.

form-fault-number = “{ $text }” is not a number
    .next = Enter for example 12.5
form-fault-count = “{ $text }” is not a count
    .next = Enter a whole number, for example 12
form-fault-date = “{ $text }” is not a date
    .next = Write it like 2031-05-24
form-fault-tip = “{ $text }” is not a count
    .next = Enter 0, 1 or 2

edge-fault-file-lost = the file did not come back whole from the page
    .next = Choose it again

# What is wrong with a place of an address.
place-fault-not-whole = “{ $text }” must be a whole number
place-fault-not-utf8 = { $name } is not UTF-8
