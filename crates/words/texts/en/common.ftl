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

# A sentence that an earlier version kept as it was shown.
kept-text = { $text }

button-back = Back
