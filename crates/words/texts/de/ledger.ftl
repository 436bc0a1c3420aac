### Ledger: everything that happened to the clubs of a job, and the chain that seals it

ledger-title = Werkbuch
ledger-link = Werkbuch
ledger-means = Alles, was gemessen, geklebt und getan wurde, in der Reihenfolge, in der es geschrieben wurde.
ledger-as-file = Werkbuch als Datei
ledger-as-csv = Einträge als CSV
ledger-parts = Teile
ledger-part-club = Schläger
ledger-part-kind = Teil
ledger-part-name = Modell
ledger-part-code = Code
ledger-part-mass = Masse
ledger-part-lot = Charge
ledger-batches = Klebstoff
ledger-batch = Ansatz
ledger-batch-adhesive = Klebstoff, Charge
ledger-batch-usable = verwendbar bis
ledger-batch-handling = handfest ab
ledger-batch-cured = ausgehärtet ab
ledger-batch-clubs = Schläger
ledger-margins = Abstände zu den Ausrüstungsregeln
ledger-margin-club = { CAPITAL($club) }: { $margin }
ledger-entries = Einträge
ledger-entry = Nr.
ledger-when = wann, wer
ledger-club = Schläger
ledger-what = was
ledger-read = gemessen
ledger-expected = erwartet
ledger-difference = Unterschied
ledger-note = Bemerkung
ledger-digest = Siegel
ledger-row = { $step }, { $what }
ledger-row-done = { $step }, erledigt
ledger-by = { $at_at }, { $by }
ledger-about = { $kind }, Nr. { $entry }
ledger-of-batch = { $kind }, Ansatz { $batch }
ledger-replaces = nachgemessen anstelle von Nr. { $entry }
ledger-changed = geändert

# What an entry of the log says was done.
ledger-deed = { $deed ->
    [sheet_approved] Blatt freigegeben
    [sheet_of_customer] einem Kunden zugeordnet
    [plan_accepted] Plan angenommen
    [plan_made_again] neu geplant
    [plan_lost] Plan mit einem Teil verloren
    [part_swapped] Teil getauscht
    [parts_exchanged] Teile zweier Schläger getauscht
    [parts_exchange_undone] Tausch zurückgenommen
    [tip_trimmed] Spitzenkürzung geändert
    [wraps_changed] Lagen Griffband geändert
    [extra_added] Zusatz ergänzt
    [part_weighed_in] Teil eingewogen
    [part_taken_back] Einwiegen zurückgenommen
    [part_changed] Teil geändert
    [two_planes_read] in zwei Ebenen gezupft
    [shaft_profile_kept] Schaftprofil
    [batch_mixed] Ansatz angemischt
    [batch_taken_back] Ansatz zurückgenommen
    [let_pass] Aushärtung übergangen
    [passed_open] mit Offenem weitergemacht
    [offer_declined] Messung abgelehnt
    [job_finished] letzter Schläger übergeben
    [job_dropped] Auftrag aufgegeben
    [nothing_learned] nichts daraus gelernt
   *[other] Eintrag im Protokoll
 }

# The chain.
seal-short-intact = unversehrt
seal-short-broken = nicht wie versiegelt
seal-title = Siegel
seal-intact =
    { $n ->
        [one] Der eine Eintrag ist so, wie er versiegelt wurde.
       *[other] Alle { $n } Einträge sind so, wie sie versiegelt wurden.
    }
seal-none = Noch ist nichts versiegelt.
seal-broken =
    { $n ->
        [one] Eine Stelle ist nicht so, wie sie versiegelt wurde.
       *[other] { $n } Stellen sind nicht so, wie sie versiegelt wurden.
    }
seal-late =
    { $n ->
        [one] Die Kette wird ab { $from_at } geführt. Ein Eintrag ist älter: Eine Änderung davor ist nicht zu erkennen.
       *[other] Die Kette wird ab { $from_at } geführt. { $n } Einträge sind älter: Eine Änderung davor ist nicht zu erkennen.
    }
seal-end = Ende der Kette, SHA-256:
seal-proves = Dieses Blatt aufbewahren: Mit diesen Ziffern lässt sich später zeigen, dass davor nichts geändert, entfernt oder eingefügt wurde.
seal-verify-by = Prüfen mit:
seal-printed = Das gedruckte Ende ist Eintrag { $entry }: Bis dahin ist alles so, wie es gedruckt wurde.
seal-fault-line = Nr. { $entry }, { $kind }: { $fault } ({ $row })
seal-fault-line-unsealed = { $kind }: { $fault } ({ $row })
seal-fault-line-entry = Nr. { $entry }: { $fault }
seal-job-intact =
    { $n ->
        [one] Auftrag { $job }: ein Eintrag, unversehrt
       *[other] Auftrag { $job }: { $n } Einträge, unversehrt
    }
seal-job-broken = Auftrag { $job }: nicht so, wie er versiegelt wurde
seal-all-intact =
    { $n ->
        [one] Ein Auftrag, unversehrt.
       *[other] { $n } Aufträge, alle unversehrt.
    }
seal-refusal-short-end = Vom gedruckten Ende sind mindestens { $digits } Ziffern nötig, 0 bis 9 und a bis f
    .next = Die ersten { $digits } Ziffern vom Werkbuch abtippen; Leerzeichen spielen keine Rolle
command-fault-seal-broken =
    { $n ->
        [one] die Akte eines Auftrags ist nicht so, wie sie versiegelt wurde
       *[other] die Akten von { $n } Aufträgen sind nicht so, wie sie versiegelt wurden
    }
    .next = Mit einer Sicherung von davor und mit einem gedruckten Werkbuch vergleichen

# Lists.
sealed-reading = Messwert
sealed-reading-taken-back = Messwert zurückgenommen
sealed-reading-insisted = Messwert bestätigt
sealed-event = Eintrag im Protokoll
sealed-batch = Ansatz angemischt
sealed-batch-club = Schläger geklebt
sealed-batch-taken-back = Ansatz zurückgenommen
sealed-finished-club = Schläger fertig
sealed-job-club = Blatt und Plan am Ende
seal-fault-changed = seit dem Versiegeln geändert
seal-fault-gone = entfernt
seal-fault-added = ohne Siegel eingefügt
seal-fault-seal-changed = das Siegel wurde geändert
seal-fault-seal-gone = das Siegel wurde entfernt
seal-fault-other-end = ein solches Ende hat die Kette nicht
doubt-end-stood-by = bestätigt
doubt-end-read-again = nachgemessen
doubt-end-taken-back = zurückgenommen
doubt-end-open = noch angezweifelt
