### Picture


picture-style = Stil
picture-style-crumb = erfundene Werte

# The pictures of the calculations.
picture-calc-around = Messwerte rund um den Schaft, in Längsrichtung gesehen, Änderung vergrößert
picture-calc-around-readings = { $count } Messwerte: { $of }.
picture-calc-around-soft = Weich bei { $along_deg }.
picture-calc-around-none = Keine weiche Seite erkennbar.
picture-calc-around-bow = Krümmung { LENGTH($bow_mm, digits: 3) } nach { $toward_deg }.
picture-calc-around-mark = Markierung bei { $mark_deg }.
picture-calc-around-rests = Belastet in Rollen kommt er bei { $rests_deg } zur Ruhe.
picture-calc-key-soft = weich bei { $along_deg }
picture-calc-key-bow = Krümmung { LENGTH($bow_mm, digits: 3) } nach { $toward_deg }
picture-calc-key-mark = Markierung bei { $mark_deg }
picture-calc-key-rests = ruht bei { $rests_deg }
picture-calc-key-none = keine weiche Seite erkennbar
picture-calc-bend-row =
    { $steps ->
        [one] { $name } von { ANGLE($from_deg, digits: 2) } auf { ANGLE($to_deg, digits: 2) } in einem Schritt
       *[other] { $name } von { ANGLE($from_deg, digits: 2) } auf { ANGLE($to_deg, digits: 2) } in { $steps } Schritten
    }
picture-calc-bend-words = Der Hersteller erlaubt { ANGLE($limit_deg, digits: 2) } in jede Richtung. { $bent }.
picture-calc-bend = Biegen Schritt für Schritt und die Grenze des Herstellers
picture-calc-bend-within = innerhalb der Grenze des Herstellers
picture-calc-bend-beyond = { ANGLE($bent_deg, digits: 2) } über der Grenze
picture-calc-bend-to = { ANGLE($bent_deg, digits: 2) }
picture-calc-bend-axis = Biegung gegen den Winkel des Herstellers, °
picture-calc-joint-words = Ein Tip von { LENGTH($tip_mm, digits: 3) } in einer Bohrung von { LENGTH($bore_mm, digits: 3) } lässt ringsum einen Spalt von { LENGTH($gap_mm, digits: 4) } auf { LENGTH($depth_mm, digits: 2) } Tiefe; { MASS($ring_g, digits: 3) } Kleber füllen ihn, die ganze Klebestelle braucht { MASS($joint_g, digits: 2) }.
picture-calc-joint = Die Klebestelle quer und längs, Spalt zehnfach breit gezeichnet
picture-calc-joint-gap = Spalt { LENGTH($gap_mm, digits: 4) }
picture-calc-joint-fit = Tip { LENGTH($tip_mm, digits: 3) }, Bohrung { LENGTH($bore_mm, digits: 3) }
picture-calc-joint-deep = { LENGTH($depth_mm, digits: 2) } tief
picture-calc-joint-takes = { MASS($ring_g, digits: 3) } im Spalt, { MASS($joint_g, digits: 2) } insgesamt
picture-calc-cure-line = { $name } { $time }
picture-calc-cure-line-sd = { $name } { $time } ± { $sd }
picture-calc-cure-words = Bei { $here_c } °C: { $times }. Die Linien gehen durch die Punkte des Herstellerblatts; Wärme verkürzt jede Zeit.
picture-calc-cure = Zeit nach Temperatur
picture-calc-minutes = { $count } min
picture-calc-hours = { $count } h
picture-calc-days = { $count } Tage
picture-calc-one-day = 1 Tag
picture-calc-time = Zeit
picture-calc-temperature = Temperatur, °C
picture-calc-here = { $here_c } °C
picture-calc-grip-place = { LENGTH($below_mm, digits: 1) } unter der Griffkappe: { LENGTH($wide_mm, digits: 3) }
picture-calc-grip-words = { $places }.
picture-calc-grip-wanted-words = { $places }. An der ersten Stelle gewünscht: { LENGTH($wanted_mm, digits: 3) }.
picture-calc-grip = Durchmesser entlang des Griffs
picture-calc-grip-below = unter der Griffkappe, { $unit }
picture-calc-grip-diameter = Durchmesser, { $unit }
picture-calc-grip-tape = Band unter dem Griff
picture-calc-grip-wanted = gewünscht { LENGTH($wanted_mm, digits: 3) }
picture-calc-grip-rule = nach der Faustregel
picture-calc-grip-kept = gleiches Volumen
picture-calc-grip-nominal = Nennmaß
picture-calc-lie-flatter = Bei gleicher Höhe der Hände kommt ein Schläger von { LENGTH($length_mm, digits: 2) } mit { ANGLE($lie_deg, digits: 2) } Lie auf { ANGLE($new_deg, digits: 2) }, wenn er { LENGTH($new_mm, digits: 2) } lang wird: { ANGLE($by_deg, digits: 2) } flacher.
picture-calc-lie-upright = Bei gleicher Höhe der Hände kommt ein Schläger von { LENGTH($length_mm, digits: 2) } mit { ANGLE($lie_deg, digits: 2) } Lie auf { ANGLE($new_deg, digits: 2) }, wenn er { LENGTH($new_mm, digits: 2) } lang wird: { ANGLE($by_deg, digits: 2) } steiler.
picture-calc-lie = Länge und Lie bei gleicher Höhe der Hände
picture-calc-lie-hands = Höhe der Hände
picture-calc-lie-club = { LENGTH($length_mm, digits: 2) } bei { ANGLE($lie_deg, digits: 2) }
picture-calc-lie-enlarged = Änderung des Lie { $times }-fach gezeichnet
picture-calc-side =
    { $side ->
        [left] links
       *[right] rechts
    }
picture-calc-aim = Wohin ein falscher Lie zielt, von oben, Rechtshänder
picture-calc-aim-off =
    { $flat ->
        [flat] Ein Lie, der { ANGLE($lie_deg, digits: 2) } zu flach ist, zielt { ANGLE($aim_deg, digits: 2) } nach { $side }: { $off_m } m daneben auf { $far_m } m.
       *[upright] Ein Lie, der { ANGLE($lie_deg, digits: 2) } zu steil ist, zielt { ANGLE($aim_deg, digits: 2) } nach { $side }: { $off_m } m daneben auf { $far_m } m.
    }
picture-calc-aim-only =
    { $flat ->
        [flat] Ein Lie, der { ANGLE($lie_deg, digits: 2) } zu flach ist, zielt { ANGLE($aim_deg, digits: 2) } nach { $side }.
       *[upright] Ein Lie, der { ANGLE($lie_deg, digits: 2) } zu steil ist, zielt { ANGLE($aim_deg, digits: 2) } nach { $side }.
    }
picture-calc-aim-metres = { $off_m } m { $side }
picture-calc-aim-angle = { ANGLE($aim_deg, digits: 2) } { $side }
picture-calc-aim-target-at = Ziel, { $far_m } m
picture-calc-aim-target = Ziel
picture-calc-aim-larger = { ANGLE($aim_deg, digits: 2) } { $side }, seitlich vergrößert
picture-calc-modes-words = Links eingespannt. Eigenfrequenzen in cpm: { $all }; { $load } N am Tip biegen ihn um { LENGTH($bent_mm, digits: 2) }.
picture-calc-modes = Wie der Schläger schwingt und sich biegt
picture-calc-mode-first = erste: { $cycles } cpm
picture-calc-mode-second = zweite: { $cycles } cpm
picture-calc-mode-third = dritte: { $cycles } cpm
picture-calc-mode-next = nächste: { $cycles } cpm
picture-calc-modes-bent = { LENGTH($bent_mm, digits: 2) } bei { $load } N
picture-calc-modes-axis = ab Einspannung, { $unit }
picture-calc-pivot-whole = Um eine Drehachse { LENGTH($pivot_mm, digits: 2) } vom Butt-Ende beträgt das Trägheitsmoment { $inertia } kg·cm². Alle Masse { LENGTH($gyration_mm, digits: 2) } von der Achse entfernt hätte das gleiche.
picture-calc-pivot-parts = Um eine Drehachse { LENGTH($pivot_mm, digits: 2) } vom Butt-Ende beträgt das Trägheitsmoment { $inertia } kg·cm², davon { $shares }. Alle Masse { LENGTH($gyration_mm, digits: 2) } von der Achse entfernt hätte das gleiche.
picture-calc-pivot = Der Schläger um seine Drehachse
picture-calc-pivot-mark = Drehachse
picture-calc-pivot-balance = Balancepunkt { LENGTH($off_mm, digits: 2) }
picture-calc-pivot-gyration = als eine Masse { LENGTH($gyration_mm, digits: 2) }
picture-calc-series-row = { LENGTH($length_mm, digits: 2) }: { $swing_weight_g } für gleiches Schwunggewicht, { $inertia_g } für gleiches Trägheitsmoment
picture-calc-series-words = Kopfmasse nach Länge. { $rows }.
picture-calc-series = Kopfmasse über den Satz, nach beiden Regeln
picture-calc-series-length = Länge, { $unit }
picture-calc-series-head = Kopf, { $unit }
picture-calc-series-reference = Referenzschläger
picture-calc-series-inertia = gleiches Trägheitsmoment
picture-calc-series-swing-weight = gleiches Schwunggewicht
picture-calc-recording-words = { $long } Sekunden einer Schwingung mit { $cycles } cpm, die in jeder Sekunde auf { $kept } % abklingt.
picture-calc-recording-planes = { $long } Sekunden einer Schwingung mit { $cycles } cpm, die in jeder Sekunde auf { $kept } % abklingt. Die weiche Ebene liegt bei { $soft_deg }, die steife bei { $stiff_deg }, Unterschied { $apart } cpm.
picture-calc-recording-orbit = Wie die Schwingung abklingt und welchen Weg der Tip nimmt
picture-calc-recording = Wie die Schwingung abklingt
picture-calc-recording-fade = klingt je Sekunde um { $share } % ab
picture-calc-recording-distance = Abstand von der Ruhelage, beide Achsen
picture-calc-recording-readings = Messwerte
picture-calc-recording-time = Zeit, s
picture-calc-recording-path = Weg des Tips, erste { $long } s
picture-calc-recording-soft = weich
picture-calc-recording-stiff = steif
picture-calc-recording-one = nur eine Frequenz: keine Ebenen zu unterscheiden
picture-calc-recording-plane = { $name } { $cycles } cpm
picture-calc-shaft = Der Schaft, seine Schnitte und seine Masse über die Länge
picture-calc-shaft-words = { LENGTH($butt_mm, digits: 2) } am Butt und { LENGTH($tip_mm, digits: 2) } am Tip ab: Es bleiben { LENGTH($cut_mm, digits: 2) } mit { MASS($mass_g, digits: 2) }, Balancepunkt { LENGTH($balance_mm, digits: 2) } vom neuen Butt-Ende.
picture-calc-shaft-finished = { LENGTH($butt_mm, digits: 2) } am Butt und { LENGTH($tip_mm, digits: 2) } am Tip ab: Es bleiben { LENGTH($cut_mm, digits: 2) } mit { MASS($mass_g, digits: 2) }, Balancepunkt { LENGTH($balance_mm, digits: 2) } vom neuen Butt-Ende. Fertig: { LENGTH($end_mm, digits: 2) } bis zum Ende des Schafts, { LENGTH($cap_mm, digits: 2) } bis zum Ende der Griffkappe.
picture-calc-shaft-raw = roh { LENGTH($raw_mm, digits: 2) }
picture-calc-shaft-cut = abgelängt { LENGTH($cut_mm, digits: 2) }
picture-calc-shaft-to-end = bis Schaftende { LENGTH($end_mm, digits: 2) }
picture-calc-shaft-to-cap = bis Griffkappe { LENGTH($cap_mm, digits: 2) }
picture-calc-shaft-off = ab { LENGTH($off_mm, digits: 2) }
picture-calc-shaft-balance = Balancepunkt { LENGTH($balance_mm, digits: 2) }
picture-calc-shaft-ground = Boden
picture-calc-shaft-bore-narrow = Bohrung { LENGTH($in_mm, digits: 2) }
picture-calc-shaft-in-bore = { LENGTH($in_mm, digits: 2) } in der Bohrung
picture-calc-shaft-bore = Bohrung
picture-calc-shaft-density = { $mass }/{ $length } entlang des Schafts

# What the parts of a model weigh.
picture-heap = Massen von { $name }: { $words }
picture-heap-none = Noch nichts gewogen; der Hersteller nennt { $maker_g }
picture-heap-one = 1 gewogen, { $mean_g }, { MASS($off_g, signed: 1) } gegen { $maker_g } des Herstellers
picture-heap-more = { $n } gewogen, im Mittel { $mean_g }, { MASS($off_g, signed: 1) } gegen { $maker_g } des Herstellers; Streuung { $scatter_g }
picture-heap-maker = Hersteller { $maker_g }
picture-calc-club = Schläger
picture-calc-whole = Schläger
picture-calc-one-part = Teil
picture-calc-part = Teil { $at }
picture-calc-force = Kraft, N
picture-calc-deflection = Durchbiegung, { $unit }
picture-calc-frequency = Frequenz, cpm

picture-profile = Biegesteifigkeit entlang des Schafts
picture-profile-words = Biegesteifigkeit vom Butt zum Tip: { $butt } N·m² am Butt, { $middle } in der Mitte, { $tip } am Tip. Der Bereich enthält 95 von 100.
picture-profile-axis = vom Tip, { $unit }
picture-profile-own = dieser Schaft
picture-profile-model = Modell
