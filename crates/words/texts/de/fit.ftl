### What is fitted across a set

# What is refused of fitting a set.
fit-fault-nothing = für Auftrag { $job } gibt es jetzt keinen Vorschlag
    .next = Zuerst die Schläger messen, oder angeben, was in welchen Schläger kommt
fit-fault-kind = { $kind } wird nicht für den ganzen Satz gewählt
    .next = Auf der Seite des einzelnen Schlägers wählen
fit-fault-twice = Schläger { $slot } ist zweimal genannt
    .next = Jeden Schläger einmal nennen
fit-fault-two-clubs = zum Tauschen braucht es zwei verschiedene Schläger
    .next = Zwei Plätze nennen, zum Beispiel 4 und 5
fit-fault-no-parts = Nummer { $number } hat noch keine Teile
    .next = Zuerst planen
fit-fault-not-read = weder Nummer { $first } noch Nummer { $second } wurde mit diesem Teil gemessen ({ $kind })
    .next = Nichts zu berichtigen: beide Schläger messen
fit-fault-read-since = Nummer { $number } wurde nach dem Tausch gemessen
    .next = Zuerst diesen Messwert zurücknehmen, falls er falsch ist

# The grid: what goes into the tip, which grip to hang out, what is added.
fit-stays = bleibt bei { $now_g }
fit-empty-stays = Tip bleibt leer
fit-tip = <i>{ $now_g } →</i> <b>{ $mass_g }</b>
fit-tip-first = <i>leer →</i> <b>{ $mass_g }</b>
fit-tip-empty = <i>{ $now_g } →</i> <b>leer</b>
fit-grip = Griff <b>{ $code }</b>, { $mass_g }
fit-grip-stays = Griff { $code } bleibt
fit-grip-later = Griff { $code }, sobald der erste gemessen ist
fit-added = <b>{ $mass_g }</b> { $action }
fit-finishes = am Ende { LETTER($finish_points) } ± { PLAIN($band_points) }
fit-becomes = aus { LETTER($now_points) } wird { LETTER($finish_points) }
fit-take = Übernehmen
fit-all =
    { $n ->
        [one] { $what }.
       *[other] { $what }: { $inside } von { $n } am Ende in der Toleranz.
    }
fit-group = { $what } in Nummer { $clubs }
fit-group-empty = nichts in Nummer { $clubs }
fit-group-grip = { $what } auf Nummer { $clubs }
fit-take-all =
    { $n ->
        [one] Übernehmen
       *[other] Alle { $n } übernehmen
    }
fit-taken = Übernommen für Nummer { $clubs }.
fit-undo = Zurücknehmen
fit-fetch = Zu holen
fit-fetch-what = was
fit-fetch-place = Ort
fit-fetch-count = Stück
fit-fetch-clubs = für
fit-no-place = kein Ort notiert

# Two clubs with each other's piece.
fit-exchanged = Vertauscht
fit-exchange-done = Nummer { $first } und { $second } getauscht: beide noch einmal messen.

# On the command line.
fit-line = { $number }: { $what }; aus { LETTER($now_points) } wird { LETTER($finish_points) }
fit-none = Nichts zu wählen: Noch kein Schläger des Auftrags hat Teile.
fit-line-stays = { $number }: am Ende { LETTER($now_points) }
fit-tip-line = Tip { $mass_g } (jetzt { $now_g })
fit-grip-line = Griff { $code }, { $mass_g }
fit-added-line = { $mass_g } { $action }
fit-exchange-line = Schläger { $first } und { $second }: { $kind } getauscht. Beide noch einmal messen.
fit-exchange-undone-line = Schläger { $first } und { $second }: Der Tausch ist zurückgenommen, ihre Messwerte zählen wieder.
fit-fetch-line = { $place }: { $count } × { $code }, { $mass_g }, für { $clubs }
