### What every text uses: lists, units, dates

# The language's name in itself, and the sign before the decimals of its figures.
language-name = Deutsch
decimal-sign = ,

# Several things in a sentence: “7, 8 and 9”.
list-more = { $a }, { $b }
list-last = { $a } und { $b }

figure-point = { $figure } Punkt
figure-points = { $figure } Punkte
figure-cpm = { $figure } cpm
figure-percent = { $figure } %
figure-times = { $figure } ×

unit-percent = %
unit-times = mal

date = { $day }. { $month } { $year }
date-day = { $day }. { $month }
date-month = { $month } { $year }
moment = { $date }, { $clock }
month-1 = Jan
month-2 = Feb
month-3 = März
month-4 = Apr
month-5 = Mai
month-6 = Juni
month-7 = Juli
month-8 = Aug
month-9 = Sep
month-10 = Okt
month-11 = Nov
month-12 = Dez
weekday-1 = Montag
weekday-2 = Dienstag
weekday-3 = Mittwoch
weekday-4 = Donnerstag
weekday-5 = Freitag
weekday-6 = Samstag
weekday-7 = Sonntag

# A sentence that an earlier version kept as it was shown.
kept-text = { $text }

# Buttons that stand on many pages.
button-find = Suchen
button-back = Zurück

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
        [one] { $days } Tag
       *[other] { $days } Tage
    }
left-over = abgelaufen
button-keep = Speichern
