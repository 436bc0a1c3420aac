### What every text uses: lists, units, dates

# Several things in a sentence: “7, 8 and 9”.
list-more = { $a }, { $b }
list-last = { $a } and { $b }

figure-point = { $figure } point
figure-points = { $figure } points

date = { $day } { $month } { $year }
date-day = { $day } { $month }
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

# The chance of finishing in tolerance, as people say it.
chance-ninety-nine = 99 in 100 inside
chance-nineteen = 19 in 20 inside
chance-tenths = { $n } in 10 inside
chance-hardly = hardly any chance inside

button-back = Back
