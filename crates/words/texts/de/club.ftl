### Club

# A club as the trade names it. Its number is what the sheet holds: “7”, “P”, “PW”, “54”. CLUB($number) is the number in one
# spelling, to choose by: “PW” is P; a number from 40 on is the loft of a wedge, in degrees.
club-wood =
    { CLUB($number) ->
        [1] Driver
        [D] Driver
        [DR] Driver
       *[other] Holz { $number }
    }
club-hybrid = Hybrid { $number }
club-iron =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }°-Wedge
       *[other] Eisen { $number }
    }
club-wedge =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }°-Wedge
       *[other] Wedge { $number }
    }
club-putter =
    { CLUB($number) ->
        [1] Putter
        [P] Putter
        [PT] Putter
       *[other] Putter { $number }
    }

# The same where space is short and the clubs beside it tell the rest: in the row of clubs, as the head of a column.
club-short-wood =
    { CLUB($number) ->
        [1] Driver
        [D] Driver
        [DR] Driver
       *[other] { $number }W
    }
club-short-hybrid = { $number }H
club-short-iron =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }°
       *[other] { $number }
    }
club-short-wedge =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }°
       *[other] { $number }
    }
club-short-putter =
    { CLUB($number) ->
        [1] Putter
        [P] Putter
        [PT] Putter
       *[other] Putter { $number }
    }

# A number by itself, where the kind of club is not known or is told beside it: a head of the shelf, a blank.
club-number =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
       *[other] { $number }
    }
