### What is refused, wherever it comes from

refusal-with-next = { $what }. { $next }
refusal-without-next = Berichtigen
refusal-unknown = nicht bekannt: { $what } „{ $name }“

entry-out-of-range = { $entry } ist { $value }, erlaubt ist { $low } bis { $high }
    .next = Wert und Einheit prüfen
entry-no-figure = zu { $entry } gehört kein Wert
    .next = Weglassen
entry-unreadable = { $entry }: { $what }

# An entry, as a person finds it.
entry-of-field = { $name }
entry-of-number = Nummer { $number }: { $name }
entry-of-blank =
    { $number ->
        [none] Rohschaft für alle Nummern: { $name }
       *[other] Rohschaft für { $number }: { $name }
    }
entry-of-tip-trim = Tip-Kürzung von { $number }
entry-of-length-of = Länge von { $number }
entry-of-reading = { $what }

# Something that was named and does not exist.
not-found-named = nicht bekannt: { $what } „{ $name }“
not-found-model = nicht bekannt: Modell „{ $code }“ ({ $kind })
not-found-number = { $model } hat keine Nummer „{ $number }“
not-found-blank = das Schaftmodell { $model } hat keinen Rohschaft für „{ $number }“
noun-model = Modell
noun-usual-model = übliches Modell
noun-part = Teil
noun-sheet = Blatt
noun-customer = Kunde
noun-job = Auftrag
noun-club = Schläger
noun-slot = Fach im Sortierkasten
noun-step = Schritt
noun-reading = Messwert
noun-scale = Waage
noun-check-weight = Prüfgewicht
noun-check = Prüfung
noun-study = Messsystemanalyse
noun-batch = Ansatz
noun-order = Bestellung
noun-plan-weight = Gewicht
noun-record = Akte
noun-label = Code
noun-layout = Listenaufbau
noun-job-kind = Auftragsart
noun-learned = Lernwert
noun-mark = Vermerk
noun-anything = Kunde, Auftrag, Teil, Charge oder Bestellung

# What to do about something that does not exist.
find-it-known = Bekannt: { $known }
find-it-known-or-add = Bekannt: { $known }; oder unter „Lager“, „Modelle“ anlegen
find-it-add-model = Erst unter „Lager“, „Modelle“ anlegen: { $kind }
find-it-look-up-model = Unter „Lager“, „Modelle“ nachsehen
find-it-add-blank = Den Rohschaft im Schaftmodell eintragen
find-it-choose-shaft = Ein Schaftmodell wählen, das diese Nummer hat
find-it-one-of = Möglich: { $known }

# What the program could not work out.
work-fault-belief = die Vorhersage ließ sich nicht berechnen: { $what }
work-fault-plan = der Plan ließ sich nicht berechnen: { $what }
work-fault-program = das Programm hat einen Fehler gemacht: { $log }. Nichts wurde gespeichert
    .next = Diese Meldung den Herstellern des Programms schicken

noun-part-or-card = Teil oder Laufkarte

noun-club-of-job = Schläger dieses Auftrags
noun-earlier-reading = früherer Messwert dieses Schlägers
