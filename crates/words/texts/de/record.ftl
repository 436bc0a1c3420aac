### Record: what was built, against the sheet and the reference club

record-title = Akte
record-titles = Akten
record-crumb = Auftrag { $job } · { $player } · { $state }
record-job-of = Auftrag { $job } · { $player }

# The list of records.
record-learned = Was die Werkstatt gelernt hat
record-none = Noch keine Akten.
record-none-next = Eine Akte wächst mit den Messwerten eines Auftrags.
record-finished = Fertig
record-finished-jobs = Fertige Aufträge
record-earlier = Frühere
record-at-bench = An der Werkbank, bis jetzt
record-at-bench-jobs = Aufträge an der Werkbank
record-head-job = Auftrag
record-head-clubs = Schläger
record-head-finished = fertig
record-head-due = fällig

# The set.
record-as-file = Akte als Datei
record-shop = Werkstatt
record-player = Spieler
record-player-hand = { $player }, { $hand }
record-due = fällig
record-set = Satz
record-made-by = gebaut von
record-last-reading = letzter Messwert
record-reference = Referenzschläger
record-reference-read-on = Waage: { $scale }
record-adhesive = Kleber
record-batch = Ansatz { $batch }, { $adhesive }, Charge { $lot }, angemischt { $mixed_at } von { $by }
record-batch-cold = bei { PLAIN($room_c, digits: 0) } °C angemischt, kälter als auf dem Herstellerblatt: { $reason }
record-batch-taken-back = zurückgenommen: { $reason }
record-more = { $a }; { $b }

# A club: what the sheet asks and what was built.
record-club = { CAPITAL($club) }
record-card = Laufkarte { $card }
record-club-lines = { $club }: verlangt und gebaut
record-value = Wert
record-sheet = Blatt
record-built = gebaut
record-verdict = Urteil
record-off-by = daneben um
record-tolerance = Toleranz
record-chance = Chance
record-within-set = { $what }, innerhalb des Satzes
record-not-read = nicht gemessen
record-chance-over = > 99,9 %
record-chance-under = < 0,1 %
record-chance-share = { PERCENT($of_share, digits: 1) }
record-chance-whole = { PERCENT($of_share) }
record-plus-minus = ± { $figure }

# How far inside the tolerance a swing weight is called in; on the screen, not on paper.
record-called-in = Gilt als in der Toleranz bis { POINTS($within_points, digits: 2) } neben dem Ziel.
record-never-in = Nicht sicher genug für „in der Toleranz“. Neu auflegen und noch einmal messen oder die Waage prüfen.
verdict-reach-again =
    { $n ->
        [one] zu knapp für ein Urteil: den Schläger neu auflegen und das Schwunggewicht noch einmal messen
       *[other] zu knapp für ein Urteil: den Schläger neu auflegen und das Schwunggewicht noch { $n }-mal messen
    }
verdict-reach-check-weight =
    { $n ->
        [one] zu knapp für ein Urteil: das Prüfgewicht einmal auf dieser Waage messen, das klärt es
       *[other] zu knapp für ein Urteil: das Prüfgewicht { $n }-mal auf dieser Waage messen, das klärt es
    }
verdict-reach-reference =
    { $n ->
        [one] zu knapp für ein Urteil: den Referenzschläger einmal auf dieser Waage messen, das klärt es
       *[other] zu knapp für ein Urteil: den Referenzschläger { $n }-mal auf dieser Waage messen, das klärt es
    }
verdict-reach-too-near = { $inside_points } innerhalb der Toleranzgrenze: so nah, dass kein Messwert ein Urteil erlaubt
verdict-reach-never = die Messwerte der Werkstatt sind für ein Urteil bei dieser Toleranz nicht sicher genug: ein Prüfgewicht messen oder eine weitere Toleranz vereinbaren

# Its parts.
record-parts = Teile: { $parts }.
record-part-name = { $kind } { $name }
record-part = { $name } ({ $code }), { $mass_g }
record-part-lot = { $name } ({ $code }), { $mass_g }, Charge { $lot }
record-part-came = { $kind } wie mitgebracht, { $mass_g }
record-part-came-unweighed = { $kind } wie mitgebracht, nicht gewogen
record-lengths-built = Länge { LENGTH($to_cap_mm, digits: 2) } bis zur Griffkappe, { LENGTH($to_shaft_end_mm, digits: 2) } bis zum Schaftende, { LENGTH($by_rules_mm, digits: 2) } nach den Regeln gemessen. Die Länge auf dem Blatt gilt { $sheet_to }.
record-lengths-asked = Länge wie verlangt, nicht gemessen: { LENGTH($to_cap_mm, digits: 2) } bis zur Griffkappe, { LENGTH($to_shaft_end_mm, digits: 2) } bis zum Schaftende, { LENGTH($by_rules_mm, digits: 2) } nach den Regeln gemessen. Die Länge auf dem Blatt gilt { $sheet_to }.
record-cut = Schaft auf { $cut_mm } abgelängt.
record-glued =
    { $n ->
        [one] Geklebt mit Ansatz { $batches }.
       *[other] Geklebt mit den Ansätzen { $batches }.
    }

# Where somebody went on before the cure, or with something open.
record-override-tag = übergangen
record-override-batch = Aushärtung von Ansatz { $batch } übergangen, { $strength }: { $reason } ({ $by }, { $at_at })
record-override = Übergangen bei „{ $step }“: { $reason } ({ $by }, { $at_at })
record-open-tag = noch etwas offen
record-open = „{ $step }“ trotz offener Punkte ({ $points }): { $reason } ({ $by }, { $at_at })

record-margins = Abstand zu den Grenzen der Ausrüstungsregeln
record-margins-means = Nur gemessene Abstände. Ob ein Schläger zulässig ist, entscheiden die Regelgeber.

# All readings of a club.
record-readings = Alle Messwerte
record-reading = { $step }, { $what }: <b>{ $read }</b>
record-step-done = { $step }: <b>erledigt</b>
record-reading-expected = erwartet { $forecast }, { $difference }
record-doubted = angezweifelt
record-stood-by = bestätigt
record-reading-taken-back = zurückgenommen: { $reason }
record-by = { $by }, { $at_at }
