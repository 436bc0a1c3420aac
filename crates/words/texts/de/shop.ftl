### The shop: what it says of itself, its steps, who is at the tablet

# What is refused of the shop's settings.
shop-fault-scale-twice = zwei Waagen haben den Schlüssel { $key } oder den Anschluss { $port }
    .next = Jeder Waage einen eigenen geben
shop-fault-scale-keys = beide Waagen brauchen einen Schlüssel, und zwar verschiedene
    .next = Zum Beispiel balance und mass
shop-fault-instrument-twice = zwei Messgeräte haben den Schlüssel { $key }
    .next = Jedem einen eigenen geben
shop-fault-check-weight-twice = zwei Prüfgewichte haben den Schlüssel { $key }
    .next = Jedem einen eigenen geben
gauge-fault-instrument-unnamed = ein Messgerät braucht Schlüssel und Namen
    .next = Beides ausfüllen
gauge-fault-check-weight-unnamed = ein Prüfgewicht braucht Schlüssel und Namen
    .next = Beides ausfüllen

# The names of a new shop, which it may change.
shop-new = Meine Werkstatt
shop-new-balance-scale = Schwunggewichtswaage
shop-new-gram-scale = Grammwaage
shop-title = Werkstatt
shop-kept = Gespeichert.
shop-kept-next = Offene Aufträge behalten die Schritte, mit denen sie begonnen haben.
shop-keep = Speichern

# Who is at this tablet.
shop-who = Wer an diesem Tablet arbeitet
shop-who-hint = Ihr Name steht neben jedem Messwert, der hier entsteht
shop-units = Einheiten
shop-units-hint = Eine andere Einheit dürfen Sie immer dazuschreiben
shop-units-as-before = wie bei diesem Namen bisher
shop-units-in-g = Zoll und Gramm
shop-units-mm-g = Millimeter und Gramm
shop-units-in-oz = Zoll und Unzen
shop-units-mm-oz = Millimeter und Unzen
shop-serial = Waagen an einer seriellen Leitung

# What the shop says of itself.
shop-name = Name der Werkstatt
shop-room = Raum
shop-room-unit = °C
shop-room-hint = Für Topfzeit und Aushärtung
shop-none = ohne
shop-adhesive = Eigener Kleber
shop-tape = Eigenes Band
shop-where-none = Gilt, wo ein Blatt nichts nennt
shop-tip-cap = Höchstens in einem Tip
shop-tip-cap-hint = Darüber ist ein anderer Kopf die bessere Lösung; in vielen Werkstätten 8 bis 10
shop-spacers = Glasperlen im Ansatz
shop-spacers-unit = % der Masse
shop-spacers-hint = Sie halten den Klebespalt gleichmäßig

shop-scales = Waagen und Prüfgewicht
shop-balance-scale = Schwunggewichtswaage
shop-mass-scale = Grammwaage
shop-scale-name = Name
shop-scale-step = Ziffernschritt
shop-scale-step-hint = Die kleinste Änderung, die sie anzeigt
shop-scale-noise = Streuung
shop-scale-noise-hint = Den Schläger zehnmal abnehmen und neu auflegen: wie weit einzelne Messwerte vom Mittelwert liegen (eine Standardabweichung)
shop-scale-offset = Kann daneben liegen um
shop-scale-offset-hint = Wie weit sie an einem Tag nach dem Nullstellen daneben liegen kann, bei jedem Schläger gleich (eine Standardabweichung)
shop-scale-drift = Schwankt in einer Stunde
shop-scale-drift-hint = Wie weit sie in einer Stunde Arbeit hin und her wandert (eine Standardabweichung); 0, wenn gar nicht
shop-scale-day-drift = Drift am Tag
shop-scale-day-drift-hint = Wie weit sie von morgens bis abends in eine Richtung driften kann (eine Standardabweichung). Leer beginnt mit 0.15; die eigenen Messwerte berichtigen es
shop-check-weight = Prüfgewicht der Schwunggewichtswaage
shop-check-name-hint = Leer, wenn Sie keines haben. Am besten ein Schläger, der nur dafür da ist
shop-check-value = Soll anzeigen
shop-check-value-hint = Zum Beispiel D1.4
shop-check-sd = Unsicherheit (1 SD)
shop-check-sd-hint = Meist 0.05
shop-check-mass = Masse

shop-weights = Was im Plan zählt
shop-weights-about = Zuerst zählt, dass der Schläger am Ende in der Toleranz liegt: 100 steht für einen, der sie sicher verfehlt. Alles andere wird dagegen abgewogen: Was einen höheren Wert hat, wird stärker vermieden; 0 zählt nicht.
shop-weights-unit = von 100
shop-weight-tip-per-g = Ein Gramm im Tip
shop-weight-tip-per-g-hint = In jedem Schläger
shop-weight-second-tip = Ein zweites Gewicht
shop-weight-second-tip-hint = Zwei Gewichte in einem Tip, zusätzlich zu ihrer Masse
shop-weight-mass-per-g = Ein Gramm Gesamtmasse
shop-weight-mass-per-g-hint = Abweichung vom Blatt, wenn es eine Gesamtmasse verlangt
shop-weight-cpm-per-tolerance = Frequenz
shop-weight-cpm-per-tolerance-hint = Ein Schaft um eine Toleranz neben seiner Linie, wo die Werkstatt misst
shop-weight-shaft-range-per-g = Ein Gramm zwischen Schäften
shop-weight-shaft-range-per-g-hint = Das ungleichste Paar des Satzes, gegen die Linie des Modells
shop-weight-spent-grip = Ein verbrauchter Griff
shop-weight-spent-grip-hint = Einer, der um die übliche Streuung daneben liegt und einen anderen Schläger retten könnte
shop-weight-rare-head = Ein seltener Kopf
shop-weight-rare-head-hint = Ein Kopf ohne Ersatz innerhalb von 1 g (die Hälfte bei einem Ersatz)
shop-weight-neighbour-blank = Rohschaft der Nachbarnummer
shop-weight-neighbour-blank-hint = Der Schaft einer anderen Nummer
shop-weight-changed-part = Ein anderes Teil
shop-weight-changed-part-hint = Wenn ein offener Auftrag neu geplant wird

# The steps.
shop-steps = Schritte eines Auftrags
shop-steps-count =
    { $n ->
        [one] 1 Schritt: { $names }
       *[other] { $n } Schritte: { $names }
    }
shop-steps-about = Ein neuer Auftrag nimmt eine Kopie davon mit. An der Werkbank dürfen Schritte ausfallen oder die Reihenfolge wechseln; ein fehlender Messwert macht nur die Vorhersage unsicherer.
shop-step-head = { $place }. { $label }
shop-step-place = Platz
shop-step-name = Name
shop-step-waits = Wartet auf
shop-step-say = Was zu tun ist
shop-step-optional = Darf ausfallen
shop-step-drop = Diesen Schritt entfernen
shop-step-reads = Gemessen wird: { $asks }.
shop-step-reads-nothing = Nichts wird gemessen.
shop-step-glues = Hier kommt ein Ansatz Kleber.
shop-step-caution = Achtung: { $caution }.
shop-step-add = Schritt hinzufügen
shop-step-name-hint = Zum Beispiel: Bleiband anbringen
shop-step-on = Am Schläger sitzt dasselbe wie bei
shop-step-asks = Was gemessen wird
shop-step-asks-none = Nichts: Es wird nur getan.
shop-steps-keep = Schritte speichern

# What is missing.
shop-needs-figure = Diesen Wert eingeben
shop-needs-value = Angeben, was sie zeigen soll
shop-needs-name = Einen Namen vergeben
shop-needs-weight = 0 bis 100 eingeben: 100 steht für einen Schläger, der die Toleranz sicher verfehlt
shop-needs-step-name = Dem Schritt einen Namen geben
shop-needs-step-place = Angeben, an welcher Stelle er kommt, ab 1
shop-needs-step = Ein Auftrag braucht mindestens einen Schritt
