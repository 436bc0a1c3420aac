### Readings: what was read, forecast and asked

# Why a forecast or a statistic cannot be worked out.
estimation-not-finite = { $place } ist { FIGURE($value) }, und das ist keine endliche Zahl
    .next = Den Wert neu eingeben
estimation-negative = { $place } ist { FIGURE($value) } und muss 0 oder mehr sein
estimation-not-positive = { $place } ist { FIGURE($value) } und muss größer als 0 sein
estimation-reading-without-uncertainty = der Messwert { $id } hat als Standardabweichung und als Rundungsschritt 0
    .next = Eingeben, wie genau er abgelesen wurde
estimation-too-sharp = der Messwert { $id } ist { FIGURE($ratio) }-mal genauer als das, was vorher bekannt war; höchstens { FIGURE($limit) }-mal geht
    .next = Eine größere Unsicherheit für den Messwert eingeben oder eine kleinere für das, was bekannt war
estimation-duplicate = „{ $key }“ kommt mehr als einmal vor in: { $what }
    .next = Jedem einen eigenen Namen geben
estimation-unknown = „{ $key }“ fehlt in diesem Auftrag unter { $what }, wird aber verlangt von: { $wanted_by }
estimation-club-missing = { $wanted_by } verlangt eine Größe eines Schlägers und nennt keinen Schläger
estimation-own-deviations = { $wanted_by } zieht den Schläger „{ $club }“ ab, der eigene Abweichungen hat
estimation-no-piece = am Schläger „{ $club }“ fehlt: { $role }
    .next = Das Stück hinzufügen oder nach einem anderen fragen
estimation-nothing-hangs = der Balancepunkt des Schlägers „{ $club }“ liegt näher am Butt-Ende als der Drehpunkt, so kann er nicht schwingen
estimation-nothing-on-club = am Schläger „{ $club }“ ist nichts, was wiegt, also hat er keinen Balancepunkt
estimation-outside-drift = { FIGURE($at_h) } h liegt nicht zwischen { FIGURE($from_h) } und { FIGURE($to_h) } h, dem Bereich der Drift von Waage „{ $scale }“
    .next = Der Drift Stützstellen hinzufügen
estimation-not-covariance = { $place } ist keine Kovarianz: { $reason }
    .next = Die Lernwerte zurücksetzen
estimation-not-converged = die Zahlen kamen nach { $iterations } Durchläufen nicht zur Ruhe
    .next = Nach einem Messwert suchen, der um ein Vielfaches falsch eingetippt ist
estimation-too-few =
    { $count ->
        [one] { $place } hat nur einen Wert, mindestens { $least } müssen es sein
       *[other] { $place } hat { $count } Werte, mindestens { $least } müssen es sein
    }
estimation-shape = { $place } hat { $found } Werte, erwartet sind { $expected }
estimation-singular = die Werte von { $place } ergeben keine eindeutige Lösung
    .next = Messwerte hinzufügen, die sich voneinander unterscheiden
estimation-limits = die untere Grenze von { $place } ist { FIGURE($lower) } und muss unter der oberen Grenze von { FIGURE($upper) } liegen
covariance-negative-variance = die Varianz in Zeile { $row } ist { FIGURE($value) }
covariance-not-symmetric = Zeile { $row }, Spalte { $column } ist anders als Zeile { $column }, Spalte { $row }
covariance-not-positive = ihre Werte widersprechen sich

# What is refused of readings at the bench.
reading-refused-nothing = nichts wurde eingegeben
    .next = Eingeben, was „{ $step }“ verlangt
reading-refused-kept-before = diese Eingabe ist schon gespeichert, als { $entries }
    .next = Seite neu laden; war sie falsch, zurücknehmen und neu eingeben
reading-refused-taken-back = dieser Messwert ist schon zurückgenommen
    .next = Nichts zu tun
reading-refused-not-kept = nichts wurde gespeichert
    .next = Neu eingeben
reading-refused-twice = zweimal eingegeben: { $what }
    .next = Den eingeben, der gilt; ein zweiter Messwert ist eine eigene Eingabe
reading-refused-no-figure = „{ $typed }“ ist kein Wert ({ $what })
    .next = Eine Zahl eingeben, zum Beispiel 2700
reading-refused-yes-or-no = „{ $typed }“ ist keine Antwort auf „{ $what }?“
    .next = Geben Sie ja oder nein ein
reading-refused-as-kept = { $what } „{ $typed }“

estimation-outside = { $place } ist { FIGURE($value) } und muss zwischen { FIGURE($low) } und { FIGURE($high) } liegen

# The answer of a look.
reading-yes = ja
reading-no = nein

reading-cpm = { CPM($figure_cpm) }
reading-seconds = { PLAIN($figure_s, digits: 3) } s
reading-inertia = { PLAIN($figure_kg_cm2, digits: 0) } kg·cm²

# Beside the largest figure of a step: half of the band, or of the sheet's tolerance.
reading-band-expected = ± { $band } erwartet
reading-band-asked = ± { $band } Soll

# A forecast with half of its band: “D9.7 ± 0.6”.
reading-with-band = { $value } ± { $band }
# What the sheet asks: “asked 21.0° ± 0.5°”.
reading-asked = Soll { $value } ± { $band }

# The unit beside an entry.
reading-unit-degrees = Grad
