### What a calculation finds beside its figures

# A figure that was probably typed in another unit.
looks-like-unit = gemeint sind wohl { $unit }: { $given } { $given_in } sind { $meant } { $meant_in }
slip-unit-inches = Zoll
slip-unit-centimetres = Zentimeter
slip-unit-metres = Meter
slip-unit-ounces = Unzen
slip-unit-kilograms = Kilogramm
slip-unit-fahrenheit = Grad Fahrenheit
slip-unit-kelvins = Kelvin
slip-unit-millimetres = Millimeter
slip-unit-grams-a-millimetre = Gramm je Millimeter
slip-unit-grams-an-inch = Gramm je Zoll
slip-unit-miles-an-hour = Meilen je Stunde
slip-unit-kilometres-an-hour = Kilometer je Stunde
slip-unit-pounds-a-square-inch = Pfund je Quadratzoll
slip-unit-kilopascals = Kilopascal
slip-unit-kilograms-a-cubic-metre = Kilogramm je Kubikmeter
slip-unit-hertz = Hertz

# Swing weight and inertia: the parts of a club.
parts-remark-no-grip = kein Teil heißt grip; deshalb verschiebt die neue Länge alle Teile, wie bei einem Schläger ohne Griff
parts-remark-places-in-another-unit = alle Teile liegen dicht am Butt; { $meant }
parts-remark-masses-in-another-unit = alle Teile zusammen wiegen fast nichts; { $meant }
change-step-grip = Griff
change-step-length = Länge
change-step-mass = Masse
change-step-named = { $name }

# Shaft trimming.
trim-remark-taper-tip-cut = vom Taper-Tip werden { $tip_trim_mm } gekürzt: Dort ist der Schaft dicker und passt vielleicht nicht in die Bohrung

# Frequency.
frequency-remark-free-length = eine freie Länge von { $free_mm } ist für einen Schläger ungewöhnlich; die Einheit der Längen prüfen
frequency-remark-head-in-another-unit = die Masse des Kopfs prüfen; { $meant }
frequency-remark-read-head-in-another-unit = die Masse des Kopfs prüfen, der beim Messen aufgesteckt war; { $meant }
frequency-remark-table-far-off = erst mit dem { PLAIN($times, digits: 2) }-Fachen der Biegesteifigkeit ergibt die Tabelle diesen Messwert; Schaft, Einspannlänge und Kopf prüfen
frequency-remark-stiffness = die Biegesteifigkeit reicht von { $softest_n_m2 } bis { $stiffest_n_m2 } N·m², ungewöhnlich für einen Schaft; die Einheit prüfen
frequency-remark-frequency = { CPM($first_cpm, digits: 0) } sind für einen Schaft ungewöhnlich; Biegesteifigkeit, Massen und ihre Einheiten prüfen

# Soft side.
soft-side-note-planes-alike = die beiden Ebenen sind auf { PERCENT($at_most_share, digits: 2) } gleich, es gibt also keine weiche Seite anzuzeichnen
soft-side-note-cannot-tell-soft-side = aus diesen Messwerten geht nicht hervor, ob es eine weiche Seite gibt: Bis zu { PERCENT($at_most_share, digits: 2) } sind möglich. Bei mehr Winkeln messen oder jeden Winkel noch einmal
soft-side-note-cannot-tell-bow = aus diesen Messwerten geht nicht hervor, ob der Schaft krumm ist: Die Krümmung könnte bis zu { LENGTH($at_most_mm, digits: 3) } betragen
soft-side-note-once-a-turn = die Frequenz ändert sich einmal je Umdrehung, das macht kein Schaft. Sitzt die Einspannung locker? Driften die Messwerte?
soft-side-note-few-spare =
    { $spare ->
        [0] kein Messwert bleibt übrig, um das Rauschen zu bestimmen, deshalb sind die Bereiche breit. Bei mehr Winkeln messen oder die Standardabweichung eines Messwerts angeben
        [one] nur ein Messwert bleibt übrig, um das Rauschen zu bestimmen, deshalb sind die Bereiche breit. Bei mehr Winkeln messen oder die Standardabweichung eines Messwerts angeben
       *[other] nur { $spare } Messwerte bleiben übrig, um das Rauschen zu bestimmen, deshalb sind die Bereiche breit. Bei mehr Winkeln messen oder die Standardabweichung eines Messwerts angeben
    }
soft-side-note-scatter = die Messwerte streuen { PLAIN($times, digits: 1) }-mal so stark wie die angegebene Standardabweichung. Nach einem Versehen suchen oder das Feld leer lassen

# Recording of a plucked club.
pluck-note-one-frequency = die Aufnahme zeigt nur eine Frequenz: Entweder sind die Ebenen gleich, oder es wurde genau in einer davon angezupft. Zur Sicherheit um etwa 45° gedreht noch einmal anzupfen
pluck-note-two-planes = dicht daneben liegt ein weiterer Ton bei { CPM($other_cpm, digits: 0) }, der Schläger schwingt also in zwei Ebenen. Zwei Achsen aufnehmen oder in Richtung der weichen oder steifen Seite anzupfen
pluck-note-other-tone = bei { PLAIN($tone_hz, digits: 1) } Hz liegt ein weiterer Ton; er zählt nicht zum Rauschen
pluck-note-noise = das Rauschen um den Ton ist { PLAIN($times, digits: 1) }-mal so stark wie das weiße Rauschen. Ist die Einspannung locker, eine Hand am Schläger oder der Sensor verrutscht?
pluck-note-grows = die Schwingung wächst: Entweder treibt sie etwas an, oder das Anzupfen selbst liegt im benutzten Abschnitt

# Grip size.
grip-remark-large-without-tape = der Griff ist schon ohne Griffband { LENGTH($by_mm, digits: 3) } dicker als gewünscht. Einen Griff mit größerem Kern nehmen
grip-remark-too-many-layers = mehr als { $most } Lagen wären nötig. Einen dickeren Griff nehmen
grip-remark-beyond-rules = { LENGTH($widest_mm, digits: 3) } sind mehr als { LENGTH($limit_mm, digits: 3) }, die Grenze nach Ausrüstungsregel 2.3b

# Lie and loft.
bend-remark-beyond-limit = { ANGLE($by_deg, digits: 2) } über der Grenze des Herstellers von { $limit_deg }: Das Hosel kann reißen

# Glue.
cure-time-pot-life = die Topfzeit
cure-time-handling = die Zeit bis zur Handfestigkeit
cure-time-full-cure = die Zeit bis zur Endfestigkeit
glue-remark-gap-thin = der Spalt von { LENGTH($gap_mm, digits: 4) } ist enger als { LENGTH($low_mm, digits: 4) } bis { LENGTH($high_mm, digits: 4) }; dort halten Klebungen am besten
glue-remark-gap-wide = der Spalt von { LENGTH($gap_mm, digits: 4) } ist weit. Einen gröberen Füllstoff oder eine Distanzhülse nehmen, nicht mehr Glasperlen
glue-remark-least-mixed = die Klebestellen brauchen mit Zugabe { $needed_g }. { MASS($least_g, digits: 0) } ansetzen: Mit einer Anzeige von { $scale_g } lässt sich weniger nicht auf 1 % abwiegen
glue-remark-pot-life-colder = die Werkstatt hat { $room_c } °C, die kälteste Topfzeit des Herstellerblatts gilt für { $sheet_c } °C; die Topfzeit ist also geschätzt. Den Raum heizen oder den Hersteller fragen
glue-remark-cure-colder = die Werkstatt hat { $room_c } °C. { CAPITAL($time) } steht auf dem Herstellerblatt nur für { $sheet_c } °C und wärmer: So kalt härten viele Kleber nie ganz aus. Den Raum heizen oder den Hersteller fragen
glue-remark-warmer = die Werkstatt hat { $room_c } °C. { CAPITAL($time) } steht auf dem Herstellerblatt nur für { $sheet_c } °C und kälter. Mit der Zeit vom Herstellerblatt rechnen
glue-remark-cup-large = { MASS($mix_g, digits: 0) } in einem Becher sind mehr als die { MASS($stated_g, digits: 0) }, für die die Topfzeit gilt: Die Topfzeit wird kürzer und der Becher heiß
glue-remark-several-cups = das Kleben dauert bei { $joints } Klebestellen etwa { PLAIN($work_min, digits: 0) } min, ein Becher hält { PLAIN($good_min, digits: 0) } min: { $cups } Becher nacheinander ansetzen, Klebestellen je Becher: { $joints_a_cup }, jeweils mit { $resin_g } Harz, { $hardener_g } Härter und { $spacers_g } Glasperlen
glue-remark-cup-too-short = ein Becher hält { PLAIN($good_min, digits: 0) } min, weniger als das Anmischen und eine einzige Klebung dauern. Einen langsameren Kleber nehmen
pull-reserve-times = über { PLAIN($times, digits: 0) }-fach bei langsamem, geradem Zug. Aufprall, Biegung und Alterung sind nicht eingerechnet
pull-reserve-exceeded = die Spannung übersteigt die Festigkeit auf dem Herstellerblatt: Diese Klebung würde sich lösen, oder eine Einheit stimmt nicht
pull-assumption-on-a-circle = der Kopf bewegt sich auf einem Kreis mit dem angegebenen Radius, seine ganze Masse liegt auf diesem Radius
pull-assumption-straight-and-even = der Zug wirkt entlang des Schafts, und jeder Teil der Klebefläche trägt gleich viel
pull-assumption-not-counted = Spannungsspitzen an den Enden der Klebung, der Schlag des Balls und Alterung sind nicht eingerechnet
