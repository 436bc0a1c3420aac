### Planner: why these parts, what is missing, what would do in its place

# What the planner refuses.
planner-refused-no-clubs = kein Schläger zu planen
    .next = Mindestens einen Schläger angeben
planner-refused-not-finite = Schläger { $club }: { $what } ist { FIGURE($value) }, keine endliche Zahl
    .next = Den Messwert berichtigen oder das Teil weglassen
planner-refused-out-of-range = { $what } ist { $value }, muss aber zwischen { $low } und { $high } liegen
    .next = Zahl und Einheit prüfen
planner-refused-unknown-part = Schläger { $club } nennt { $kind } { $part }, im Lager stehen aber nur { $n }
    .next = Das Teil zuerst ins Lager aufnehmen
planner-refused-listed-twice = Schläger { $club } nennt { $kind } { $part } doppelt
    .next = Nur eine Nennung behalten
planner-refused-plan-shape = die Anzahl der Schläger stimmt nicht überein: im Plan { $got }, in der Anfrage { $expected }
    .next = Den Plan zu diesen Schlägern angeben
planner-refused-cost-row = die Kostenzeilen sind verschieden lang: Einträge in Zeile { $row }: { $got }, in der ersten: { $expected }
    .next = Für jede Spalte einen Kostenwert angeben
planner-refused-cost-value = die Kosten in Zeile { $row }, Spalte { $column } sind { FIGURE($value) }
    .next = Eine Zahl angeben oder infinity für ein unzulässiges Paar
planner-refused-check-failed = der Plan hat seine Prüfung nicht bestanden: { $log }

planner-asked-base-deviation = Grundabweichung
planner-asked-cap-of-tip-weight = Obergrenze des Tip-Gewichts
planner-asked-contribution-of-part = Beitrag eines Teils
planner-asked-contribution-of-tip-weight = Beitrag eines Tip-Gewichts
planner-asked-cost-of-unbuilt-club = Kosten eines nicht gebauten Schlägers
planner-asked-extra-cost-of-part = Mehrkosten eines Teils
planner-asked-loss-of-pair-of-tip-weights = Verlust durch ein Paar Tip-Gewichte
planner-asked-mass-of-part = Masse eines Teils
planner-asked-mass-of-tip-weight = Masse eines Tip-Gewichts
planner-asked-mass-of-parts-not-chosen = Masse der nicht gewählten Teile
planner-asked-nominal-shaft-mass = Nennmasse des Schafts
planner-asked-points-per-gram-of-head = Punkte je Gramm Kopf
planner-asked-priority-of-job = Vorrang eines Auftrags
planner-asked-quantum-of-cost = Kostenschritt
planner-asked-target-mass = Zielmasse
planner-asked-weight-of-loss = Gewichtung des Verlusts
planner-asked-zero-of-head-scale = Nullpunkt der Kopfskala
planner-asked-weight-of-gram-of-tip-weight = Gewichtung eines Gramms Tip-Gewicht
planner-asked-weight-of-second-tip-weight = Gewichtung eines zweiten Tip-Gewichts
planner-asked-weight-of-gram-of-shaft-range = Gewichtung eines Gramms Spannweite der Schäfte
planner-asked-weight-of-gram-of-whole-mass = Gewichtung eines Gramms Gesamtmasse
planner-asked-standard-deviation-of-finish = Standardabweichung der Endmessung
planner-asked-tolerance = Toleranz
planner-asked-standard-deviation-of-what-reading-tells = Standardabweichung dessen, was der Messwert verrät
planner-asked-standard-deviation-of-what-stays-unknown = Standardabweichung dessen, was unbekannt bleibt
planner-asked-spread-of-spare-grips = Streuung der Ersatzgriffe
planner-asked-number-of-spare-grips = Anzahl der Ersatzgriffe

# What is refused of a search for a plan.
search-fault-seconds = eine Suche von { FIGURE($value) } s ist nicht möglich
    .next = 0 bis { FIGURE($most) } s angeben; ein erster Plan steht sofort
search-fault-seed = { $seed } ist zu groß als Startwert
    .next = Eine ganze Zahl von 0 bis { $most } angeben
search-fault-changed = seit diesem Planvorschlag haben sich Lager oder Messwerte geändert
    .next = Den neuen Plan ansehen, dann annehmen

# Why a club gets its parts.
planner-reason-head-under = Kopf { $head } ist { $by_g } leichter als das Sollgewicht seiner Nummer, { $nominal_g }.
planner-reason-head-over = Kopf { $head } ist { $by_g } schwerer als das Sollgewicht seiner Nummer, { $nominal_g }.
planner-reason-last-head = Kein anderer Kopf dieser Nummer liegt innerhalb von { MASS($within_g, digits: 0) }: Er ist der letzte seiner Art.
planner-reason-in-tip = Mit { $tip_g } im Tip liegt er { POINTS($off_points, digits: 2) } neben dem Ziel.
planner-reason-no-tip = Kein Gewicht im Tip: { POINTS($off_points, digits: 2) } neben dem Ziel.
planner-reason-screw = Der Kopf bekommt Schraube { $screw }: { MASS($more_g, signed: 1) } gegenüber der mitgelieferten.
planner-reason-club-under = Der ganze Schläger kommt auf { $total_g }, { $by_g } weniger als auf dem Blatt.
planner-reason-club-over = Der ganze Schläger kommt auf { $total_g }, { $by_g } mehr als auf dem Blatt.
planner-reason-shaft-under = Sein Schaft liegt { $by_g } unter der Linie des Modells.
planner-reason-shaft-over = Sein Schaft liegt { $by_g } über der Linie des Modells.
planner-reason-neighbour-blank = Der Rohschaft ist eigentlich für Nummer { club-number }: vor dem Ablängen den Grund angeben.
planner-reason-grip-under = Sein Griff ist { $by_g } leichter als sein Modell: Damit ließe sich ein anderer Schläger ausgleichen.
planner-reason-grip-over = Sein Griff ist { $by_g } schwerer als sein Modell: Damit ließe sich ein anderer Schläger ausgleichen.
planner-reason-adapter-under = Adapter { $adapter } ist { $by_g } leichter als sein Modell, { $nominal_g }.
planner-reason-adapter-over = Adapter { $adapter } ist { $by_g } schwerer als sein Modell, { $nominal_g }.
planner-reason-lie-beyond-limit = Für den Lie muss um { ANGLE($bend_deg, signed: 1) } gebogen werden; der Hersteller erlaubt { $limit_deg }.

# What a club lacks, and what to order.
planner-lack-ferrule = Von diesem Modell ist keine Ferrule frei; der Plan geht ohne weiter.
planner-lack-no-head =
    Kein freier, eingewogener Kopf { $head } { club-number }{ $from_g ->
        [none] {""}
       *[other] . Einen mit { PLAIN($from_g) } bis { $to_g } bestellen
    }.
planner-lack-no-shaft = Kein freier, eingewogener Schaft { $shaft } passt: Nach der Tip-Kürzung müssen { $needed_mm } bleiben, und er muss in die Bohrung gehen.
planner-lack-no-grip = Von diesem Modell ist kein Griff frei.
planner-lack-no-adapter = { $head } braucht einen Adapter, und kein freier passt: einen bestellen.
planner-lack-short =
    Die nächstbeste Auswahl bleibt { $by_points } unter { LETTER($target_points) }{ $from_g ->
        [none] {""}
       *[other] . Einen Kopf mit { PLAIN($from_g) } bis { $to_g } bestellen
    }.
planner-lack-over =
    Die nächstbeste Auswahl bleibt { $by_points } über { LETTER($target_points) }{ $from_g ->
        [none] {""}
       *[other] . Einen Kopf mit { PLAIN($from_g) } bis { $to_g } bestellen
    }.
planner-lack-locked-twice = { $kind }: auf zwei Schläger festgelegt. Eine Festlegung aufheben.
planner-lack-last-head-taken =
    Den letzten passenden Kopf bekommen andere Schläger{ $from_g ->
        [none] {""}
       *[other] . Einen mit { PLAIN($from_g) } bis { $to_g } bestellen
    }.
planner-lack-last-shaft-taken = Den letzten passenden Schaft bekommen andere Schläger: einen nachbestellen.
planner-lack-last-adapter-taken = Den letzten passenden Adapter bekommen andere Schläger: einen nachbestellen.
planner-lack-last-grip-taken = Den letzten Griff bekommen andere Schläger: einen nachbestellen.

# What would do in the place of a part that is missing.
planner-instead-with-tip = { $part } ({ $why }): mit { MASS($tip_g, digits: 0) } im Tip etwa { $off_points } daneben.
planner-instead-without-tip = { $part } ({ $why }): ohne Tip-Gewicht etwa { $off_points } daneben.
planner-instead-why-taken =
    vergeben: { $club }{ $job ->
        [none] {""}
       *[other] {", "}Auftrag { $job }
    }
planner-instead-why-held = reserviert: Nummer { club-number } in Auftrag { $job }
planner-instead-why-stronger = Kopf Nummer { club-number }, { $by_deg } weniger Loft
planner-instead-why-weaker = Kopf Nummer { club-number }, { $by_deg } mehr Loft
planner-instead-why-other-head = Kopf { $head } { club-number }
planner-instead-why-other-blank = Rohschaft für Nummer { club-number }
planner-instead-why-other-shaft = { $shaft }, fühlt sich anders an
planner-instead-why-other-grip = { $grip }

# What changes when a job is planned again.
planner-change-lighter =
    { $club }: { $to ->
        [none] ohne { $kind }
       *[other] { $to }
    }{ $from ->
        [none] {", "}bisher ohne { $kind }
       *[other] {", "}bisher { $from }
    } ({ $by_g } leichter{ $line ->
        [none] {""}
       *[other] , { $line }
    }), { $chance }.
planner-change-heavier =
    { $club }: { $to ->
        [none] ohne { $kind }
       *[other] { $to }
    }{ $from ->
        [none] {", "}bisher ohne { $kind }
       *[other] {", "}bisher { $from }
    } ({ $by_g } schwerer{ $line ->
        [none] {""}
       *[other] , { $line }
    }), { $chance }.
planner-line-change-moved = { $now_cpm } neben seiner Linie, vorher { PLAIN($was_cpm) }
planner-line-change-found = { $now_cpm } neben seiner Linie
planner-line-change-lost = Frequenz nicht bekannt, vorher { $was_cpm } neben seiner Linie

# The frequency line of a blank, and how a shaft lies against it.
planner-line-line =
    { $shaft }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }: Seine Linie liegt bei { $line_cpm }, gemessen sind { $measured }.
planner-line-too-few =
    { $shaft }{ $number ->
        [none] {""}
       *[other] {" "}{ club-number }
    }: { $measured } gemessen, für eine Linie nötig sind { $needed }; seine Frequenz zählt noch nicht.
planner-shaft-not-measured = Die Frequenz seines Schafts ist nicht gemessen; andere vom selben Rohschaft liegen etwa { $usual_cpm } neben ihrer Linie.
planner-shaft-on-line = Sein Schaft liegt auf seiner Frequenzlinie, { $line_cpm }.
planner-shaft-stiffer =
    Sein Schaft ist { $by_cpm } steifer als seine Linie, { $line_cpm }{ $in_club_cpm ->
        [none] {""}
       *[other] , { $in_club_cpm } im Schläger
    }.
planner-shaft-softer =
    Sein Schaft ist { $by_cpm } weicher als seine Linie, { $line_cpm }{ $in_club_cpm ->
        [none] {""}
       *[other] , { $in_club_cpm } im Schläger
    }.

# What planning jobs together brings over planning one after the other.
planner-brings-nothing = Gemeinsam geplant gelingen diese Aufträge nicht besser als nacheinander, der früheste Termin zuerst.
planner-brings-built =
    Gemeinsam geplant { $clubs ->
        [one] lässt sich ein Schläger mehr bauen
       *[other] lassen sich { $clubs } Schläger mehr bauen
    } als bei einem Auftrag nach dem anderen.
planner-brings-better = Gemeinsam geplant gelingen diese Aufträge besser als nacheinander: { PLAIN($more_inside, digits: 1, signed: 1) } Schläger in der Toleranz, { MASS($more_tip_g, digits: 0, signed: 1) } in den Tips.

# How a job stands against the day that it is due.
planner-due-here = alle Schläger lassen sich aus dem bauen, was da ist
planner-due-waits = vollständig am { WEEKDAY($complete_on) }, { DAY($complete_on) }, rechtzeitig
planner-due-late = vollständig am { WEEKDAY($complete_on) }, { DAY($complete_on) }, zu spät für den Termin
planner-due-no-day = wartet auf Teile, für die niemand einen Tag genannt hat
planner-due-order = braucht Teile, die nicht bestellt sind; sie müssen bis { WEEKDAY($by_on) }, { DAY($by_on) } da sein
planner-due-order-late = braucht Teile, die nicht bestellt sind, und hätte sie seit { DAY($by_on) } haben sollen
planner-due-cannot = lässt sich mit diesen Modellen nicht bauen: Näheres steht im Plan

# Parts of which there are fewer than the jobs want, and whom they go to.
planner-too-few-parts = { $parts } gebraucht, { $n } da
planner-goes-here = Auftrag { $job }, fällig { DAY($due_on) }, bekommt { $n } aus dem Lager
planner-goes-waits = Auftrag { $job }, fällig { DAY($due_on) }, wartet auf { $n } aus Bestellung { $order }, { $expected }
planner-goes-order = Auftrag { $job }, fällig { DAY($due_on) }: { $n } zu bestellen, müssen bis { DAY($by_on) } da sein

# What to order.
planner-to-order-heads = { $parts } mit { PLAIN($from_g) } bis { $to_g }, bis { WEEKDAY($by_on) }, { DAY($by_on) }, für Auftrag { $jobs }
planner-to-order-parts = { $parts }, bis { WEEKDAY($by_on) }, { DAY($by_on) }, für Auftrag { $jobs }
