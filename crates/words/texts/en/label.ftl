### Labels of parts

label-title = Labels
label-scan-square = scan the square code
label-of-part = { $code }, { $what }, { $mass }
label-part = { $name } { $number }
