### Physics

# What to do about a refused entry.
advice-enter-measured-figure = Den gemessenen Wert eingeben
advice-enter-figure-without-sign = Den Wert ohne Vorzeichen eingeben oder weglassen
advice-deviation-apart = Die Standardabweichung steht in einem eigenen Feld
advice-weighed-or-geometry = Entweder die gewogene Masse oder die Geometrie angeben, nicht beides
advice-give-or-describe-joint = Den Wert angeben oder die Klebestelle beschreiben
advice-ratio-volume-needs-densities = Um ein Mischungsverhältnis nach Volumen abzuwiegen, braucht es die Dichte beider Komponenten
advice-one-point-or-two-around = Einen Punkt des Herstellerblatts angeben oder die beiden, zwischen denen die Temperatur der Werkstatt liegt
advice-two-temperatures = Zwei Temperaturen vom Herstellerblatt nehmen oder nur einen Punkt angeben
advice-warmth-shortens = Wärme verkürzt jede Zeit; wahrscheinlich sind die beiden Punkte vertauscht
advice-points-of-a-time = Einen oder zwei Punkte des Herstellerblatts für pot_life, handling oder full_cure angeben
advice-one-point-or-two = Einen Punkt des Herstellerblatts angeben oder zwei
advice-tip-does-not-fit = Der Tip passt nicht in die Bohrung; aufreiben oder beides noch einmal messen
advice-diameter-in-mm = Den Durchmesser in Millimetern angeben
advice-ask-of-glue = joint, batch, cure oder pull abfragen
advice-weighed-mass-alone = Nur die gewogene Masse angeben, sie ist genauer
advice-place-in-inches = Das sieht nach Millimetern aus; die Stelle in Zoll unter der Griffkappe angeben
advice-core-narrower-than-grip = Der Kern liegt im Griff und muss enger sein
advice-thickness-in-inches = Das sieht nach Millimetern aus; die Dicke in Zoll angeben
advice-diameter-in-inches = Das sieht nach Millimetern aus; den Durchmesser in Zoll angeben
advice-list-a-place-on-grip = Eine Stelle am Griff eintragen oder die Liste weglassen
advice-count-layers-again = Die Lagen noch einmal zählen
advice-tape-length-in-inches = Die Länge des Griffbands in Zoll angeben
advice-balance-point-on-shaft = Der Balancepunkt liegt auf dem Schaft; vom Butt-Ende aus messen
advice-length-leaves-no-shaft = Bei dieser Länge bleibt kein Schaft übrig, oder der Kopf liegt vor dem Auflager
advice-list-lengths-of-set = Die Längen des Satzes angeben
advice-parts-pendulum-or-series = Teile, einen Pendelmesswert oder eine Reihe von Längen angeben
advice-rod-or-own-inertia = Ein Teil ist entweder ein gleichmäßiger Stab oder hat ein eigenes Trägheitsmoment; nur eines angeben
advice-hang-below-pivot = Der Balancepunkt des hängenden Schlägers muss unter dem Drehpunkt liegen; beides vom Butt-Ende aus messen
advice-swing-less = Weniger weit ausschwingen lassen und den größten Winkel zur Senkrechten angeben
advice-list-parts-of-club = Die Teile des Schlägers mit Masse und Stelle angeben
advice-ask-of-lie = length, aim oder bend abfragen
advice-loft-from-vertical = Den Loft in Grad gegen die Senkrechte angeben
advice-hands-on-club = Die Hände müssen am Schläger sein
advice-club-cannot-reach = Mit den Händen in dieser Höhe reicht ein so kurzer Schläger nicht bis zum Boden
advice-error-not-lie = Den Fehler des Lie angeben, nicht den Lie selbst
advice-measured-beside-wanted = Zum gewünschten Winkel auch den gemessenen angeben
advice-wanted-lie-or-loft = Den gewünschten Lie, den gewünschten Loft oder beide angeben
advice-makers-limit-holds = Es gilt die Grenze des Herstellers; einen anderen Kopf nehmen oder allow_beyond_limit setzen und einen Riss riskieren
advice-lie-is-to-the-ground = Der Lie ist der Winkel zwischen Schaft und Boden
advice-check-angles-and-step = Die gewünschten Winkel und step_deg prüfen
advice-record-four-periods = Mindestens vier Schwingungen ohne Unterbrechung aufnehmen
advice-axes-at-same-instants = Beide Achsen zu denselben Zeitpunkten angeben
advice-check-sensor = Die Aufnahme ist stumm: Ist der Sensor eingesteckt und der richtige Eingang gewählt?
advice-record-longer = Länger aufnehmen; 10 s oder mehr sind gut
advice-samples-a-second = Die Abtastwerte je Sekunde angeben
advice-usual-frequencies = Schläger schwingen mit 3 bis 6 Hz, Schäfte ohne Kopf mit bis zu 20 Hz
advice-record-faster = Mit höherer Abtastrate aufnehmen, mindestens 100 Werte je Sekunde
advice-record-faster-or-look-lower = Mit höherer Abtastrate aufnehmen oder nach tieferen Frequenzen suchen
advice-largest-sample = Den größten möglichen Abtastwert angeben
advice-record-ten-seconds = Länger aufnehmen, mindestens 10 s
advice-count-first-sample = Vom ersten Abtastwert an zählen
advice-recording-ends-there = Dort endet die Aufnahme
advice-start-before-end = Der Anfang muss vor dem Ende des benutzten Abschnitts liegen
advice-use-longer-part = Einen längeren Abschnitt der Aufnahme benutzen
advice-no-swing-in-noise = Im Rauschen ist keine Schwingung zu erkennen: den Schläger anzupfen und näher dran oder stärker ausgesteuert aufnehmen
advice-turn-gain-down = Schwächer aussteuern und neu aufnehmen oder mit start_s einen späteren Abschnitt benutzen
advice-give-noise-with-correlations = Hängen die Fehler zusammen, verraten die Messwerte ihr Rauschen nicht: die Standardabweichung eines Messwerts angeben
advice-spread-angles = Die Winkel über den ganzen Umfang verteilen, im Abstand von 30 oder 60 Grad
advice-one-kind-of-reading = Nur die Art von Messwerten angeben, die gemessen wurde, die anderen weglassen
advice-read-six-directions = In mindestens sechs verschiedenen Richtungen um den Schaft messen; zwölf im Abstand von 30 Grad sind besser
advice-one-reading-an-angle = Zu jedem Winkel einen Messwert angeben
advice-what-was-held = Angeben, was beim Drehen des Schafts festgehalten wurde
advice-no-reading-without-error = Kein Messwert ist ohne Fehler: weglassen, dann wird er aus den Messwerten bestimmt
advice-leave-out-or-give-readings = Weglassen oder die Messwerte dazu angeben
advice-enter-reading-without-sign = Den Messwert ohne Vorzeichen eingeben
advice-about-one-in-twenty = Üblich ist 0.05
advice-least-asymmetry = Die kleinste Asymmetrie angeben, für die sich das Drehen eines Schafts lohnt
advice-least-bow = Die kleinste Krümmung angeben, die eine Bemerkung wert ist
advice-deflection-of-rollers = Die Durchbiegung angeben, die die Rollen vorgeben
advice-check-readings = Die Messwerte auf Tippfehler prüfen
advice-one-of-the-two = Nur eines von beiden angeben
advice-total-mass-or-parts = total_mass_g und balance_point_mm oder eine Liste der Teile angeben
advice-leave-out-or-list-parts = Weglassen oder die Teile auflisten
advice-deviations-of-parts = mass_g_sd und position_mm_sd der Teile angeben
advice-leave-old-mass-out = old_mass_g weglassen: Der genannte Griff kommt ab
advice-check-extreme-figures = Die Werte auf Ausreißer prüfen
advice-check-figures = Prüfen, ob sich jemand vertippt oder in der Einheit geirrt hat
advice-add-document = Im Dokument ergänzen
advice-see-example = Das Beispiel zu dieser Berechnung ansehen
advice-sort-from-butt = Die Tabelle vom Butt-Ende zum Tip-Ende ordnen, jede Stelle einmal
advice-no-shaft-balances-there = Kein Schaft mit dieser Massenlinie hat dort seinen Balancepunkt; noch einmal messen, vom Butt-Ende aus
advice-density-at-both-ends = Die Masse je Meter mindestens an beiden Enden angeben
advice-each-step-whole = Zu jeder Stufe Länge und Masse angeben
advice-lie-of-wood-or-iron = Den Lie eines Holzes oder Eisens angeben; ein Putter wird entlang seiner Achse gemessen
advice-cuts-leave-a-piece = Nach den Schnitten muss ein Stück Schaft übrig bleiben
advice-mass-line-one-way = Die Massenlinie nur auf eine Art angeben
advice-taper-tip-at-butt = Schäfte mit Taper-Tip werden nur am Butt gekürzt; allow_taper_tip_trim setzen, um trotzdem am Tip zu kürzen
advice-sd-apart = Die Standardabweichung steht in einem eigenen Feld
advice-leave-one-out = Eines von beiden weglassen
advice-length-or-butt-trim = Die fertige Länge angeben oder butt_trim_mm, um die fertige Länge zu erfahren
advice-tip-outside-bore = Der Tip würde nicht in die Bohrung reichen
advice-table-to-both-ends = Die Tabelle muss vom Butt-Ende bis zum Tip-Ende dieses Schafts reichen
advice-raw-shaft-too-short = Der Rohschaft ist zu kurz für diese fertige Länge; einen längeren nehmen oder am Tip weniger kürzen
advice-start-table-at-butt = Die Tabelle am Butt-Ende bei 0 beginnen
advice-share-from-zero-to-one = Ein Anteil zwischen 0 und 1, etwa 0.95
advice-degrees-of-freedom = Die Zahl der Messwerte abzüglich der Zahl der daraus bestimmten Größen angeben
advice-two-different-inputs = Zwei verschiedene Eingaben nennen
advice-no-deviation-of-zero = Ist eine Masse oder ein Trägheitsmoment null, die Standardabweichung dazu weglassen
advice-correlations-or-first-order = Die Korrelationen weglassen oder nur in erster Ordnung rechnen
advice-check-signs = Die Vorzeichen prüfen: Was mit einem Dritten zusammenhängt, hängt auch untereinander zusammen
advice-correlation-range = Eine Korrelation liegt zwischen -1 und 1
advice-stiffness-above-zero = Die Biegesteifigkeit dort in N·m² angeben, größer als null; ein Stahlschaft für Eisen hat nahe am Tip 20 bis 30
advice-mass-of-shaft-or-head = Die Masse des Schafts oder des Kopfs angeben
advice-check-clamp-and-trims = Länge, Einspannung und Kürzungen prüfen, auch die Einheit: mm
advice-rows-to-both-ends = Zeilen bis zu beiden Enden des freien Stücks ergänzen oder prüfen, von welchem Ende aus die Stellen gemessen sind
advice-shaft-used-up = Vom Schaft bleibt nichts übrig: weniger kürzen oder die Länge und ihre Einheit prüfen, mm
advice-about-thirty = 30 ist ein guter Wert
advice-stiffness-at-both-ends = Die Biegesteifigkeit an beiden Enden des Schafts angeben
advice-thin-table-out = Die Tabelle ausdünnen: eine Zeile je Zentimeter reicht vollauf
advice-ask-in-second-document = Die übrigen in einem zweiten Dokument abfragen
advice-length-of-raw-shaft = Die Länge des Rohschafts angeben
advice-force-that-bends = Die Kraft angeben, die den Schaft biegt; ein angehängtes Kilogramm zieht mit 9.80665 N
advice-mass-of-head-or-zero = Die Masse des Kopfs angeben oder null für einen Schaft ohne Kopf
advice-zero-for-small-body = Für einen kleinen Körper null angeben
advice-length-in-clamp = Angeben, wie viel vom Butt in der Einspannung steckt
advice-cut-or-zero = Ein Schnitt nimmt nur weg; ohne Schnitt null angeben
advice-two-rows-a-step = Eine Stufe braucht zwei Zeilen, eine für jede Seite; die dritte löschen
advice-rows-at-two-places = Zeilen für mindestens zwei Stellen angeben
advice-mass-of-a-metre = Die Masse eines Meters Schaft angeben, null oder mehr
advice-sort-by-position = Die Tabelle nach der Stelle ordnen, die kleinste zuerst
advice-deviation-zero-or-more = Eine Standardabweichung von null oder mehr angeben oder sie weglassen
advice-meant = { CAPITAL($meant) }
advice-range = { CAPITAL($of) }: { $low } bis { $high }
advice-inputs = Eingaben hier: { $known }
advice-topics =
    { $near ->
        [none] Diese Themen gibt es: { $known }
       *[other] Meinten Sie { $near }? Diese Themen gibt es: { $known }
    }
advice-known =
    { $near ->
        [none] Hier bekannt: { $known }
       *[other] Meinten Sie { $near }? Hier bekannt: { $known }
    }
advice-one-swing = Ein Schläger mit diesem Balancepunkt schwingt in { PLAIN($shortest_s, digits: 3) } bis { PLAIN($longest_s, digits: 3) } s hin und zurück; zehn Schwingungen stoppen und durch zehn teilen
advice-check-table = Die Tabelle ergibt { CPM($table_cpm, digits: 0) }, gemessen sind { CPM($reading_cpm, digits: 0) }; Einspannlänge, Kopf und Einheit von stiffness_n_m2 prüfen oder die Tabelle dieses Schafts nehmen
advice-read-without-head = Wurde der Schaft ohne Kopf gemessen? Dann measured.tip_body mit Masse 0 angeben; die Tabelle ergibt { CPM($table_cpm, digits: 0) }, gemessen sind { CPM($reading_cpm, digits: 0) }; Einspannlänge, Kopf und Einheit von stiffness_n_m2 prüfen oder die Tabelle dieses Schafts nehmen
advice-half-swing = Das sieht nach einer halben Schwingung aus; eine ganze, hin und zurück, dauert dann { PLAIN($one_s, digits: 3) } s
advice-several-swings =
    { $n ->
        [2] Das sieht nach zwei Schwingungen aus; eine, hin und zurück, dauert dann { PLAIN($one_s, digits: 3) } s
        [5] Das sieht nach fünf Schwingungen aus; eine, hin und zurück, dauert dann { PLAIN($one_s, digits: 3) } s
        [10] Das sieht nach zehn Schwingungen aus; eine, hin und zurück, dauert dann { PLAIN($one_s, digits: 3) } s
       *[other] Das sieht nach zwanzig Schwingungen aus; eine, hin und zurück, dauert dann { PLAIN($one_s, digits: 3) } s
    }
advice-too-short = Die Aufnahme ist zu kurz: { $has }, nötig sind { $needed }; mindestens 10 s aufnehmen
advice-short-after-pluck = Nach dem Anzupfen ist die Aufnahme zu kurz: { $has }, nötig sind { $needed }; mindestens 10 s aufnehmen

# Two inputs that contradict each other or do not go together.
clash-same-input = { $name }: eine Eingabe kann nicht mit sich selbst korreliert sein
clash-deviation-changes = die Standardabweichung von { $name } ändert, was zu berechnen ist
clash-second-order-correlated = Glieder zweiter Ordnung sind verlangt, aber die Eingaben sind korreliert
clash-correlations-impossible = die angegebenen Korrelationen können nicht alle zugleich gelten
clash-both-given = { $first } und { $second } sind beide angegeben
clash-both-determine = { $first } und { $second } sind beide angegeben, aber eines folgt aus dem anderen
clash-taper-trim = tip_trim_mm ist { FIGURE($trim_mm) } bei einem Taper-Tip
clash-points = { $field } hat { $n } Punkte
clash-same-temperature = beide Punkte von { $field } gelten für { FIGURE($at_c) } °C
clash-no-stiffness = nach stiffness_line hat der Schaft zwischen { PLAIN($from_mm, digits: 2) } und { LENGTH($to_mm, digits: 2) } vom Butt keine Biegesteifigkeit
clash-no-mass = weder der Schaft noch der Kopf hat eine Masse
clash-no-free-shaft = Einspannung und Kürzungen lassen { LENGTH($free_mm, digits: 2) } freien Schaft übrig
clash-not-covered = stiffness_line reicht von { PLAIN($from_mm, digits: 2) } bis { LENGTH($to_mm, digits: 2) } vom Butt, der freie Schaft aber von { PLAIN($free_from_mm, digits: 2) } bis { LENGTH($free_to_mm, digits: 2) }
clash-three-rows = stiffness_line hat drei Zeilen bei { FIGURE($place_mm) }
clash-one-place = in stiffness_line stehen alle Zeilen bei { FIGURE($place_mm) }
clash-samples-differ = axis_1 hat { $first } Abtastwerte, axis_2 dagegen { $second }
clash-no-tone = aus den Abtastwerten lässt sich kein Ton bestimmen
clash-angles-too-close = die Winkel in angles_deg liegen so dicht beieinander, dass sich Krümmung und Asymmetrie nicht trennen lassen
clash-one-kind = von forces_n, deflections_mm und frequencies_cpm ist genau eines nötig
clash-readings-differ = { $field } und angles_deg sind verschieden lang: { $n } und { $angles } Einträge
clash-other-kind = { $field } passt nicht zu dieser Art von Messwerten
clash-no-stiff-direction = die Messwerte ändern sich rund um den Schaft so stark, dass er in einer Richtung gar keine Steifigkeit hätte
clash-club-twice = der Schläger ist doppelt angegeben: durch parts und durch total_mass_g oder balance_point_mm
clash-without-parts = { $field } ist ohne parts angegeben
clash-deviations-with-parts = total_mass_g_sd oder balance_point_mm_sd ist zusammen mit parts angegeben
clash-named-grip = das Teil namens grip wiegt { FIGURE($named_g) }, aber what_if.grip nimmt { FIGURE($off_g) } weg

# Why the document of a calculation cannot be read, or its result not written.
calc-read-not-an-input = in correlations steht „{ $name }“, diese Berechnung hat aber keine solche Eingabe
calc-read-no-topic = ein Thema „{ $name }“ gibt es nicht
calc-read-unknown-field =
    { $place ->
        [none] unbekanntes Feld „{ $name }“
       *[other] unbekanntes Feld „{ $name }“ in { $place }
    }
calc-read-unknown-choice = „{ $name }“ steht für { $place } nicht zur Wahl
calc-read-other = { $place }: { $log }
calc-read-unwritable = das Ergebnis lässt sich nicht schreiben ({ $log })
calc-read-extreme = die Werte sind so extrem, dass { $place } keine Zahl mehr ist

# A computation that goes in steps.
settling-two-planes = die beiden Ebenen
settling-tone = der Ton
settling-bending-mode = die Biegeschwingung des Schafts
settling-stiffness-profile = der Steifigkeitsverlauf des Schafts

# What was found in place of what a field takes.
found-null = ein leerer Wert
found-word = das Wort { $word }
found-number = die Zahl { $text }
found-text = der Text „{ $text }“
found-long-text = der Text „{ $text }…“
found-list = eine Liste
found-object = ein Objekt mit benannten Feldern

# What a field takes.
wanted-number = eine Zahl
    .next = Die Zahl allein schreiben, ohne Anführungszeichen und ohne Einheit
wanted-count = eine ganze Zahl ab null
    .next = Die Zahl allein schreiben, ohne Anführungszeichen und ohne Einheit
wanted-yes-no = true oder false
    .next = Das Wort ohne Anführungszeichen schreiben
wanted-text = ein Text
    .next = In doppelte Anführungszeichen setzen
wanted-choice = eines der vorgesehenen Wörter
    .next = Das Wort in doppelte Anführungszeichen setzen
wanted-list = eine Liste
    .next = Die Einträge in eckige Klammern setzen, mit Komma dazwischen
wanted-object = ein Objekt mit benannten Feldern
    .next = Jeden Wert mit seinem Namen schreiben, etwa { "{" }"mass_g": 120.0{ "}" }

# What a figure is of.
quantity-length-shaft = Länge eines Schafts
quantity-length-club = Länge eines Schlägers
quantity-mass-shaft = Masse eines Schafts
quantity-mass-club = Masse eines Schlägers
quantity-mass-part = Masse eines Teils
quantity-balance-point-club = Balancepunkt eines Schlägers
quantity-place-on-club = Stelle am Schläger
quantity-fulcrum = Auflager
quantity-mass-grip = Masse eines Griffs
quantity-centre-grip = Schwerpunkt eines Griffs
quantity-length-grip = Länge eines Griffs
quantity-cap-grip = Kappe eines Griffs
quantity-change-length = Längenänderung
quantity-metre-shaft = Masse je Meter Schaft
quantity-bores-distance-to-ground = Abstand der Bohrung vom Boden
quantity-depth-bore = Tiefe einer Bohrung
quantity-tip-shaft = Tip eines Schafts
quantity-soles-point-contact = Auflagepunkt der Sohle
quantity-radius-hosel = Radius eines Hosels
quantity-radius-sole = Radius einer Sohle
quantity-mass-head = Masse eines Kopfs
quantity-head-on-clamped-shaft = Kopf am eingespannten Schaft
quantity-speed-head = Geschwindigkeit eines Kopfs
quantity-radius-swing = Radius eines Schwungs
quantity-shear-strength-adhesive = Scherfestigkeit eines Klebers
quantity-density-adhesive = Dichte eines Klebers
quantity-adhesive-joint = Kleber einer Klebestelle
quantity-temperature-workshop = Temperatur einer Werkstatt
quantity-temperature-products-sheet = Temperatur auf einem Herstellerblatt
quantity-frequency-clamped-shaft = Frequenz eines eingespannten Schafts
quantity-factor-on-stiffness-table = Faktor auf eine Steifigkeitstabelle
quantity-radius-gyration-club = Trägheitsradius eines Schlägers
quantity-spacers-mix = Glasperlen im Ansatz
quantity-spare-mix = Zugabe zum Ansatz
quantity-joints-batch = Klebestellen je Ansatz

# A unit by its name.

# What a calculation refuses.
calc-refused-not-finite = { $field } ist keine endliche Zahl
    .next =
        { $unit ->
            [none] Einen Wert eingeben
           *[other] Einen Wert eingeben, Einheit: { $unit }
        }
calc-refused-out-of-range = { $field } ist { $value }, muss aber { $bound } { $limit } sein
calc-refused-missing = { $field } fehlt
calc-refused-too-few = Einträge in { $field }: { $n }, nötig sind mindestens { $needed }
calc-refused-wrong-kind = { $field } muss { $what } sein, ist aber { $found }
calc-refused-not-converged = { $what }: auch nach { $n } Schritten kein Ergebnis
    .next = Die Werte auf Tippfehler prüfen
bound-above = größer als
bound-at-least = mindestens
bound-below = kleiner als
bound-at-most = höchstens

advice-shaft-bends-everywhere = Ein Schaft biegt sich überall ein wenig; nur ganz am Tip-Ende darf die Tabelle null enthalten
