### Recall: whom something reached, and the marks on clubs until somebody has looked

recall-of-lot = Charge { $lot }
recall-of-part = Teil { $part }
recall-of-model = Modell { $model }
recall-of-scale = Waage { $scale }
recall-of-scale-days = Waage { $scale }, { $from_on } bis { $to_on }
recall-of-builder = { $builder }
recall-of-builder-days = { $builder }, { $from_on } bis { $to_on }

recall-reach-batch = geklebt mit Ansatz { $batch }, Charge { $lot }, angemischt { $mixed_at }
recall-reach-part = hat { $kind } { $part }
recall-reach-had-part = hatte { $kind } { $part }; inzwischen ausgebaut
recall-reach-may-have-tape = hat vielleicht Griffband der Rolle { $part }: bewickelt { $since_at }, als die Rolle schon da war. Welche Rolle es war, notiert kein Schritt
recall-reach-named = im Blatt steht { $model }
recall-reach-read =
    { $n ->
        [one] 1 Messwert, { $first_at }
       *[other] { $n } Messwerte, { $first_at } bis { $last_at }
    }
recall-reach-read-by =
    { $n ->
        [one] 1 Messwert von dieser Person, { $first_at }
       *[other] { $n } Messwerte von dieser Person, { $first_at } bis { $last_at }
    }
recall-reach-done-by =
    { $n ->
        [one] 1 Eintrag dieser Person im Protokoll, { $last_at }
       *[other] { $n } Einträge dieser Person im Protokoll, der letzte { $last_at }
    }
recall-reach-mixed-by = geklebt mit Ansatz { $batch }, von dieser Person angemischt { $mixed_at }

recall-fault-nothing = ein Rückruf braucht etwas, wonach er sucht
    .next = Charge, Teil, Modell, Waage oder Schlägerbauer nennen
recall-fault-several = ein Rückruf sucht nur nach einer Sache
    .next = Eines nennen: Charge, Teil, Modell, Waage oder Schlägerbauer
recall-fault-no-days = Tage gehören zu einer Waage oder einem Schlägerbauer
    .next = Die Tage weglassen: Charge, Teil und Modell werden ganz zurückgerufen
recall-fault-no-first-day = der erste Tag fehlt
    .next = Beide Tage angeben, oder nur den ersten: dann gilt es bis heute
recall-fault-backwards = der letzte Tag liegt vor dem ersten
    .next = Beide tauschen
recall-fault-no-word = der Text fehlt
    .next = In wenigen Worten schreiben, wonach zu sehen ist oder was gefunden wurde
recall-fault-long-word = { $letters } Zeichen sind zu viel für eine Zeile, höchstens { $most }
    .next = Kürzer fassen

recall-refusal-not-in-recall = { $club } gehört nicht zu diesem Rückruf
    .next = Das Kürzel des Schlägers aus der Liste nehmen
recall-refusal-no-club = kein Schläger angekreuzt
    .next = Die Schläger ankreuzen, die einen Vermerk bekommen
recall-refusal-nameless = wer einen Vermerk erledigt, muss genannt sein
    .next = Den Namen auf der Seite Werkstatt angeben, oder mit --by
recall-refusal-cleared = diesen Vermerk hat { $by } schon erledigt, { $at }: { $word }
    .next = Nichts mehr zu tun

open-point-marked = Vermerk: { $word }

# The page.
recall-page = Rückruf
recall-title = Rückruf: { $of }
recall-count = { $n } Schläger { $players ->
        [one] von 1 Spieler
       *[other] von { $players } Spielern
    }
recall-means = Eine schlechte Charge, ein falsches Teil, eine Waage, die danebenlag: alle Schläger, die es betrifft, ihre Spieler und wie Sie sie erreichen.
recall-what = Suchen nach
recall-of-what-lot = Charge von Kleber oder Teilen
recall-of-what-part = Teil oder Schachtel
recall-of-what-model = Modell
recall-of-what-scale = Waage
recall-of-what-builder = Schlägerbauer
recall-which = Was genau
recall-which-hint = Scannen oder eingeben: Charge, Code oder Name
recall-from = Erster Tag
recall-days-hint = Nur für eine Waage oder einen Schlägerbauer
recall-to = Letzter Tag
recall-ask = Schläger suchen
recall-nobody = Kein Schläger hat damit zu tun: { $of }.
recall-nobody-next = Noch einmal auf Gebinde, Etikett oder Namen nachsehen.
recall-still-here = noch in der Werkstatt
recall-here =
    { $n ->
        [one] 1 Schläger ist noch nicht übergeben. Er kommt zuerst.
       *[other] { $n } Schläger sind noch nicht übergeben. Sie kommen zuerst.
    }
recall-addresses = Anschriften als CSV
recall-clubs = Schläger
recall-players = Spieler
recall-in-job = Auftrag { $job }
recall-never-in-job = erfasst
recall-read = { $what } { $figure }
recall-last-read = gemessen: { $read }
recall-column-pick = Vermerk
recall-column-club = Schläger
recall-column-player = Spieler
recall-column-where = wo
recall-column-why = warum
recall-column-mark = Vermerk
recall-column-phone = Telefon
recall-column-email = E-Mail
recall-column-address = Anschrift
recall-column-clubs = Schläger

# Marks.
mark-page = Schläger mit Vermerk
mark-count =
    { $n ->
        [one] 1 Vermerk offen
       *[other] { $n } Vermerke offen
    }
mark-word = Vermerk für die angekreuzten Schläger
mark-word-of = Ansehen: { $of }
mark-word-hint = Er bleibt auf der Seite des Schlägers, auf der Laufkarte und an der Werkbank, bis jemand sagt, was er gefunden hat
mark-them = Vermerk setzen
mark-none = Kein Schläger hat einen Vermerk.
mark-none-next = Ein Rückruf setzt Vermerke auf Schläger, die sich jemand ansehen muss.
mark-with-player = beim Spieler
mark-in-shop = in der Werkstatt
mark-from = { $of }; { $by }, { $at_at }
mark-found = Was gefunden wurde
mark-clear = Erledigen
mark-cleared = Erledigt von { $by }, { $at_at }: { $found }
mark-column-club = Schläger
mark-column-where = wo
mark-column-word = ansehen
mark-column-clear = erledigen
mark-on-card = Ansehen
today-marked =
    { $n ->
        [one] 1 Schläger hat einen Vermerk aus einem Rückruf
       *[other] { $n } Schläger haben einen Vermerk aus einem Rückruf
    }
today-marked-here =
    { $n ->
        [0] keiner davon in der Werkstatt
        [one] 1 davon in der Werkstatt
       *[other] { $n } davon in der Werkstatt
    }
done-marked = Die Vermerke sind gesetzt.
done-mark-cleared = Der Vermerk ist erledigt.

# The command line.
recall-line = { $key }: { $club } von { $player }, { $place }
recall-line-marked =
    { $n ->
        [0] Kein Vermerk gesetzt: die Vermerke sind schon da
        [one] 1 Vermerk gesetzt
       *[other] { $n } Vermerke gesetzt
    }
mark-line = { $id }  { $club } von { $player }: { $word }
