### App

# What stands in the way of a use case.
way-waits = „{ $step }“ wartet bis { $until_at } auf { $strength }
    .next = Aushärten lassen oder mit einem Grund übergehen
way-not-glued = „{ $step }“ braucht { $strength }, aber Schläger { $slot } gehört zu keinem Ansatz
    .next = Kleben oder mit einem Grund übergehen
way-open = vor „{ $step }“ ist etwas offen: { $clubs }
    .next = Klären oder einen Grund angeben, warum es so weitergeht
way-open-club = { $number }: { $points }
way-internal = das Programm hat einen Fehler gemacht: { $log }. Nichts wurde gespeichert
    .next = Noch einmal versuchen; kommt es wieder, diese Meldung den Herstellern des Programms schicken
way-entry = Eintrag { $n } der Liste: { $what }
clock-doubt-behind-newest = die Uhr dieses Rechners zeigt { $now_at }, aber eine Eingabe stammt vom { $newest_at }
    .next = Bis die Uhr stimmt, wird nichts gespeichert. Uhr stellen; geht sie richtig, auf der Seite „Heute“ bestätigen
clock-doubt-jumped = die Uhr dieses Rechners wurde bei laufendem Programm von { $from_at } auf { $to_at } gestellt
    .next = Bis das jemand auf der Seite „Heute“ bestätigt, wird kein Kleber gemischt und gilt nichts als ausgehärtet. Prüfen, ob die Uhr stimmt und wann die letzten Ansätze gemischt wurden

# Where to look up what was not found.
look-up-stock = Unter „Lager“ nachsehen
look-up-models = Unter „Lager“, „Modelle“ nachsehen
look-up-usual-models = Unter „Lager“, „Modelle“, „Übliche Modelle“ nachsehen
look-up-on-label = Den Code auf dem Etikett scannen oder eintippen
look-up-today = Auf der Seite „Heute“ nachsehen
look-up-orders = Unter „Lager“, „Bestellungen“ nachsehen
look-up-add-model = Erst unter „Lager“, „Modelle“ anlegen
look-up-sheets = Unter „Blätter“ nachsehen
look-up-customers = Unter „Blätter“, „Kunden“ nachsehen
look-up-layouts = Unter „Lager“, „Liste importieren“ nachsehen
look-up-glue = Unter „Kleben“ nachsehen
look-up-card = Den Code auf der Laufkarte noch einmal scannen oder eintippen
look-up-code = Den Code noch einmal scannen oder eintippen, was darunter steht
look-up-find = Einen Kundennamen, „job 1“, einen Code, eine Charge oder eine Bestellung eintippen oder ein Etikett scannen
look-up-choose = Etwas anderes dafür wählen
look-up-load-job = Den Auftrag neu laden
look-up-load-club = Den Schläger neu laden und seine Messwerte ansehen
look-up-plan-again = Den Auftrag neu planen
look-up-stock-changed = Neu planen: Das Lager hat sich geändert
look-up-scales = Unter „Waagen“ nachsehen
look-up-places = Der Sortierkasten hat die Fächer 1 bis { $most }
look-up-add-model-of = Erst das Modell anlegen: { $kind }
look-up-load-scale = Die Seite der Waage „{ $name }“ neu laden
look-up-study-places = Diese Analyse hat die Plätze 0 bis { $most }
look-up-clubs = Auf der Seite „Schläger“ nachsehen
look-up-has-kinds = Die Arten sind: { $known }
look-up-has-steps = Dieser Auftrag hat: { $known }
look-up-has-weights = Waage „{ $name }“ hat: { $known }

# What is refused of confirming the clock.
clock-fault-nothing-wrong = mit der Uhr ist alles in Ordnung
    .next = Nichts zu tun

# What every change needs.
need-fault-no-plan = Auftrag { $job } hat noch keinen Plan
    .next = Erst einen Plan annehmen, damit etwas zu erwarten ist
need-fault-job-over = Auftrag { $job } ist { $state }
    .next = Seine Akte bleibt; für weitere Arbeit an diesen Schlägern einen neuen Auftrag anlegen
need-fault-no-name = kein Name ist angegeben
    .next = Angeben, wer es macht: Der Name kommt in die Akte
need-fault-outside-job = { $at } kann kein Zeitpunkt dieses Auftrags sein: Er wurde am { $made_at } angelegt, jetzt ist es { $now_at }
    .next = Bei „jetzt“ die Zeit weglassen, sonst angeben, wann es war
need-fault-stale = { $number } wurde inzwischen auf einem anderen Bildschirm geändert
    .next = Nichts wurde überschrieben. Ansehen, was sich geändert hat, dann neu eingeben
meanwhile-read = inzwischen auf einem anderen Bildschirm gemessen ({ $number }, { $what }): { $there }, von { $by }; hier wurde { $here } eingetippt
    .next = Nichts wurde überschrieben. Noch einmal messen und eingeben, was angezeigt wird
need-fault-no-reason = der Grund fehlt: Er kommt in die Akte
    .next = Mit wenigen Worten schreiben, warum
