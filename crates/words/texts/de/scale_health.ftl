### Scales: how each stands, its checks, its trust, its calibration

# What is refused of checks and calibrations.
check-fault-taken-back = diese Prüfung ist schon zurückgenommen
    .next = Nichts zu tun
check-fault-trusted = „{ $name }“ ist schon vertrauenswürdig
    .next = Nichts zu tun
check-fault-only-overdue = „{ $name }“ ist nur nicht vertrauenswürdig, weil die Kalibrierung überfällig ist
    .next = Die neue Kalibrierung eingeben oder wann sie fällig ist
check-fault-not-trusted = „{ $name }“ ist schon als nicht vertrauenswürdig eingetragen
    .next = Nichts zu tun
check-fault-wrong-time = eine Prüfung um { $at } lässt sich nicht eingeben; jetzt ist { $now_at }
    .next = „at“ weglassen oder die Zeit des Ablesens angeben, höchstens zwei Wochen zurück
check-fault-no-weight = { $name }: kein Prüfgewicht eingetragen
    .next = Zuerst ein Prüfgewicht eintragen, unter Waagen, Gewichte und Messgeräte
check-fault-nobody-calibrated = es fehlt, wer kalibriert hat
    .next = Das Labor eintragen, oder wer es hier getan hat
check-fault-calibrated-later = { $calibrated_on } kommt erst noch
    .next = Den Tag der Kalibrierung eingeben
check-fault-due-before = wieder fällig am { $due_on }, das ist nicht nach dem { $calibrated_on }
    .next = Einen späteren Tag eingeben oder leer lassen

scale-state-not-trusted = nicht vertrauenswürdig
scale-state-no-weight = kein Prüfgewicht
scale-state-checked = heute geprüft
scale-state-not-checked = heute nicht geprüft

scale-clock-behind = Die Uhr zeigt { $now_at }, der letzte Eintrag ist aber von { $last_at }. Stellen Sie die Uhr dieses Rechners richtig; verloren ist nichts.

# The overview.
scale-health-title = Waagen
scale-health-crumb = Prüfgewichte, Vertrauen, Messsystemanalysen
scale-health-setup = Gewichte und Messgeräte
scale-health-serial = Waagen an einer seriellen Leitung
scale-health-check = Prüfen
scale-health-enter-weight = Prüfgewicht eintragen
scale-health-closer = Näheres
scale-health-last = Letzte Prüfung: { $reading } mit { $standard }, { $by }, { $checked_at }.
scale-health-never = Noch nie geprüft.
scale-health-studies = Messsystemanalysen
scale-health-new-study = Neue Analyse
scale-health-studies-about = Wie viel von der Streuung, die Sie sehen, kommt von der Waage und den Händen? Mehrere Teile, von mehreren Schlägerbauern je mehrmals gemessen.
scale-health-study-found = <a>{ CAPITAL($scale) }, { $begun_at }</a>: { PERCENT($gauge_share) } kommen von der Waage und den Händen
scale-health-study-open = <a>{ CAPITAL($scale) }, { $begun_at }</a>
scale-health-study-read = { $done } von { $of } gemessen

# The chart of a scale's checks.
check-chart-title = { CAPITAL($scale) }: Fehler mit { $standard }
check-chart-none = Noch keine Prüfung.
check-chart-tolerance = Grün: in der Toleranz.
check-chart-limits = Gestrichelt: Eingriffsgrenzen, berechnet aus den ausgefüllten Punkten.
check-chart-no-limits = Eingriffsgrenzen gibt es nach acht Prüfungen.
check-chart-red = Rot: außer Kontrolle.
check-chart-below = Unten: Änderung seit der vorigen Prüfung.
check-chart-caption = { $title }, in { $unit }
check-chart-day = Tag
check-chart-error = Fehler
check-chart-range = gegen die vorige
check-chart-says = was sie zeigt
check-chart-jump = { $range }, ein Sprung

# One scale.
scale-health-kept-right = Gespeichert: { $reading }, genau richtig.
scale-health-kept-much = Gespeichert: { $reading }, { $by } zu viel.
scale-health-kept-little = Gespeichert: { $reading }, { $by } zu wenig.
scale-health-kept-next = Die Waage ist vertrauenswürdig. Offene Aufträge rechnen ab jetzt damit.
scale-health-checks =
    { $n ->
        [one] 1 Prüfung
       *[other] { $n } Prüfungen
    }
scale-health-no-checks = Keine Prüfung, seit die Regelkarte begonnen wurde.
scale-health-no-checks-no-weight = Keine Prüfung, seit die Regelkarte begonnen wurde. Noch gibt es nichts, womit die Waage zu prüfen wäre: <a>Prüfgewicht eintragen</a>.
scale-health-crumb-one = Waagen · { $measures }
scale-health-until-then = Bis dahin zählen ihre Messwerte mit zusätzlich ± { $by }.
scale-health-done = Was getan wurde
scale-health-done-hint = Zum Beispiel: ausgerichtet, neu auf null gestellt. Es kommt mit Ihrem Namen in die Liste
scale-health-word = Warum sie trotzdem stimmt
scale-health-word-hint = Seitdem ist keine Prüfung bestanden: Das ist Ihr Wort und kommt mit Ihrem Namen in die Liste
scale-health-trust = Prüfung bestanden: Vertrauen wiederherstellen
scale-health-trust-word = Auf mein Wort vertrauen

scale-health-figure-error = zeigt zu viel um
scale-health-figure-error-note =
    { $n ->
        [one] ± { $band }, aus 1 Prüfung
       *[other] ± { $band }, aus { $n } Prüfungen
    }
scale-health-figure-drift = driftet in einer Woche um
scale-health-figure-drift-note = ± { $band }
scale-health-figure-no-drift-note = ± { $band }: keine nennenswerte Drift
scale-health-figure-jobs = Aufträge rechnen mit
scale-health-figure-jobs-unchecked = ± { $band }, ohne Prüfung von heute
scale-health-figure-jobs-checked =
    { $n ->
        [one] ± { $band } mit 1 Prüfung von heute, ± { $without } ohne
       *[other] ± { $band } mit { $n } Prüfungen von heute, ± { $without } ohne
    }
scale-health-figure-scatter = streut um
scale-health-figure-scatter-note = je Messwert nach neuem Auflegen, wie angegeben

scale-health-calibration = Kalibrierung und Prüfgewichte
scale-health-weights = Gewichte
scale-health-standard = { $standard }: { $value } ± { $sd }
scale-health-standard-of = vom { $certified_on }
scale-health-standard-allowed = darf { $allowed } daneben liegen
scale-health-no-calibration = Noch keine Kalibrierung eingetragen.
scale-health-enter-calibration = Kalibrierung eintragen
scale-health-calibrated-on = Kalibriert am
scale-health-by-whom = Von wem
scale-health-by-whom-hint = Das Labor, oder wer es hier getan hat
scale-health-next-due = Wieder fällig am
scale-health-next-due-hint = Leer: wird nie verlangt
scale-health-note = Schein, Anmerkung
scale-health-adjusted = Sie wurde justiert: neue Regelkarte beginnen
scale-health-keep-calibration = Kalibrierung speichern
scale-health-calibrated = Kalibriert
scale-health-calibrated-by = { $calibrated_on }, { $by }
scale-health-due = Wieder fällig
scale-health-overdue = überfällig
scale-health-not-said = kein Tag angegeben
scale-health-needs-day = Den Tag eingeben

# What happened to it.
scale-health-events = Verlauf
scale-health-earlier = Früher
scale-health-event-by = { $by }, { $happened_at }
scale-health-wrong = Das war falsch
scale-health-why = Warum
scale-health-take-back = Zurücknehmen
scale-health-event-check = { $standard }: <strong>{ $reading }</strong>
scale-health-event-outside = außerhalb
scale-health-event-as-it-is = so behalten
scale-health-event-bench = an der Werkbank
scale-health-event-taken-back = Eine Prüfung wurde zurückgenommen: { $reason }
scale-health-event-calibrated = Kalibriert am { $calibrated_on }, { $by }
scale-health-event-adjusted = Kalibriert am { $calibrated_on }, { $by }; justiert: Eine neue Regelkarte beginnt
scale-health-event-trusted = Vertrauen wiederhergestellt
scale-health-event-word = nur auf dieses Wort
scale-health-event-chart = Eine neue Regelkarte beginnt: { $reason }
scale-health-event-noise = Ihre Streuung steht nach einer Messsystemanalyse auf { $now }; vorher { $before }
scale-health-distrust = Vertrauen entziehen
scale-health-seen = Was aufgefallen ist
scale-health-seen-hint = Zum Beispiel: heruntergefallen, geht nicht auf null zurück
scale-health-new-chart = Neue Regelkarte beginnen
scale-health-new-chart-hint = Zum Beispiel: steht jetzt auf der anderen Werkbank. Frühere Prüfungen bleiben in der Liste

# The command.
scale-command-column-key = Schlüssel
scale-command-column-scale = Waage
scale-command-column-state = Stand
scale-command-column-last = letzte Prüfung
scale-command-column-error = zeigt zu viel um
scale-command-never = nie
scale-command-state = { CAPITAL($scale) }: { $state }.
scale-command-error = Sie zeigt zu viel um { $error }
scale-command-error-unknown = Sie wurde noch nie geprüft
scale-command-jobs =
    { $n ->
        [one] Aufträge rechnen mit { $error }, aus 1 Prüfung von heute
       *[other] Aufträge rechnen mit { $error }, aus { $n } Prüfungen von heute
    }
scale-command-weight = Prüfgewicht { $key }: { $standard }, { $value }, darf { $allowed } daneben liegen
scale-command-as-it-is = { $question } { $next } Soll es so bleiben: --as-it-is
scale-command-repeated = Schon gespeichert.
