### Models: what the maker says of heads, shafts, grips and the rest

# What is refused of a model.
model-fault-no-name = the model “{ $code }” has no name
    .next = Give the name that is on the box
model-fault-bad-code = “{ $code }” cannot be a code: use 1 to 32 letters, digits, - _ or ., for example HERON-7
shaft-fault-no-blank = the shaft model “{ $code }” has no blank
    .next = Give at least one blank with its mass, length and balance point
shaft-fault-stiffness-order = the stiffness table of the shaft model “{ $code }” is not in order
    .next = Give each place once, the tip first: from the tip in mm, stiffness in N·m²
shaft-fault-blank-for-tip =
    { $number ->
        [none] the shaft model “{ $code }” has a { $tip } but its blank is for all numbers
       *[other] the shaft model “{ $code }” has a { $tip } but its blank is for { $number }
    }
    .next = A taper tip has a blank for each number, a parallel tip one blank without number
head-fault-no-numbers = the head model “{ $code }” has no numbers
    .next = Add at least one number with its mass, loft, lie and chart length
head-fault-number-twice = the head model “{ $code }” has the number { $number } twice
    .next = Keep one of the two
adapter-fault-setting-name = setting { $number } of the adapter has no name, or one of more than 32 letters
    .next = Write what is printed on the adapter, +1 for example
adapter-fault-setting-twice = the adapter has the setting “{ $name }” twice
    .next = Keep one of the two
adapter-fault-no-such-setting = clubs are built at the setting “{ $name }”, and the list of settings does not have it
    .next = Add it to the list, or name one of those that are there
adhesive-fault-ratios-disagree = the adhesive “{ $code }” has ratios that contradict each other: { FIGURE($by_volume) } : 1 by volume is { PLAIN($as_mass, digits: 2) } : 1 by mass with these densities, but { FIGURE($by_mass) } : 1 is given
    .next = Read both ratios and both densities again from the product's sheet
adhesive-fault-cure-times =
    { $n ->
        [0] the adhesive “{ $code }” has no time for { $strength }
       *[other] the adhesive “{ $code }” has { $n } times for { $strength }
    }
    .next = Give one time, or two at different temperatures, from the product's sheet
adhesive-fault-cure-slower-with-heat = the two times of “{ $code }” for { $strength } do not get shorter with heat
    .next = Read them again from the product's sheet

model-kind-head = heads
model-kind-adapter = adapters
model-kind-shaft = shafts
model-kind-grip = grips
model-kind-tip-weight = tip weights
model-kind-ferrule = ferrules
model-kind-adhesive = adhesives
model-kind-tape = tapes
model-models = Models
model-kinds = Kinds
model-new = New { $kind } model
model-load-file = Load from a file
model-save-file = Save all as a file
model-parts = Parts
model-none = No { $kind } model yet.
model-none-next = Enter one from the maker's sheet, or load models from a file.
model-count =
    { $count ->
        [one] one model
       *[other] { $count } models
    }
model-count-kept =
    { $count ->
        [one] One model kept.
       *[other] { $count } models kept.
    }
model-of-kind = { CAPITAL($kind) } models
model-name = name
model-code = code
model-what = what it is
model-head-right = { $kind }: { $numbers }; bore { LENGTH($bore_mm, digits: 3) }
model-head-left = { $kind }, left-hand: { $numbers }; bore { LENGTH($bore_mm, digits: 3) }
model-adapter = { $mass_g }, for { $head }
model-shaft = { $material }, { $tip } { LENGTH($tip_mm, digits: 3) }
model-shaft-raw = { $material }, { $tip } { LENGTH($tip_mm, digits: 3) }, { $mass_g } raw
model-grip = { $mass_g }, { $shape }, core { LENGTH($core_mm, digits: 3) }
model-tip-weight = { $mass_g }, for tips of { LENGTH($from_mm, digits: 3) } to { LENGTH($to_mm, digits: 3) }
model-ferrule = { LENGTH($inside_mm, digits: 3) } inside, { $mass_g }
model-adhesive = pot life { PLAIN($life_min, digits: 0) } min at { PLAIN($at_c, digits: 0) } °C
model-tape = { PLAIN($area_g_per_m2, digits: 0) } g/m², { LENGTH($thick_mm, digits: 3) } thick
model-example = The figures below are an example.
model-example-next = Replace every one of them with the maker's figure or your own measurement.
model-kept = { $name } kept.
model-code-taken = { $code } is already the code of { $name }. Choose another code
model-keep = Keep the model
model-keep-change = Keep the change
model-remove-this = Remove this model
model-remove-hint = Only a model that no part and no sheet uses can be removed.
model-remove = Remove
model-all-of-kind = All { $kind } models
model-crumb = { $kind } model, code { $code }
model-file = File
model-file-hint = Models that were saved here as a file (JSON)
model-file-text = Or its text
model-file-good = Good models are kept and replace those with the same code; bad ones are listed.
model-load = Load the models
model-save-all = Save all models as a file
model-back = Back to the models
model-from-file = Models from a file
model-file-none = Choose a file, or paste the models
model-not-kept = Not kept
model-entry = model { $entry }
model-file-again = Correct the others in the file and load it again.
