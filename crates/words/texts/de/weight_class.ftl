### Weight class: parts sorted by weight, and the tray

# What is refused of sorting parts into weight classes.
sort-fault-tray-row =
    { $n ->
        [0] eine Reihe im Sortierkasten braucht mindestens einen Platz
       *[other] eine Reihe im Sortierkasten kann keine { $n } Plätze haben
    }
    .next = 1 bis 40 Plätze angeben
sort-fault-too-many-parts = { $n } Teile lassen sich nicht auf einmal sortieren
    .next = Ein Modell und eine Nummer mit höchstens { $most } wählen
sort-fault-too-many-classes = das ergibt { FIGURE($n) } Klassen
    .next = Breiter machen: Höchstens { $most } passen auf einen Bogen

# What is refused of a question about weights.
sorting-fault-width-and-count = Breite und Anzahl der Klassen sind beide angegeben
    .next = Nur eines angeben
sorting-fault-no-club = es fehlt ein Schläger, um den es geht
    .next = Einen Auftrag, ein Blatt oder einen Schläger mit Länge und Schwunggewicht angeben

# What the command prints.
weight-class-line = { $name }  { PLAIN($from_g) } bis { $to_g }  { $n }: { $codes }
weight-class-all =
    { $n ->
        [one] { $n } Teil, { $mean_g }
       *[other] { $n } Teile, Mittelwert { $mean_g }, Streuung { MASS($sd_g, digits: 2) }
    }
weight-class-unweighed = Nicht gewogen: { $codes }
weight-class-page = Nach Gewicht sortieren
weight-class-no-models-next = Sortiert werden Teile eines Modells: zuerst das Modell anlegen.
weight-class-crumb =
    { $n ->
        [one] { $what }, 1 Teil
       *[other] { $what }, { $n } Teile
    }
weight-class-number = Nummer
weight-class-number-hint = Leer: alle des Modells
weight-class-width = Breite einer Klasse
weight-class-width-hint = Leer: { $usual_g }
weight-class-classes = Oder Anzahl der Klassen
weight-class-columns = Plätze in einer Reihe des Sortierkastens
weight-class-sort = Sortieren
weight-class-none = Kein freies, gewogenes Teil im Lager: { $what }.
weight-class-none-next = Einwiegen oder eine andere Nummer wählen.
weight-class-weigh-in = Einwiegen
weight-class-parts = Teile
weight-class-mean = Mittelwert
weight-class-scatter = Streuung
weight-class-scatter-note = eine Standardabweichung
weight-class-print = Diese Seite drucken: die Klassen mit ihren Codes, dann der Sortierkasten, wie er gefüllt wird.
weight-class-list = Klassen
weight-class-caption = Gewichtsklassen
weight-class-column-class = Klasse
weight-class-column-masses = Massen
weight-class-column-parts = Teile
weight-class-column-codes = Codes
weight-class-not-weighed = <b>Nicht gewogen, deshalb nicht sortiert:</b> { $codes }
weight-class-tray = Sortierkasten
weight-class-tray-hint = { $rows } Reihen zu { $columns }, die leichtesten zuerst; jede Klasse beginnt eine Reihe
weight-class-tray-caption = Der Sortierkasten, Reihe für Reihe
weight-class-row = Reihe
