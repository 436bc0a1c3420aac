### What every text uses: lists, units, dates

# The language's name in itself, and the sign before the decimals of its figures.
language-name = English
decimal-sign = .

# Several things in a sentence: “7, 8 and 9”.
list-more = { $a }, { $b }
list-last = { $a } and { $b }

figure-point = { $figure } point
figure-points = { $figure } points
figure-cpm = { $figure } cpm
figure-percent = { $figure } %
figure-times = { $figure } ×

unit-percent = %
unit-times = times

date = { $day } { $month } { $year }
date-day = { $day } { $month }
date-month = { $month } { $year }
moment = { $date } { $clock }
month-1 = Jan
month-2 = Feb
month-3 = Mar
month-4 = Apr
month-5 = May
month-6 = Jun
month-7 = Jul
month-8 = Aug
month-9 = Sep
month-10 = Oct
month-11 = Nov
month-12 = Dec
weekday-1 = Monday
weekday-2 = Tuesday
weekday-3 = Wednesday
weekday-4 = Thursday
weekday-5 = Friday
weekday-6 = Saturday
weekday-7 = Sunday

# A sentence that an earlier version kept as it was shown.
kept-text = { $text }

# Buttons that stand on many pages.
button-find = Find
button-back = Back

# A figure in the unit that it was given in, where only the program knows which: the limits of a field.
measured-mass = { FIGURE($value_g) }
measured-length = { FIGURE($value_mm) }
measured-points = { FIGURE($value_points) }
measured-angle = { FIGURE($value_deg) }
measured-frequency = { FIGURE($value_cpm) }
measured-plain = { FIGURE($value) }
measured-with = { FIGURE($value) } { $sign }

# How long until a moment; the scripts of a page count it down. An hour and more, under an hour, two days and more.
left-hours = { $hours } h { $minutes } min
left-minutes = { $minutes } min
left-days =
    { $days ->
        [one] { $days } day
       *[other] { $days } days
    }
left-over = over
button-keep = Keep
