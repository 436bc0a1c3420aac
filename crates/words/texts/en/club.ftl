### Club

# A club as the trade names it. Its number is what the sheet holds: “7”, “P”, “PW”, “54”. CLUB($number) is the number in one
# spelling, to choose by: “PW” is P; a number from 40 on is the loft of a wedge, in degrees.
club-wood =
    { CLUB($number) ->
        [1] driver
        [D] driver
        [DR] driver
       *[other] { $number }-wood
    }
club-hybrid = { $number }-hybrid
club-iron =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }° wedge
       *[other] { $number }-iron
    }
club-wedge =
    { CLUB($number) ->
        [P] PW
        [A] AW
        [G] GW
        [U] UW
        [S] SW
        [L] LW
        [degrees] { $number }° wedge
       *[other] { $number } wedge
    }
club-putter =
    { CLUB($number) ->
        [1] putter
        [P] putter
        [PT] putter
       *[other] putter { $number }
    }

# The same where space is short and the clubs beside it tell the rest: in the row of clubs, as the head of a column.
club-short-wood =
    { CLUB($number) ->
        [1] driver
        [D] driver
        [DR] driver
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
        [1] putter
        [P] putter
        [PT] putter
       *[other] putter { $number }
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
