### Command: what the program prints at a terminal

# What is refused of loading the invented shop.
demo-fault-another-shop = { $place } enthält eine andere Werkstatt, nicht die Beispielwerkstatt; nichts wurde geändert
    .next = --database weglassen: Die Beispielwerkstatt hat ihre eigene Datenbank

# What sort of failure, in a few words.
failure-title-check = Angaben prüfen
failure-title-not-found = Nicht gefunden
failure-title-conflict = Konflikt
failure-title-internal = Interner Fehler
failure-title-outside = Nicht möglich

# What the command line itself refuses.
command-fault-file = { $path } ist nicht brauchbar: { $log }
    .next = Pfad und Zugriffsrechte prüfen
command-fault-arguments = { $text }
command-fault-demo-is-at = Die Beispielwerkstatt von `setwright demo` liegt in { $place }
command-fault-former-shop = in diesem Ordner liegt { $file }, die Werkstatt einer früheren Version; diese benutzte den Ordner, in dem sie gestartet wurde
    .next = Die Datei nach { $place } verschieben oder mit --database sqlite:{ $file } angeben; nichts wurde geändert
command-fault-config = { $path }: { $log }
command-fault-no-home = dieser Benutzer hat keinen eigenen Ordner für eine Werkstatt
    .next = Die Datenbank mit --database angeben
command-fault-machine-name = „{ $name }“ ist kein Rechnername
    .next = Ohne http:// und ohne Port angeben: bench.local
command-fault-questioned = { $what }
    .next =
        { $next ->
            [none] Berichtigen oder mit --sure behalten
           *[other] { $next } – oder mit --sure behalten
        }
command-fault-check-question = { $what }
    .next = { $next } Soll es so bleiben: --as-it-is
command-fault-not-a-date = „{ $text }“ ist kein Datum
    .next = So schreiben: 2026-03-10
command-fault-not-a-size = „{ $text }“ ist keine Größe eines Etiketts
    .next = Breite und Höhe schreiben: { $example }
command-fault-not-job-count = „{ $text }“ ist nicht JOB:COUNT
    .next = Zum Beispiel --for 3:2
command-fault-not-slot-code = „{ $text }“ ist nicht SLOT:CODE
    .next = Zum Beispiel --keep 3:H-0412
command-fault-not-a-pick = „{ $text }“ ist nicht SLOT:KIND:CODE
    .next = Zum Beispiel --pick 3:tip_weight:TRAY-4 oder --pick 3:grip:OL-0412
command-fault-not-prices = { $path } ist kein solches Dokument: { $what }
    .next = Die Datei berichtigen; „setwright prices“ und „setwright quote … --json“ zeigen, wie eine aussieht
command-fault-not-a-sheet = { $path } ist keine Blattdatei: { $what }
    .next = Ihre Form zeigt: setwright sheet schema
command-fault-sheet-stops =
    { $n ->
        [one] ein Befund muss behoben werden, bevor dieses Blatt gebaut werden kann
       *[other] { $n } Befunde müssen behoben werden, bevor dieses Blatt gebaut werden kann
    }
command-fault-not-a-parity = „{ $text }“ ist keine Parität
    .next = Möglich sind none, even oder odd
command-fault-port-never-opened = der Anschluss ließ sich nicht öffnen: { $log }
command-fault-rows-refused =
    { $n ->
        [one] eine Zeile wurde abgelehnt; die anderen sind gespeichert
       *[other] { $n } Zeilen wurden abgelehnt; die anderen sind gespeichert
    }
    .next = Die abgelehnten Zeilen berichtigen und noch einmal einlesen
command-fault-not-utf8 = die Datei ist kein Text in UTF-8
command-fault-no-equal-sign = in { $option } „{ $text }“ fehlt das „=“
    .next = Zum Beispiel { $option } { $example }
command-fault-option-twice = { $option } nennt „{ $name }“ zweimal
    .next = Nur einmal angeben
command-fault-say-replace = nichts wurde geändert
    .next = Soll die Sicherung an die Stelle der Werkstatt treten: setwright restore { $backup } --replace
command-fault-shop-damaged = { $path } ist beschädigt: { $log }
    .next = Nichts mehr eingeben; die letzte Sicherung zurückspielen: setwright restore FILE
command-fault-no-codes = keine Codes angegeben
    .next = So schreiben: --codes H7-014,H7-015
command-fault-unwritable = die Antwort ließ sich nicht auf die Standardausgabe schreiben: { $log }
command-fault-answer-unwritable = die Antwort ließ sich nicht schreiben: { $log }
command-fault-listen-taken = { $place } lässt sich nicht belegen: { $log }
    .next = Beenden, was dort schon läuft, oder mit --listen eine andere Adresse wählen
command-fault-listen-unknown = { $place } lässt sich nicht belegen: { $log }
    .next = Mit --listen Adresse und Port angeben, zum Beispiel 127.0.0.1:7340
command-fault-open-to-network = { $place } ist vom Netz aus erreichbar
    .next = Sollen Tablets an die Werkstatt, --open-to-network dazuschreiben: Jedes braucht dann einen Zugang. Sonst --listen weglassen
command-fault-half-a-certificate = ein Zertifikat braucht seinen Schlüssel und ein Schlüssel sein Zertifikat
    .next = Beide angeben, certificate und certificate_key, oder keines
command-fault-no-address = keine Adresse: { $log }
command-fault-serving-ended = der Server hat aufgehört: { $log }
command-fault-threads = das Programm konnte seine Threads nicht starten: { $log }
command-fault-no-recording = { $topic } nimmt keine Aufnahme: Das tut nur pluck
command-fault-input = die Standardeingabe ließ sich nicht lesen: { $log }
command-fault-input-not-json = auf der Standardeingabe steht kein JSON-Dokument: { $what }
    .next = Eines, das geht, zeigt: setwright calc { $topic } --example
command-fault-simulation = { $what }
command-fault-no-trouble = die Störung „{ $key }“ gibt es nicht
    .next = Bekannt sind { $known }
command-fault-not-in-list = „{ $key }“ steht nicht zur Wahl
    .next = Bekannt sind { $known }
command-fault-no-builder = kein Schlägerbauer heißt „{ $name }“
    .next = Bekannt sind { $known }
command-fault-no-deed = „{ $text }“ geht mit einem Teil nicht
    .next = Möglich sind reserve, return, use, scrap, restore, correct, pull oder miscut
command-fault-not-a-supply = „{ $text }“ ist nicht MODEL:NUMBER=MEAN,SCATTER
    .next = Zum Beispiel --supply WREN-I:7=267,1.5
command-fault-no-set = kein Blatt angegeben
    .next = Mit --set eine Blattdatei angeben
command-fault-not-a-weight = „{ $text }“ ist nicht NAME=VALUE
    .next = Zum Beispiel --weight cpm_per_tolerance=0.006
command-fault-not-a-lock = „{ $text }“ hält nichts fest
    .next = Platz und Code schreiben, zum Beispiel 3:H-0412

# Why a simulation could not be run.
simulation-setting = { $what }: { FIGURE($value) } geht nicht, erlaubt ist { FIGURE($low) } bis { FIGURE($high) }
    .next = Ändern und neu starten
simulation-advice = Auftrag { $job } der Werkstatt { $shop }, { $way }: { $what }. Das ist ein Fehler des Programms
    .next = Mit dem Startwert (seed) melden
simulation-kind = die Auftragsart „{ $kind }“ wird nicht simuliert
    .next = Möglich sind regrip, shorten, lengthen, rebalance, reshaft oder loose_head
no-finish-unplanned = der Schläger hat keinen Plan und deshalb keine Vorhersage
simulation-unplanned = Auftrag { $job } der Werkstatt { $shop }: keine Teile für Schläger { $club }. Das ist ein Fehler der Simulation
    .next = Bitte melden
setting-jobs = Anzahl der Aufträge
setting-known-after = Anzahl der Aufträge, nach denen eine Werkstatt bekannt ist
setting-blunders = Anteil der Schnitzer
setting-scatter = Faktor der Streuung

# `setwright record`.
command-record-job = Auftrag { $job }, { $player }, { $state }
command-record-due = { $shop }, { $hand }, fällig { $due_on }
command-record-club = { CAPITAL($club) }, Laufkarte { $card }: { $parts }
command-record-part = { $kind } { $code }
command-record-unplanned = noch nicht geplant
command-record-sheet = Blatt
command-record-built = gebaut
command-record-off-by = daneben um
command-none = -

# `setwright job`, `take-back`, `stand-by`, `pass`, `change`.
command-job-number = Auftrag
command-job-player = Spieler
command-job-due = fällig
command-job-state = Stand
command-job-clubs = Schläger
command-job-next = als Nächstes
command-job-slot = Platz
command-job-club = Schläger
command-job-reads = wird zeigen
command-job-finish = am Ende
command-job-last = letzter Messwert
command-job-reading = { $typed } ({ $step })
command-taken-back = Der Messwert von Schläger { $number } ist zurückgenommen.
command-stood-by = Der Messwert von Schläger { $number } gilt.
command-let-pass = Schläger { $number } darf weiter zum Schritt „{ $step }“.
command-fault-nothing-read = für den Schläger auf Platz { $slot } von Auftrag { $job } gilt kein Messwert
    .next = Den Auftrag ansehen: setwright job show { $job }

# A plan.
command-plan-column-club = Schläger
command-plan-column-head = Kopf
command-plan-column-shaft = Schaft
command-plan-column-grip = Griff
command-plan-column-adapter = Adapter
command-plan-column-screw = Schraube
command-plan-column-tip = Tip-Gewicht
command-plan-column-off-tip = am Tip ab
command-plan-column-off-butt = am Butt ab
command-plan-column-cut-to = abgelängt auf
command-plan-column-dry = gesteckt
command-plan-column-finish = am Ende
command-plan-column-sheet = Blatt
command-plan-missing = Für { club-number } fehlt: { $lack }
command-plan-frequency = { $club }: { $shaft }
command-plan-proven = Nach den genannten Kosten nachweislich der beste.
command-plan-best = Der beste bisher gefundene.
command-plan-held = Die Teile sind reserviert.
command-plan-choosing = Teile werden ausgesucht
command-lock-wrong = „{ $typed }“ ist nicht SLOT:CODE. Zum Beispiel --keep 3:H-0412

# Matching one sheet, or a day's jobs.
command-match-club =
    Kopf { $head ->
        [none] keiner
       *[other] { $head }
    }  Schaft { $shaft ->
        [none] keiner
       *[other] { $shaft }
    }  Griff { $grip ->
        [none] keiner
       *[other] { $grip }
    }{ $adapter ->
        [none] {""}
       *[other] {"  "}Adapter { $adapter }
    }{ $screw ->
        [none] {""}
       *[other] {"  "}Schraube { $screw }
    }  Tip { $tip_g }{ $off_cpm ->
        [none] {""}
       *[other] {"  "}{ CPM($off_cpm, signed: 1) }
    }  { $chance }
command-match-or = oder { $other }
command-match-job = Auftrag { $job }, { $player } (zählt { PLAIN($priority, digits: 2) })
command-match-options = Zur Wahl:
command-match-option-swing-weight =
    { $tip_g } in den Tips, schlechtester Schläger { POINTS($worst_points, digits: 2) } daneben{ $worst_cpm ->
        [none] {""}
       *[other] , Schäfte höchstens { $worst_cpm } daneben
    }
command-match-option-inertia =
    { $tip_g } in den Tips, schlechtester Schläger { POINTS($worst_points, digits: 2) } daneben{ $worst_cpm ->
        [none] {""}
       *[other] , Schäfte höchstens { $worst_cpm } daneben
    }, gleiches Trägheitsmoment
command-match-proven = Kosten { PLAIN($cost, digits: 4) }, nachgewiesen: Keine Auswahl aus diesen Teilen kostet weniger.
command-match-bound = Kosten { PLAIN($cost, digits: 4) }, nachweislich mindestens { PLAIN($bound, digits: 4) }: Höchstens { PERCENT($gap_share, digits: 1) } besser ist möglich.
command-match-together = zusammen: { PLAIN($inside, digits: 1) } Schläger in der Toleranz, { $unbuilt } nicht gebaut, { MASS($tip_g, digits: 0) } in den Tips
command-match-in-turn = nacheinander: { PLAIN($inside, digits: 1) } Schläger in der Toleranz, { $unbuilt } nicht gebaut, { MASS($tip_g, digits: 0) } in den Tips
command-match-due = Termine:
command-match-due-job = Auftrag { $job }, fällig { $due_on }: { $state }
command-match-watch = { PLAIN($seconds) } s: Kosten { PLAIN($cost, digits: 4) }, nachweislich mindestens { PLAIN($bound, digits: 4) }. Ctrl-C: genug

# What can be done about a club.
command-advise-club = Schläger { $slot }: nach Plan { $chance }.
command-advise-no-plan = Schläger { $slot } hat noch keinen Plan. Annehmen mit `setwright plan { $job } --accept`.
command-advise-grip = Griff { $code } ({ $grip_g }) für Schläger { $slot }.

# Orders and needs.
command-order-day = „{ $typed }“ ist kein Datum. So schreiben: 2026-03-10
command-order-for = „{ $typed }“ ist nicht JOB:COUNT. Zum Beispiel --for 3:2
command-order-here = { $received } von { $count }
command-order-column-order = Bestellung
command-order-column-what = was
command-order-column-here = da
command-order-column-masses = Massen
command-order-column-job = für Auftrag
command-order-column-supplier = bei
command-order-column-expected = erwartet
command-order-column-state = { "" }
command-order-lacks-nothing = Auftrag { $job } fehlt nichts.
command-order-wanted =
    { $n } × { $kind } { $model }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }{ $masses ->
        [none] {""}
       *[other] , { $masses }
    }; bestellt: { $ordered }
command-order-weigh-in = Einwiegen: { $n } × { $model }.
command-need-to-order = zu bestellen

# Parts sorted by weight; heads to order by weight.
command-sort-sum = Teile: { $n }, Mittelwert { $mean_g }, Streuung { MASS($scatter_g, digits: 2) }
command-sort-not-weighed = Nicht gewogen: { $codes }
command-ask-share = { PERCENT($inside_share, digits: 1) }
command-ask-column-head = Kopf
command-ask-column-swing-weight = Schwunggewicht
command-ask-column-masses = Kopfmasse
command-ask-column-supply = Lieferung
command-ask-column-inside = brauchbar
command-ask-column-any-shaft = mit jedem Schaft
command-ask-column-order = bestellen für einen

# What is said when the bench is open.
command-shop-made = Eine neue Werkstatt wurde angelegt: { $place }
command-greeting = Setwright läuft unter http://{ $address } mit { $database }. Ctrl-C beendet es.
command-demo-greeting =
    Die Beispielwerkstatt Quillmere Bench ist geladen: Lager gewogen, ein Satz an der Werkbank, einer zu planen.
    Setwright läuft unter http://{ $address }

    Zum Probieren: http://{ $address }/bench/1/1?step=dry öffnen, für Eisen 4 D9.7 eintippen und Enter drücken.
    Danach Kleben, Neuer Ansatz. Ctrl-C beendet; was eingegeben ist, bleibt. Für andere Befehle zu dieser Werkstatt:
    --database { $database }
command-demo-as-left =
    Die Beispielwerkstatt ist so, wie Sie sie verlassen haben; `setwright demo --reset` beginnt sie neu.
    Setwright läuft unter http://{ $address } mit { $database }. Ctrl-C beendet es.
command-open-to-network = Tablets im Netz erreichen diese Werkstatt und brauchen einen Zugang: setwright key tablet NAME zeigt sechs Ziffern. Was sie senden und sehen, ist nicht verschlüsselt: Nehmen Sie ein eigenes Netz der Werkstatt, nicht das für Gäste.
command-encrypted = Tablets im Netz erreichen diese Werkstatt verschlüsselt unter { $address } und brauchen einen Schlüssel. Wie ein Tablet ihr vertraut, zeigt setwright reach.

# Clubs, kinds of job, readings.
command-fault-none-of = „{ $text }“ geht nicht. Möglich sind { $known }
command-fault-not-a-document = { $path }: { $log }
command-club-job = Auftrag { $job } mit { $n ->
    [one] { $n } Schläger
   *[other] { $n } Schlägern
} ist an der Werkbank.
command-kind-kept = Gespeichert: { $name }.
command-kind-removed = Entfernt: { $name }.

# The settings of the server, and what helps to find a fault.
config-from-command-line = von der Kommandozeile
config-from-environment = aus der Umgebung
config-from-file = aus der Konfigurationsdatei
config-from-usual = wie üblich
config-how = { $option } oder { $environment } in der Umgebung
support-written = Geschrieben: { $path }. Namen stehen nicht darin; sehen Sie es trotzdem durch, bevor Sie es weitergeben.
