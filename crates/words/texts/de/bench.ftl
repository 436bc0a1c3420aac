### The bench

# What is refused of the steps of a job.
step-fault-no-steps = der Auftrag hat keine Schritte
    .next = Mindestens einen Schritt angeben oder die Vorlage weglassen, dann gilt die der Werkstatt
step-fault-bad-key = „{ $key }“ geht nicht als Kürzel: nur kleine Buchstaben, Ziffern und _, zum Beispiel dry
step-fault-twice = der Schritt „{ $key }“ ist zweimal angegeben
    .next = Jedem Schritt ein eigenes Kürzel geben

# What is refused of a scanned part.
scan-fault-for-good = fest verbaut am { $number }, ein Tausch geht nicht mehr: { $kind }
    .next = Nichts wurde geändert. Das gescannte Teil zurück ins Lager legen

bench-title = Werkbank
bench-empty = Kein Auftrag liegt auf der Werkbank.
bench-empty-next = Ein Auftrag kommt hierher, sobald sein Plan angenommen ist.
bench-plan = Auftrag planen
bench-job = Auftrag { $job } · { $player } · { $clubs }
bench-crumb = Auftrag { $job } · { $player } · hier { $read } von { $n } Schlägern erledigt
bench-no-parts = Dieser Schläger hat noch keine Teile.
bench-no-parts-next = Als der Auftrag geplant wurde, fehlten Teile.
bench-to-stock = Lager

# The one decision of a screen.
bench-decision = { $club } · { $step }
bench-finish = Endwert { LETTER($finish_points) } ± { PLAIN($band_points) }
bench-entry = { CAPITAL($what) }
bench-keep = Speichern
bench-done = Erledigt
bench-next-club = nächster Schläger
bench-next = Weiter: { $number }
bench-solvent-wet = Lösemittel noch feucht
bench-ferrule-on = Ferrule aufgesteckt
# Where the forecast is too wide to see a missing one.
bench-ferrule-look = Ferrule aufgesteckt: nachsehen, die Vorhersage ist zu ungenau, um es zu erkennen
bench-glued = Geklebt. <a>Zu seinen Zeiten</a>
bench-mix = Kleber anmischen
bench-waits = Wartet bis { $until_at } auf { $strength }.
bench-not-glued = Noch nicht geklebt: Dieser Schritt geht erst nach dem Kleben.
bench-override = Übergehen
bench-why = Warum? Der Grund kommt in die Akte.
bench-open-here = Offen an diesem Schläger
bench-open-reason = Warum trotzdem weiter? Der Grund kommt in die Akte
bench-open-others =
    { $n ->
        [one] und an einem weiteren
       *[other] und an { $n } weiteren
    }

# What an entry is held against.
bench-was-read = gemessen: { $read }
bench-was-read-off = gemessen: { $read }, Abweichung { $off }

# The readings of a club.
bench-readings = Messwerte dieses Schlägers
bench-reading = { $step }, { $what }: <b>{ $read }</b>
bench-taken-back = zurückgenommen: { $why }
bench-read-again = seither neu gemessen
bench-expected = erwartet { $expected }, Abweichung { $off }
bench-doubted = angezweifelt
bench-insisted = bestätigt
bench-read-by = { $by }, { $read_at }
bench-take-back = Zurücknehmen
bench-insist = Der Messwert stimmt
bench-count = Gelten lassen

# The row of clubs, and the table of one step across the set.
row-title = Schläger des Satzes
row-all = Alle
row-done = erledigt
row-unknown = noch nicht gemessen
row-within = in der Toleranz
row-off = daneben
row-doubted = angezweifelt
row-club = Schläger
row-expected = erwartet
row-reading = Messwert
row-meaning = was das heißt
