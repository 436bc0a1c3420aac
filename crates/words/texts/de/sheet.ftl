### Sheet


# Why a short sheet is refused.
short-sheet-word = „{ $word }“ ab Zeichen { $n }: { $what }
short-sheet-no-clubs = auf dem Blatt stehen keine Schläger; möglich sind { $known }
    .next = Die Nummern schreiben, zum Beispiel 5-PW
short-sheet-too-long = dieser Text hat { $n } Zeichen, ein Kurzblatt höchstens { $most }
    .next = Die Angaben zu jedem Schläger nur einmal schreiben; was für alle gilt, vor den ersten Schläger
short-sheet-no-head-model = dem Satz fehlt ein Kopfmodell
    .next = Mindestens eines wählen
short-sheet-models = { $what }
short-sheet-cap-needed = { $what }. Ohne die Griffkappe lässt sich die eine Länge nicht in die andere umrechnen
short-sheet-inertia-needs-models = { $what }. Gleiches Trägheitsmoment braucht alle Modelle des Satzes
short-sheet-no-shaft-for = dem Satz fehlt ein Schaftmodell, Schlägerart: { $kind }
    .next = Einen Schaft dafür wählen
short-sheet-no-grip-for = dem Satz fehlt ein Griffmodell, Schlägerart: { $kind }
    .next = Einen Griff dafür wählen
short-sheet-fitted-unknown = der Referenzschläger hat die Nummer { $number }, und die gibt es in keinem Kopfmodell des Satzes
    .next = Seine Nummer berichtigen; oder andere Kopfmodelle wählen als { $known }
short-sheet-fitted-several = der Referenzschläger hat die Nummer { $number }, und die kommt im Satz mehrmals vor
    .next = Die Schlägerart mit angeben: 5w, 5h oder 5i
short-sheet-fitted-length-end = beim Referenzschläger ist offen, bis wohin die Länge gilt
    .next = Angeben, ob bis zur Griffkappe oder bis zum Schaftende, oder die Länge des Satzes schreiben
short-sheet-fitted-cap-unknown = Referenzschläger und Tabelle gelten bis zu verschiedenen Enden, und die Griffkappe des Referenzschlägers ist nicht bekannt
    .next = Die Dicke der Griffkappe oder das Griffmodell angeben
short-sheet-unequal-swing-weights = für den Satz gilt ein einheitliches Schwunggewicht, aber Nummer { $number } bekäme { LETTER($first_points, digits: 0) } und Nummer { $other } { LETTER($other_points, digits: 0) }
    .next = Das Schwunggewicht schreiben, zum Beispiel D3, oder das des Referenzschlägers angeben
short-sheet-no-step = für den Satz gilt ein gestuftes Schwunggewicht, aber die Stufe fehlt
    .next = Die Stufe schreiben, zum Beispiel D2 +0.5 a club
short-sheet-inertia-needs-fitted = gleiches Trägheitsmoment braucht den Referenzschläger mit seinem Schwunggewicht
    .next = Nummer und Schwunggewicht (oder Masse und Balancepunkt) des Referenzschlägers angeben
short-sheet-fitted-other-kind = der Referenzschläger, Nummer { $number }, ist von anderer Schlägerart als alle Schläger des Satzes
    .next = Einen Referenzschläger von der Schlägerart des Satzes angeben
short-sheet-no-head-for-inertia = kein Kopf gibt Nummer { $number } das Trägheitsmoment des Referenzschlägers, Nummer { $fitted }
    .next = Messwerte des Referenzschlägers und die Längen prüfen

# What is wrong with one phrase of a short sheet.
short-word-two-meanings = das kann ein einziger Wert sein oder ein Schläger und ein Wert; ein Komma hinter den Schläger setzen oder ein + vor den Wert
    .next = Zum Beispiel 3, 1/2 over schreiben
short-word-named-before = Nummer { $number } kommt schon vorher vor
    .next = Zum Beispiel 5-9 D2; P-S D4 schreiben
short-word-said-before = „{ $word }“ ab Zeichen { $n } legt das für dieselben Schläger schon fest
    .next = Zum Beispiel 5-9 D2; P-S D4 schreiben
short-word-which-figure = offen ist, ob Länge, Loft oder Lie gemeint ist
    .next = Zum Beispiel +1/2 in, 1 strong oder 2 up schreiben
short-word-swing-weight = ein Schwunggewicht hat einen Buchstaben von A bis G und Punkte von 0 bis 9,9
    .next = Zum Beispiel D3 oder D2.5 schreiben
short-word-length-offset = so weit weicht kein Schläger von der Länge in der Tabelle ab
    .next = Zum Beispiel +1/2 in schreiben
short-word-length = eine Länge braucht ihre Einheit, ein Unterschied sein Vorzeichen, und beides muss bei einem Schläger möglich sein
    .next = Zum Beispiel 36 3/4 in oder +1/2 schreiben
short-word-graphics = offen ist, ob Griff oder Schaft gemeint ist
    .next = Zum Beispiel grip down oder shaft up schreiben
short-word-comma = ein Komma zwischen zwei Ziffern ist ein Dezimalkomma; hinter ein trennendes Komma gehört ein Leerzeichen
    .next = Zum Beispiel 5-PW, +1/2, 2 up, D3, 2 wraps schreiben
short-word-not-a-word = dieses Wort kennt das Kurzblatt nicht
    .next = Zum Beispiel 5-PW, +1/2, 2 up, D3, 2 wraps schreiben
short-word-layers = unter einen Griff passen höchstens { $most } Lagen
    .next = Zum Beispiel 2 wraps + 1 lower hand schreiben
short-word-tolerance = eine Toleranz muss größer als 0 und darf höchstens 30 sein
    .next = Zum Beispiel ±0.3 schreiben
short-word-wedge-offset = Wedges dürfen höchstens { FIGURE($limit_points) } über oder unter ihrem Satz liegen
    .next = Zum Beispiel wedges +2 points schreiben
short-word-swing-weight-step = von Schläger zu Schläger sind höchstens { FIGURE($limit_points) } Stufe erlaubt
    .next = Zum Beispiel D2 +0.5 a club schreiben
short-word-swing-weight-range = ein Schwunggewicht liegt zwischen { LETTER($low_points, digits: 0) } und { LETTER($high_points, digits: 0) }
    .next = Zum Beispiel D3 schreiben
short-word-frequency = die Frequenz eines Schlägers liegt zwischen 50 und 600 cpm, die Stufe von Schläger zu Schläger bei höchstens 30 cpm
    .next = Zum Beispiel 300 cpm schreiben
short-word-total-mass = ein Schläger wiegt { FIGURE($low_g) } bis { FIGURE($high_g) }, die Stufe von Schläger zu Schläger beträgt höchstens { FIGURE($step_g) }
    .next = Zum Beispiel total 428 g schreiben
short-word-lie = ein Lie liegt zwischen { FIGURE($low_deg) } und { FIGURE($high_deg) }
    .next = Zum Beispiel 2 up oder lie 62 schreiben
short-word-loft = ein Loft liegt zwischen { FIGURE($low_deg) } und { FIGURE($high_deg) }
    .next = Zum Beispiel 1 strong oder loft 34 schreiben
short-word-no-model-of-kind = der Satz hat kein Modell der Schlägerart { $kind }, nur { $known }
    .next = Zum Beispiel 5-PW schreiben
short-word-no-such-club = Nummer { $number } gibt es nicht in { $known }
    .next = Zum Beispiel 5-PW schreiben
short-word-backwards = der Bereich läuft rückwärts
    .next = Zum Beispiel 5-PW schreiben
short-word-different-kinds = Anfang und Ende sind verschiedene Schlägerarten
    .next = Zum Beispiel 3w-5w, 5-PW schreiben
short-word-several = diese Nummer kommt im Satz mehrmals vor: in { $known }
    .next = Zum Beispiel 5w oder 5i schreiben
short-word-no-fitted-club = es gibt keinen Referenzschläger, von dessen Schwunggewicht die Stufen ausgehen könnten
    .next = Zum Beispiel D2 +0.5 a club schreiben
short-word-steps-under-one-swing-weight = für den Satz gilt ein einheitliches Schwunggewicht, hier steht aber eine Stufe; das gestufte Schwunggewicht wählen oder nur eines schreiben
    .next = Zum Beispiel D3 schreiben
short-word-second-swing-weight = für den Satz gilt ein einheitliches Schwunggewicht, und für andere Schläger steht schon { LETTER($first_points, digits: 0) } da
    .next = Zum Beispiel D3, wedges +2 points schreiben
short-word-swing-weight-under-inertia = für den Satz gilt gleiches Trägheitsmoment, daraus folgt das Schwunggewicht jedes Schlägers; diese Angabe weglassen oder eine andere Regel wählen
    .next = Zum Beispiel 5-PW, +1/2, 2 up schreiben
short-word-bend-lie = ein Kopf lässt sich höchstens um { FIGURE($limit_deg) } biegen
    .next = Zum Beispiel 2 up oder lie 62 schreiben
short-word-bend-loft = ein Kopf lässt sich höchstens um { FIGURE($limit_deg) } biegen
    .next = Zum Beispiel 1 strong oder loft 34 schreiben

# The numbers that a head model of the set has.
known-clubs-model = { $code } ({ $numbers })

# What is refused of changing or approving a sheet.
sheet-fault-approved = dieses Blatt ist freigegeben; sein Auftrag behält es, wie es war
    .next = Für eine Änderung ein neues Blatt schreiben
sheet-fault-approved-as = dieses Blatt ist schon freigegeben, als Auftrag { $job }
    .next = Für einen weiteren Satz ein neues Blatt schreiben
sheet-fault-stop =
    { $club ->
        [none] { $what }
       *[other] { $club }: { $what }
    }

# The list.
sheet-title = Blätter
sheet-list = Fittingblätter
sheet-none-yet = Noch kein Blatt.
sheet-none-yet-hint = Schreiben Sie ein Fitting auf wie auf Papier, oder laden Sie ein Blatt, das als Datei gespeichert ist.
sheet-new = Neues Blatt
sheet-load-file = Datei laden
sheet-find = Suchen
sheet-none-found = Kein Blatt passt.
sheet-none-found-hint = Kürzer suchen oder alle anzeigen.
sheet-all = Alle Blätter
sheet-last-shown = Die letzten { $n } Blätter. Frühere finden Sie über den Spieler.
sheet-more-than = mehr als { $n } Blätter
sheet-count =
    { $n ->
        [one] 1 Blatt
       *[other] { $n } Blätter
    }
sheet-column-player = Spieler
sheet-column-due = Termin
sheet-column-clubs = Schläger
sheet-column-job = Auftrag
sheet-job = Auftrag { $job }
sheet-not-approved = nicht freigegeben

# A saved sheet.
sheet-of = Blatt: { $player }
sheet-crumb = fällig { $due_on } · { $hand } · { $n } Schläger
sheet-clubs = Schläger
sheet-clubs-of = Schläger des Blatts
sheet-written = Geschrieben: { $text }
sheet-note = <b>Notiz:</b> { $note }
sheet-save-file = Dieses Blatt als Datei speichern
sheet-to-job = Zu Auftrag { $job }
sheet-approved = freigegeben
sheet-approve = Freigeben und Auftrag anlegen
sheet-not-approved-yet =
    { $n ->
        [one] Noch nicht freizugeben: zuerst unten 1 Befund beheben.
       *[other] Noch nicht freizugeben: zuerst unten { $n } Befunde beheben.
    }
sheet-approve-refused = Nicht freigegeben: { $what }
sheet-change-head = Spieler, Termin, Hand oder Notiz ändern
sheet-change = Ändern
sheet-as-it-is-now = Jetzigen Stand anzeigen
sheet-typed-is-below = Ihre Eingabe steht noch unten.

# A club of the sheet.
sheet-field-club = Schläger
sheet-field-length = Länge
sheet-field-swing-weight = Schwunggewicht
sheet-field-loft = Loft
sheet-field-lie = Lie
sheet-field-cpm = cpm
sheet-field-frequency = Frequenz
sheet-field-total-mass = Gesamtmasse
sheet-field-tape = Griffband
sheet-field-labels = Aufdruck
sheet-field-soft-side = weiche Seite
sheet-field-tolerance = Toleranz
sheet-field-head = Kopf
sheet-field-shaft = Schaft
sheet-field-grip = Griff
sheet-field-ferrule = Ferrule
sheet-field-grip-label = Griffaufdruck
sheet-field-adapter-setting = Adaptereinstellung
sheet-adapter = Adapter { $setting }
sheet-field-shaft-label = Schaftaufdruck
sheet-length = { $length_mm } { $to }
sheet-cpm = { CPM($cpm) }
sheet-grip-label = Griff { $way }
sheet-shaft-label = Schaft { $way }
sheet-tolerance = ±{ $swing_weight_points }, ±{ $length_mm }, Loft ±{ $loft_deg }, Lie ±{ $lie_deg }
sheet-wraps-base = { $base } Grundlage
sheet-wraps-full = { $base } Grundlage + { $full } volle Länge
sheet-wraps-lower = { $base } Grundlage + { $lower } untere Hand
sheet-wraps-all = { $base } Grundlage + { $full } volle Länge + { $lower } untere Hand
sheet-origins = Woher die Werte kommen
sheet-not-noted = nicht notiert

# What was found.
sheet-findings = Befunde
sheet-nothing-found = kein Befund
sheet-nothing-found-of = Das Blatt passt zu Modellen, Lager und den geprüften Regeln.
sheet-no-problems = Keine Fehler gefunden.
sheet-findings-of =
    { $severity ->
        [stop] Muss behoben werden ({ $n })
        [warn] Ansehen ({ $n })
       *[note] Hinweise ({ $n })
    }
sheet-finding = { CAPITAL($what) }. { $next }.
sheet-finding-of-sheet = Blatt
sheet-finding-of-club = { $club }: { $what }
sheet-finding-by-clause = { $what } ({ $clause })
sheet-finding-line = { $severity }: { $what }. { $next }
sheet-findings-stop =
    { $n ->
        [one] 1 Befund muss behoben werden, bevor dieses Blatt gebaut werden kann
       *[other] { $n } Befunde müssen behoben werden, bevor dieses Blatt gebaut werden kann
    }
sheet-job-made = Auftrag { $job } ist angelegt: { $n } Schläger. Planen mit: setwright plan { $job }

# The reference club.
sheet-reference-club = Referenzschläger: { $club }
sheet-reference-mass = Gesamtmasse
sheet-reference-balance = Balancepunkt von der Griffkappe
sheet-reference-clamp = Einspannlänge
sheet-reference-scale = Waage
sheet-reference-cap = Griffkappe
sheet-reference-coupler-mass = Kupplung
sheet-reference-read-on = gemessen am
sheet-reference-known-to = wahres Schwunggewicht
sheet-reference-once-more = { CAPITAL($last) }. Den Schläger auf der eigenen Waage noch einmal messen, am Tag der ersten eigenen Messung: was das bringt, steht an der Werkbank.
sheet-reference-within = bekannt auf ± { PLAIN($sd_points, digits: 2) } Punkte
sheet-reference-also-read = noch einmal gemessen
sheet-reference-again =
    { $read_on ->
        [none]
            { $scale ->
                [none] { LETTER($swing_weight_points) }, Waage und Tag nicht notiert
               *[other] { LETTER($swing_weight_points) } auf der Waage „{ $scale }“, Tag nicht notiert
            }
       *[other]
            { $scale ->
                [none] { LETTER($swing_weight_points) } am { $read_on }, Waage nicht notiert
               *[other] { LETTER($swing_weight_points) } am { $read_on } auf der Waage „{ $scale }“
            }
    }

# A sheet as a file.
sheet-load-title = Blatt laden
sheet-load = Das Blatt laden
sheet-back = Zurück zu den Blättern
sheet-file = Datei
sheet-file-hint = Ein Blatt, das hier als Datei gespeichert wurde oder das ein anderes Programm in derselben Form geschrieben hat
sheet-file-text = Oder der Text
sheet-file-text-hint = Das ganze Dokument einfügen
sheet-file-schema = Die Form der Datei (JSON, mit einem Schema, gegen das Programme prüfen können): <a>Schema des Blatts</a>.
sheet-file-refused = Das Blatt war nicht lesbar.
sheet-file-refused-next = Nichts wurde gespeichert; die Stelle steht unter dem Text.
sheet-file-missing = Weder Datei noch Text. Eine Datei wählen oder das Blatt einfügen
sheet-file-line =
    { $line ->
        [none] Zeile { $n }: { $what }. Berichtigen, dann noch einmal laden.
       *[other] Zeile { $n }: { $what }. Dort steht „{ $line }“. Berichtigen, dann noch einmal laden.
    }

# Whose a sheet is.
sheet-of-customer = Gehört <a>{ $name }</a>, { $code }
sheet-of-deleted = Gehörte { $code }, auf Verlangen gelöscht
sheet-of-nobody = Gehört keinem Kunden
sheet-of-another = Jemand anderes mit diesem Namen
