### Scales and gauges: their figures, their trust, their lines

# What is refused of the connection of a scale.
connection-fault-unnamed = eine Waage braucht Kennung, Namen und Anschluss
    .next = Alle drei ausfüllen, den Anschluss zum Beispiel mit /dev/ttyUSB0
connection-fault-speed = für { $name } sind { $baud } Bit je Sekunde eingestellt
    .next = Den Wert aus der Anleitung nehmen, meist 9600
connection-fault-frame = für { $name } eingestellt: Datenbits { $data_bits }, Stoppbits { $stop_bits }
    .next = 7 oder 8 Datenbits und 1 oder 2 Stoppbits nehmen
connection-fault-empty-mark = ein Kennzeichen von { $name } ist leer
    .next = Weglassen, was die Waage nicht sendet

# Why a line of a scale is refused.
line-fault-too-long = eine Zeile mit { $n } Zeichen: So etwas sendet keine Waage
    .next = Die Geschwindigkeit prüfen
line-fault-characters = Zeichen, die keine Waage sendet
    .next = Geschwindigkeit, Datenbits und Parität prüfen
line-fault-no-figure = „{ $text }“ enthält keine Zahl
line-fault-no-unit = „{ $text }“ hat keine Einheit, und für diese Waage ist keine eingestellt
    .next = Die Einheit unter Waagen wählen
line-fault-not-a-mass = „{ $text }“ sieht nicht nach einer Masse aus
    .next = Beginnt so eine Zeile mit ruhigem Wert? Dann diese Zeichen als Kennzeichen des ruhigen Werts eintragen oder als Text, der nicht zählt
line-fault-unreadable = { $what }
line-fault-not-a-swing-weight = „{ $text }“ sieht nicht nach einem Schwunggewicht aus
    .next = Beginnt die Zeile mit einem Kennzeichen, dieses eintragen: womit Zeilen mit ruhigem Wert beginnen

# A figure of an instrument; an amount by which one is off.
gauge-figure-mass = { MASS($figure_g, $digits) }
gauge-figure-reading = { LETTER($figure_points, $digits) }
gauge-figure-points = { POINTS($by_points, $digits) }
gauge-figure-frequency = { CPM($figure_cpm, $digits) }
gauge-figure-angle = { ANGLE($figure_deg, $digits) }
gauge-figure-length = { LENGTH($figure_mm, $digits) }

# Which way an instrument is off.
gauge-way-heavy = zu viel
gauge-way-light = zu wenig
gauge-way-high = zu viel
gauge-way-low = zu wenig
gauge-way-long = zu viel
gauge-way-short = zu wenig

# What a check or the calendar says against a scale.
trust-finding-too-much = { $reading } bei { $standard }: { $by } zu viel, erlaubt ± { $allowed }
trust-finding-too-little = { $reading } bei { $standard }: { $by } zu wenig, erlaubt ± { $allowed }
trust-finding-pattern = { $standard }: { $cause }
trust-finding-overdue = die Kalibrierung war am { $due_on } fällig
trust-finding-check-taken-back = die Prüfung, die das Vertrauen gekostet hat, wurde zurückgenommen: { $reason }
trust-finding-read-again = noch einmal gemessen

# Since when, as one says it on a day.
since-today = heute
since-yesterday = gestern
since-weekday =
    { $weekday ->
        [1] Montag
        [2] Dienstag
        [3] Mittwoch
        [4] Donnerstag
        [5] Freitag
        [6] Samstag
       *[7] Sonntag
    }
since-day = dem { $day_on }

# What is said of a scale that is not trusted. Whole sentences.
trust-passed = „{ $scale }“ hat die letzte Prüfung bestanden, ist aber seit { $since } nicht vertrauenswürdig. Eintragen, was getan wurde, und das Vertrauen wiederherstellen.
trust-off = „{ $scale }“ zeigt seit { $since } { $off_by } { $way }: erst prüfen, dann damit messen.
trust-overdue = „{ $scale }“ ist nicht vertrauenswürdig: Die Kalibrierung war am { $due_on } fällig. Kalibrieren lassen und das eintragen.
trust-not-trusted = „{ $scale }“ ist seit { $since } nicht vertrauenswürdig: { $reason }. Erst prüfen, dann damit messen.

# What a connected scale sends.
scale-line-value = { $figure }
scale-line-settled = { $figure }, ruhig
scale-line-moving = { $figure }, bewegt sich
scale-line-overload = Überlast
scale-line-skipped = übersprungen
scale-line-refused = { $why }
scale-heard-connected = verbunden
scale-heard-silent = Keine Daten. Ist sie eingeschaltet und auf Senden gestellt?
scale-heard-flooding = Sie sendet mehr Zeilen, als sich lesen lassen; auf selteneres Senden stellen.
scale-heard-too-much = Zu viel auf der Waage
scale-heard-unreadable = Eine Zeile war nicht lesbar: { $why }
scale-heard-lost = { $why }. Es wird weiter versucht; Stecker und Schalter prüfen.

# The command that listens to a scale.
scale-command-line = { $raw } →  { $read }
scale-command-refused = abgelehnt: { $why }
scale-command-parity = „{ $parity }“ ist keine Parität: none, even oder odd angeben
scale-command-port-never = der Anschluss ließ sich nie öffnen: { $why }

# The page of scales on a serial line.
scales-title = Waagen
scales-crumb = an serieller Schnittstelle
scales-about = Eine Waage mit serieller Schnittstelle (RS-232 oder USB-seriell) trägt selbst ein, was sie anzeigt. Den Anschluss einstellen, dann unten nachsehen, ob ihre Zeilen gelesen werden.
scales-add = Weitere Waage
scales-change = Waage ändern
scales-connected = verbunden
scales-not-connected = nicht verbunden
scales-lines = Ihre letzten Zeilen, so wie sie kamen und wie sie gelesen werden
scales-no-lines = Noch keine. Etwas auflegen oder an der Waage die Sendetaste drücken.
scales-newest = Seite neu laden, um die neuesten zu sehen.
scales-refused = abgelehnt
scales-edit = Ändern
scales-remove = Entfernen
scales-name = Name
scales-name-hint = Zum Beispiel: Teilewaage
scales-it-shows = Sie zeigt
scales-port = Anschluss
scales-port-hint = /dev/ttyUSB0, /dev/ttyACM0, COM3
scales-baud = Geschwindigkeit
scales-baud-hint = Aus der Anleitung, meist 9600
scales-mark = Kennzeichen eines ruhigen Werts
scales-mark-hint = So, wie es in der Zeile steht; leer, wenn es keines gibt
scales-unit = Einheit von Zeilen ohne Einheit
scales-unit-hint = g, oz, lb; bei Schwunggewicht: oz in. Leer: solche Zeilen ablehnen
scales-overload = Texte bei Überlast
scales-commas = Durch Kommas getrennt
scales-ignore = Texte, die nicht zählen
scales-ignore-hint = Durch Kommas getrennt, zum Beispiel GS
scales-skip = Zeilen überspringen, die so beginnen
scales-ask = Abfrage, einmal je Sekunde gesendet
scales-ask-hint = Leer bei einer Waage, die von selbst sendet; \r und \n stehen für das Zeilenende
scales-data-bits = Datenbits
scales-stop-bits = Stoppbits
scales-means = Das Kennzeichen heißt
scales-parity = Parität
scales-keep = Speichern und verbinden
scales-needs-whole = Eine ganze Zahl eingeben
scales-needs-name = Einen Namen eingeben
scales-needs-port = Angeben, an welchem Anschluss sie hängt

# What a job believes of today's balance scale.
scale-shift-low = diese Waage zeigt heute anscheinend { $by_points } zu wenig
scale-shift-high = diese Waage zeigt heute anscheinend { $by_points } zu viel
scale-shift-steady = diese Waage zeigt richtig
scale-shift-counted = { CAPITAL($says) }. Vorhersagen und Endmessung rechnen damit.
scale-shift-check = Prüfgewicht
