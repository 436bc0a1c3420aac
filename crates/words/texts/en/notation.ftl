### Notation

notation-unreadable =
    { $n ->
        [none] “{ $input }” cannot be read as { $what }: { $problem }
       *[other]
            { $found ->
                [none] “{ $input }” cannot be read as { $what }: at character { $n } (the end) { $problem }
               *[other] “{ $input }” cannot be read as { $what }: at character { $n } (“{ $found }”) { $problem }
            }
    }
    .next =
        { $meant ->
            [none] Write for example { $example }
           *[other] Did you mean { $meant }?
        }

notation-length = a length
notation-length-offset = a difference of length
notation-mass = a mass
notation-mass-offset = a difference of mass
notation-swing-weight = a swing weight
notation-swing-weight-offset = a difference of swing weight
notation-angle = an angle
notation-angle-offset = a difference of angle
notation-frequency = a frequency

notation-problem-empty = nothing is written
notation-problem-number-expected = a number is expected here
notation-problem-sign-not-allowed = this figure has no sign
notation-problem-two-signs = the direction is given twice, by a sign and by a word
notation-problem-digit-grouping = these digits may be grouped in thousands; write them without grouping, decimals after a point
notation-problem-fraction-after-decimal = a fraction follows a decimal figure
notation-problem-bad-fraction = the fraction must be less than one and must not divide by zero
notation-problem-too-large = the figure is too large here
notation-problem-missing-unit = the number needs its unit or letter
notation-problem-fraction-without-unit = a fraction without a unit means inches, but metric is expected; add the unit
notation-problem-unknown-unit = the unit is not known here
notation-problem-ambiguous-unit = this unit means gram to some and grain to others; write g or grain
notation-problem-unknown-letter = the letters run from A to G
notation-problem-beyond-letter = a letter has the points 0 to 9.9
notation-problem-disagree = the moment beside the letter does not agree with it
notation-problem-unexpected = this does not belong here

notation-example-length = 36 3/4 in, 93.3 cm or 940 mm
notation-example-length-offset = +1/2 in or -5 mm
notation-example-mass = 8 g or 1.75 oz
notation-example-mass-offset = +2 g or -0.1 oz
notation-example-swing-weight = D3.5 or 213.5 oz in
notation-example-swing-weight-offset = +2 or -1/2
notation-example-angle = 61.5 or 61.5°
notation-example-angle-offset = +2, -1° or 2 up
notation-example-frequency = 262 cpm or 4.37 Hz
