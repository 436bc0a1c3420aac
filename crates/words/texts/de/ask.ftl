### Ask: which head masses to order

# What is refused of asking for heads by weight.
ask-fault-inside-fulcrum = der Kopf von { $number } liegt zwischen Anschlag und Auflager der Waage
    .next = Länge prüfen: Ein Schläger unter 14 Zoll hat auf dieser Waage kein Schwunggewicht

# What the command prints.
ask-head-swing-weight = Schwunggewicht
ask-head-wanted = gesuchte Köpfe
ask-head-supply = geliefert
ask-head-inside = in der Toleranz
ask-head-any-shaft = mit jedem Schaft
ask-head-order = Bestellung für einen
ask-from-to = { PLAIN($from_g) } bis { $to_g }
ask-mean = { PLAIN($mean_g) } ± { $sd_g }
ask-usable-share = { PERCENT($share, digits: 1) }
ask-none-fits = keiner passt
ask-page = Köpfe nach Gewicht bestellen
ask-still-here = Ihre Eingaben sind noch da. Auf die roten Markierungen achten.
ask-nothing = Noch sind keine Köpfe zu bestellen.
ask-nothing-next = Modelle von Kopf, Schaft und Griff anlegen oder ein Blatt schreiben.
ask-for-job = Für einen Auftrag oder ein Blatt
ask-for-club = Für einen Schläger
ask-sheet = { $player }, nicht freigegeben
ask-count = { $n } Schläger

# The form of one club.
ask-field-head = Kopf
ask-field-number = Nummer
ask-field-shaft = Schaft
ask-field-grip = Griff
ask-field-ferrule = Ferrule
ask-no-ferrule = keine
ask-field-length = Länge
ask-field-length-to = Gemessen
ask-field-swing-weight = Schwunggewicht
ask-field-wraps = Volle Lagen
ask-field-mean = Mittelwert des Lieferanten
ask-field-mean-hint = Leer: aus dem Lager oder vom Modell
ask-field-scatter = Streuung des Lieferanten
ask-field-scatter-hint = Eine Standardabweichung
ask-field-cap = Höchstens im Tip
ask-field-cap-hint = Leer: die Grenze der Werkstatt
ask-field-within = Erlaubte Abweichung
ask-field-within-hint = Punkte; leer: 0
ask-find = Köpfe suchen
ask-number-needed = Nummer eingeben, zum Beispiel 7
ask-length-needed = Länge des Schlägers eingeben, zum Beispiel 37 1/4
ask-swing-weight-needed = Schwunggewicht eingeben, zum Beispiel D2
ask-mean-and-scatter = Mittelwert und Streuung eingeben oder beide weglassen

# The answer.
ask-caption = Kopfmassen zum Bestellen
ask-column-head = Kopf
ask-column-club = Schläger
ask-column-masses = Köpfe bestellen mit
ask-column-supply = Köpfe des Lieferanten
ask-column-inside = brauchbar
ask-column-order = für einen brauchbaren Kopf
ask-mean-scatter = { PLAIN($mean_g) } ± { $scatter_g }
ask-from-supplier = wie der Lieferant angibt
ask-from-stock = wie hier gewogen
ask-from-model = wie im Modell
ask-nearly-all = über 99 %
ask-hardly-any = unter 1 %
ask-share = { PERCENT($inside_share) }
ask-any-shaft = { $share } mit jedem Schaft
ask-hopeless = keinen solchen Kopf
ask-hint-window = Leichtester Kopf: volles Tip-Gewicht ({ $cap_g }) und der leichteste Griff. Schwerster: kein Tip-Gewicht und der schwerste Griff.
ask-hint-no-grip = Ist kein Griff des Modells auf Lager, gilt die Masse des Modells.
ask-hint-chance = „Brauchbar“ ist die Chance für einen Kopf des Lieferanten: einmal mit einem Schaft, der wiegt wie das Modell, einmal mit dem nächsten Schaft aus dem Ständer. So viele bestellen, dann ist in 95 von 100 Fällen ein brauchbarer dabei.
