### Order

# What is refused of an order.
order-fault-masses-backwards = die gewünschten Massen laufen von { FIGURE($from_g) } bis { FIGURE($to_g) }
    .next = Zuerst die leichteste angeben, dann die schwerste
order-fault-expected-too-early = erwartet wird sie am { $expected_on }, bestellt ist sie aber erst am { $ordered_on }
    .next = Beide Tage prüfen
order-fault-too-long = Lieferant oder Bemerkung ist zu lang
    .next = Kürzer fassen: höchstens 200 Zeichen für den Lieferanten, 2000 für die Bemerkung
order-fault-more-for-jobs = für Aufträge vorgesehen: { $for_jobs }, bestellt: { $ordered }
    .next = Mehr bestellen oder weniger für die Aufträge vorsehen
order-fault-bad-count = { $n } ist keine Stückzahl
    .next = Eine ganze Zahl von 1 bis { $most } angeben

# What is refused of placing and booking in orders.
order-refused-nothing = nichts ist bestellt
    .next = Mindestens ein Teil angeben
order-refused-job-waits-not = Auftrag { $job } ({ $state }) wartet auf nichts
    .next = Ohne diesen Auftrag bestellen oder einen anderen angeben
order-refused-nothing-to-come = aus Bestellung { $order } ({ $state }) steht nichts mehr aus
    .next = Es ist nichts zu tun
order-refused-nothing-changed = nichts wurde geändert
    .next = Einen anderen Lieferanten, einen anderen Tag oder eine Bemerkung angeben
order-refused-job-lacks-nothing = Auftrag { $job } fehlt nichts, was nicht schon bestellt ist
    .next = Seinen Plan und die Bestellungen ansehen
order-refused-job-lacks-nothing-as = Auftrag { $job } ({ $state }) fehlt nichts
    .next = Die Bestellungen eines anderen Auftrags ansehen
order-refused-stale = Bestellung { $order } wurde inzwischen auf einem anderen Bildschirm geändert oder doppelt abgeschickt
    .next = Nichts wurde eingebucht. Die Änderung ansehen, dann neu eingeben
order-refused-other-kind = { $model } ist als { $kind } geführt, in Bestellung { $order } steht aber: { $wanted }
    .next = Wählen, was gekommen ist, oder durch Einwiegen einbuchen
order-refused-number-missing = für { $model } fehlt die Nummer
    .next = Eine von diesen angeben: { $known }
order-refused-no-number = { $kind } { $model } hat keine Nummer
    .next = Die Nummer weglassen
order-refused-unknown-number = { $model } gibt es nicht mit Nummer { $number }
    .next = Eine von diesen angeben: { $known }

# What is asked before parts of an order are booked in.
order-ask-cancelled =
    { $note ->
        [none] Bestellung { $order } ist storniert, von { $by }
       *[other] Bestellung { $order } ist storniert, von { $by } („{ $note }“)
    }
    .next = Sind die Teile trotzdem gekommen, bestätigen; dann werden sie eingebucht. Sonst die Anzahl prüfen
order-ask-closed-short =
    { $note ->
        [none] Bestellung { $order } wurde mit Fehlmenge abgeschlossen, von { $by }
       *[other] Bestellung { $order } wurde mit Fehlmenge abgeschlossen, von { $by } („{ $note }“)
    }
    .next = Sind die Teile trotzdem gekommen, bestätigen; dann werden sie eingebucht. Sonst die Anzahl prüfen
order-ask-all-here = aus Bestellung { $order } ist schon alles da
    .next = Sind die Teile trotzdem gekommen, bestätigen; dann werden sie eingebucht. Sonst die Anzahl prüfen
order-ask-more = { $n } sind mehr, als aus Bestellung { $order } noch ausstehen: { $open }
    .next = Sind die Teile trotzdem gekommen, bestätigen; dann werden sie eingebucht. Sonst die Anzahl prüfen

# A number of parts of one model: “2 heads Siskin 7”.
order-parts-head =
    { $count ->
        [one] 1 Kopf
       *[other] { $count } Köpfe
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-adapter =
    { $count ->
        [one] 1 Adapter
       *[other] { $count } Adapter
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-shaft =
    { $count ->
        [one] 1 Schaft
       *[other] { $count } Schäfte
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-grip =
    { $count ->
        [one] 1 Griff
       *[other] { $count } Griffe
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-tip-weight =
    { $count ->
        [one] 1 Tip-Gewicht
       *[other] { $count } Tip-Gewichte
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-ferrule =
    { $count ->
        [one] 1 Ferrule
       *[other] { $count } Ferrulen
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-adhesive =
    { $count ->
        [one] 1 Kleber
       *[other] { $count } Kleber
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }
order-parts-tape =
    { $count ->
        [one] 1 Griffband
       *[other] { $count } Griffbänder
    } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }

# When parts are expected.
order-expected-no-day = noch ohne Liefertag
order-expected-today = heute erwartet
order-expected-tomorrow = morgen erwartet
order-expected-soon = am { WEEKDAY($expected_on) } erwartet
order-expected-later = am { WEEKDAY($expected_on) }, { DAY($expected_on) } erwartet
order-expected-yesterday = überfällig: seit gestern erwartet, { WEEKDAY($expected_on) }, { DAY($expected_on) }
order-expected-overdue = { $days } Tage überfällig: seit { WEEKDAY($expected_on) }, { DAY($expected_on) } erwartet

# What a job waits for.
order-wait-ordered = wartet auf { $parts }, { $expected }
order-wait-not-ordered = es fehlen: { $parts }, nicht bestellt

# The same where a mark beside it says “lacks” or “waits for” already.
order-waits-lacks = es fehlen
order-waits-for = wartet auf
order-waits-overdue = wartet auf, überfällig
order-waits-rest = { $parts }, { $expected }
order-waits-rest-not-ordered = { $parts }, nicht bestellt

# The places of the stock.
order-places = Bereiche des Lagers
order-place-parts = Teile
order-place-orders = Bestellungen

# Masses that will do.
order-window = { PLAIN($from_g) } bis { $to_g }
order-window-from = mindestens { $from_g }
order-window-to = höchstens { $to_g }

# The list of orders.
order-number = Bestellung { $order }
order-job = Auftrag { $job }
order-for-job = { $n } für <a>Auftrag { $job }</a>
order-shelf = Lager
order-supplier-open = noch offen
order-no-day = noch ohne Liefertag
order-overdue =
    { $days ->
        [one] 1 Tag überfällig
       *[other] { $days } Tage überfällig
    }
order-new = Neue Bestellung
order-export = CSV exportieren
order-open-only = Nur offene Bestellungen zeigen
order-all = Alle Bestellungen
order-none-ever = Noch wurde nichts bestellt.
order-none = Nichts ist bestellt.
order-none-next = Bestellen Sie aus einem Plan, dem Teile fehlen, oder aus der Liste der Fehlmengen.
order-page-of = Seite { $page }, { $total } insgesamt.
order-newer = Neuere
order-older = Ältere
order-count =
    { $n ->
        [one] 1 Bestellung
       *[other] { $n } Bestellungen
    }
order-count-open =
    { $n ->
        [one] 1 offene Bestellung
       *[other] { $n } offene Bestellungen
    }
order-here-of = { $n } da
order-list-caption = Bestellungen, die neueste zuerst
order-column-order = Bestellung
order-column-state = Stand
order-column-what = was
order-column-for = für
order-column-supplier = Lieferant
order-column-expected = erwartet

# A new order.
order-no-models = Es gibt noch keine Modelle.
order-no-models-next = Jedes bestellte Teil gehört zu einem Modell: zuerst das Modell anlegen.
order-new-head-model = Neues Kopfmodell
order-field-model = Modell
order-field-number = Nummer
order-field-number-hint = Bei einem Kopf oder Taper-Rohschaft
order-field-count = Wie viele
order-field-from = Masse mindestens
order-field-from-hint = 262.5; kann leer bleiben
order-field-from-hint-oz = 9.259; kann leer bleiben
order-field-to = Masse höchstens
order-field-for = Für
order-field-supplier = Lieferant
order-field-later = Kann später eingetragen werden
order-field-expected = Erwartet am
order-field-note = Bemerkung
order-place = Bestellen
order-back = Zurück
order-count-needed = Die Anzahl eingeben, zum Beispiel 4
order-group-head = Köpfe
order-group-adapter = Adapter
order-group-shaft = Schäfte
order-group-grip = Griffe
order-group-tip-weight = Tip-Gewichte
order-group-ferrule = Ferrulen
order-group-adhesive = Kleber
order-group-tape = Griffbänder

# One order.
order-figure-ordered = bestellt
order-figure-here = da
order-figure-open = steht aus
order-history = Verlauf
order-event-other = { $n } als Ersatz gekommen: { $what }
order-event-came = { $n } gekommen
order-event-supplier = Lieferant { $supplier }
order-event-expected = erwartet am { $expected_on }
order-event-remark = Bemerkung
order-came-heading = Teile sind gekommen
order-came = Wie viele sind gekommen
order-came-needed = Eingeben, wie viele gekommen sind, zum Beispiel 4
order-came-number = Eine andere Nummer ist gekommen
order-came-number-hint = Nur wenn es nicht die bestellte ist
order-came-model = Ein anderes Modell ist gekommen
order-came-model-hint = Sein Code; nur wenn es nicht das bestellte ist
order-came-short = Der Rest kommt nicht mehr
order-came-anyway = Sie sind trotzdem gekommen: einbuchen
order-came-button = Einbuchen und einwiegen
order-came-more = Es ist mehr gekommen
order-tell = Lieferant oder Tag ändern
order-keep = Speichern
order-close = Bestellung abschließen
order-close-why = Warum? Der Grund bleibt bei der Bestellung stehen.
order-close-short = Der Lieferant liefert nichts mehr
order-cancel = Bestellung stornieren

# What the plan of a job lacks.
order-wanted = Zu bestellende Teile
order-wanted-open = zu bestellen
order-wanted-ordered = bestellt
order-wanted-clubs = für { $clubs }
order-wanted-of-them = davon { $n } bestellt
order-wanted-button = Für diesen Auftrag bestellen

# Orders that are to come today or are late.
order-due = Erwartet
order-due-today = heute
order-due-from = von { $supplier }
