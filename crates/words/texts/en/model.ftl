### Model

# What is refused of a model.
model-fault-no-name = the model “{ $code }” has no name
    .next = Give the name that is on the box
model-fault-bad-code = “{ $code }” cannot be a code: use 1 to 32 letters, digits, - _ or ., for example HERON-7
shaft-fault-no-blank = the shaft model “{ $code }” has no blank
    .next = Give at least one blank with its mass, length and balance point
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
