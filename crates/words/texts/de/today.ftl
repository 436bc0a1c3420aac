### Today: what to do now

today-title = Heute
today-jobs-earliest-first =
    { $n ->
        [one] 1 Auftrag
       *[other] { $n } Aufträge, der früheste Termin zuerst
    }

# Jobs.
today-jobs = Aufträge
today-jobs-under-way = Laufende Aufträge
today-no-job = Kein Auftrag läuft.
today-no-job-next = Geben Sie ein Fittingblatt frei: Sein Auftrag steht dann hier.
today-new-sheet = Neues Blatt
today-job = Auftrag
today-do-next = als Nächstes
today-due = fällig
today-clubs = Schläger
today-job-number = Auftrag { $job }
today-job-of = Auftrag { $job } · { $player }
today-step-clubs = { $step }: { $n } Schläger
# The clubs of a step whose joint is not strong enough yet.
today-cures-today =
    { $n ->
        [one] { $n } Schläger härtet bis { CLOCK($until_at) } aus
       *[other] { $n } Schläger härten bis { CLOCK($until_at) } aus
    }
today-cures-tomorrow =
    { $n ->
        [one] { $n } Schläger härtet bis morgen { CLOCK($until_at) } aus
       *[other] { $n } Schläger härten bis morgen { CLOCK($until_at) } aus
    }
today-cures-later =
    { $n ->
        [one] { $n } Schläger härtet bis { DAY($until_at) }, { CLOCK($until_at) } aus
       *[other] { $n } Schläger härten bis { DAY($until_at) }, { CLOCK($until_at) } aus
    }
today-hand-over = übergeben
today-choose-parts = Teile wählen

# A date that is near or past.
today-days-late =
    { $days ->
        [one] { $days } Tag überfällig
       *[other] { $days } Tage überfällig
    }
today-due-today = heute
today-due-in =
    { $days ->
        [one] in { $days } Tag
       *[other] in { $days } Tagen
    }

# Where to start, and what is to be seen to.
today-start = Hier anfangen
today-start-doubt = Auftrag { $job }, Schläger { $club }: noch einmal nachsehen
today-start-step = Auftrag { $job }: { $step }, { $n } Schläger
today-start-plan = Auftrag { $job }: Teile wählen
today-start-scale = Waage prüfen: { $scale }
today-start-cures = Auftrag { $job }: { $cures }.
today-start-nothing = Sonst wartet solange nichts auf Sie.
today-see-to =
    { $n ->
        [one] 1 Sache zu erledigen
       *[other] { $n } Sachen zu erledigen
    }

# Doubted readings.
today-look-again = Noch einmal nachsehen
today-doubted = angezweifelt
today-club-of-job = Auftrag { $job }, Schläger { $club }

# Scales.
today-scales = Waagen
today-all-scales = Alle Waagen
today-not-trusted = nicht vertrauenswürdig
today-not-checked = nicht geprüft
today-scale-read = { CAPITAL($scale) }: heute benutzt und nicht geprüft
today-scale-due = { CAPITAL($scale) }: vor dem ersten Messwert prüfen
today-check-scale = Prüfen

# Batches that cure.
today-curing = Härtet aus
today-all-batches = Alle Ansätze
today-batches = Ansätze, die aushärten
today-batch = Ansatz
today-batch-of = { $batch } · { $adhesive }
today-pot-life = Topfzeit
today-handle = handfest
today-swing = biegen und schwingen
today-now = jetzt

# The clock.
today-clock = Uhr
today-clock-not-relied-on = gilt nicht
today-clock-right = Die Uhr stimmt
today-clock-how = Wie haben Sie das geprüft? Es bleibt im Protokoll.
today-clock-rely = Die Uhr gelten lassen

# The way from an empty shop to the first club.
today-guide = Bis zum ersten Schläger
today-guide-done = fertig
today-guide-models = Modelle
today-guide-models-how = Kopf, Schaft, Griff, Kleber und Band: übliche Werte für den Anfang oder die der Hersteller
today-guide-told = Was Sie wissen
today-guide-told-how = Was eine Klebestelle, ein Griff, eine Lage Band und eine Ferrule in Ihrer Werkstatt am Schwunggewicht ausmachen; ohne Zahlen überspringen
today-guide-parts = Teile
today-guide-parts-how = Die Teile aus dem Regal einwiegen oder eine Liste einlesen
today-guide-sheet = Blatt
today-guide-sheet-how = Was der Spieler bekommt; ein Kurzblatt genügt
today-guide-approve = Freigeben
today-guide-approve-how = Aus dem Blatt wird ein Auftrag
today-guide-plan = Plan
today-guide-plan-how = Welches Teil in welchen Schläger kommt; die Teile reservieren
today-guide-bench = Werkbank
today-guide-bench-how = Den ersten Messwert nehmen
today-guide-ends = Mit dem ersten Messwert verschwindet diese Anleitung. Der Name dessen, der an diesem Tablet arbeitet, und die Waagen stehen unter <a>Werkstatt</a>.

# A field for a hand scanner or a code typed by hand.
today-scan = Einen Code scannen oder einen Namen, Auftrag, eine Charge oder Bestellung eintippen
today-scan-example = Scannen, oder Name, job 1, ein Code
today-scan-open = Öffnen
