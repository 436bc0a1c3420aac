### Customer: whose the clubs are

# What is refused of a customer.
customer-fault-no-name = dem Kunden fehlt der Name
    .next = Den Namen so schreiben, wie er auf Blättern und Akten stehen soll
customer-fault-name-is-code = „{ $name }“ ist der Code eines Kunden
    .next = Den Namen so schreiben, wie er auf Blättern und Akten stehen soll
customer-fault-too-long = { $field } hat { $letters } Zeichen, höchstens { $most } passen hinein
    .next = Kürzen

# What is refused of what is done with customers.
customer-deed-deleted = Kunde { $customer } wurde am { DAY($deleted_at) } gelöscht
    .next = Die Aufträge bleiben, ohne Namen. Den Namen bringt nichts zurück
customer-deed-other-name = eingegeben wurde „{ $typed }“, das ist nicht der Name von Kunde { $customer }
    .next = Den Namen genau so eingeben, wie er oben steht: so ist es sicher der richtige Kunde
customer-deed-under-way = für den Kunden laufen noch Aufträge: { $jobs }
    .next = Erst die Aufträge abschließen oder aufgeben, dann löschen

# Where a name may stand that somebody typed.
name-stands-log = Protokoll der Werkstatt
name-stands-readings = Gründe bei Messwerten
name-stands-batches = Gründe bei Ansätzen von Kleber
name-stands-parts = Verlauf, Charge oder Ort eines Teils
name-stands-orders = Notizen einer Bestellung
name-stands-clubs = Name oder Verlauf eines Schlägers
name-stands-shop = Angaben zu einer Waage oder einem Lernwert

# The pages.
customer-title = Kunden
customer-places = Blätter, Kunden und Preise
customer-new = Neuer Kunde
customer-search = Name, Code, Telefon oder Ort
customer-all = Alle Kunden
customer-list = Kunden nach Namen
customer-none-yet = Noch kein Kunde angelegt.
customer-none-yet-next = Ein Kunde hat seine Blätter, Aufträge und Akten unter einem Namen. Legen Sie einen an, oder machen Sie einen aus einem Namen weiter unten.
customer-none-found = Kein Kunde passt.
customer-none-found-next = Einen Teil des Namens, den Code oder die Telefonnummer eingeben.
customer-count =
    { $n ->
        [0] keine
        [one] 1 Kunde
       *[other] { $n } Kunden
    }
customer-first-shown = Die ersten { $n } sind zu sehen. Nach den anderen suchen.
customer-clubs = Schläger
customer-goes-clubs =
    { $n ->
        [one] Bei 1 Schläger, { $clubs }, steht { $code } anstelle des Namens.
       *[other] Bei { $n } Schlägern, { $clubs }, steht { $code } anstelle des Namens.
    }
customer-column-name = Name
customer-column-code = Code
customer-column-hand = Hand
customer-column-sheets = Blätter
customer-column-jobs = Aufträge
customer-column-job = Auftrag
customer-column-state = Stand

# Names on sheets that belong to nobody.
customer-names = Namen auf Blättern
customer-names-hint = Diese Blätter gehören keinem Kunden: auf ihnen steht nur ein Name. Zwei Leute können gleich heißen, deshalb wird nichts von selbst zugeordnet.
customer-names-sheets =
    { $n ->
        [one] 1 Blatt
       *[other] { $n } Blätter
    }
customer-names-make = Kunden anlegen
customer-names-give = Zu { $code } legen

# One customer.
customer-change = Ändern
customer-change-title = Kunden ändern
customer-only-name = Nur der Name ist bekannt.
customer-jobs = Aufträge
customer-no-job = Noch kein Auftrag.
customer-sheets = Blätter ohne Auftrag
customer-held = Gespeicherte Daten
customer-held-hint = Wer wissen will, was die Werkstatt über ihn gespeichert hat, bekommt alles in einer Datei. Wer gelöscht werden will, wird gelöscht.
customer-export = Alle Daten speichern
customer-delete = Kunden löschen …

# The form.
customer-form-name = Name
customer-form-hand = Hand
customer-form-not-asked = nicht gefragt
customer-form-phone = Telefon
customer-form-email = E-Mail
customer-form-address = Anschrift
customer-form-glove = Handschuh
customer-form-glove-hint = wie es auf dem Handschuh steht: ML, 24
customer-form-grip = Griffstärke
customer-form-grip-hint = Durchmesser 2 in unter der Griffkappe
customer-form-wraps = Griffband
customer-form-wraps-full = Lagen, volle Länge
customer-form-wraps-hint = zusätzlich zur Grundlage; ein neues Blatt beginnt damit
customer-form-wraps-lower = Lagen, untere Hand
customer-form-wraps-too-many = Unter einen Griff passen höchstens 20 Lagen. Schreiben Sie, wie viele es sind.
customer-form-note = Notiz
customer-form-contacts-hint = Nur speichern, was Sie brauchen, um den Kunden zu erreichen.
customer-save = Speichern
customer-save-another = Als andere Person speichern
customer-same-name = Diesen Namen gibt es schon: { $codes }. Dort öffnen, oder als andere Person speichern.

# Deleting on request.
customer-delete-title = Kunden löschen
customer-delete-who = { $name } ({ $code }) wird gelöscht. Den Namen bringt nichts zurück.
customer-delete-type = „{ $name }“ eingeben: so ist es sicher der richtige Kunde
customer-delete-now = Endgültig löschen
customer-delete-not-yet = Noch nicht
customer-delete-under-way =
    { $n ->
        [one] Auftrag { $jobs } läuft noch. Zuerst abschließen oder aufgeben.
       *[other] Die Aufträge { $jobs } laufen noch. Zuerst abschließen oder aufgeben.
    }
customer-goes = Was gelöscht wird
customer-goes-row = Name, Anschrift und Kontakte, Hand, Handschuh, Griffstärke und Notiz.
customer-goes-sheets =
    { $n ->
        [one] 1 Blatt ohne Auftrag, ganz.
       *[other] { $n } Blätter ohne Auftrag, ganz.
    }
customer-goes-jobs =
    { $n ->
        [one] Name und Notiz von Auftrag { $jobs }, seinem Blatt und seiner Akte: an ihrer Stelle steht { $code }.
       *[other] Namen und Notizen der Aufträge { $jobs }, ihrer Blätter und Akten: an ihrer Stelle steht { $code }.
    }
customer-stays = Was bleibt
customer-stays-number = Die Nummer { $code }; niemand sonst bekommt sie.
customer-stays-work = Was gebaut wurde: Teile, Chargen, Massen, Messwerte, Tage und wer daran gearbeitet hat. Die Werkstatt hat daraus gelernt, und eine schlechte Charge findet sich darüber.
customer-stays-other-sheets =
    { $n ->
        [one] 1 Blatt mit diesem Namen, das keinem Kunden gehört. Ist es dieselbe Person, zuerst unter Kunden zu diesem Kunden legen.
       *[other] { $n } Blätter mit diesem Namen, die keinem Kunden gehören. Ist es dieselbe Person, zuerst unter Kunden zu diesem Kunden legen.
    }
customer-stays-typed =
    { $n ->
        [one] 1 Eintrag, in den jemand den Namen geschrieben hat: { $place }. Solche Einträge werden nie geändert.
       *[other] { $n } Einträge, in die jemand den Namen geschrieben hat: { $place }. Solche Einträge werden nie geändert.
    }
customer-stays-backups = Frühere Sicherungen: die in { $folder } enthalten den Namen noch bis zu { $months } Monate, bis sie ausgedünnt werden; von Hand gemachte Kopien und die bei einem Update behaltene Datei so lange, wie Sie sie behalten. Spielen Sie eine davon zurück, löschen Sie den Kunden noch einmal.
customer-stays-copies = Frühere Kopien der Werkstatt, so lange Sie sie behalten. Spielen Sie eine davon zurück, löschen Sie den Kunden noch einmal.
customer-deleted-title = Gelöscht
customer-deleted-tag = Erledigt
customer-deleted = Wo der Name stand, steht jetzt { $code }.

# On the command line.
customer-line = { $code }  { $name }: { $sheets ->
        [one] 1 Blatt
       *[other] { $sheets } Blätter
    }, { $jobs ->
        [one] 1 Auftrag
       *[other] { $jobs } Aufträge
    }
customer-line-names = Namen auf Blättern, die keinem Kunden gehören:
customer-line-sheet = Blatt: { $player }, { $code }
customer-line-say-name = Nichts wurde gelöscht. Zum endgültigen Löschen --name und den Namen angeben.

# Parts that are a customer's own.
customer-deed-parts-here = Teile des Kunden sind noch hier: { $codes }
    .next = Zurückgeben und mit diesem Grund ausmustern, oder unter Lager angeben, dass sie der Werkstatt gehören
customer-deed-holds-their-parts = in Auftrag { $job } stecken Teile eines anderen Kunden: { $codes }
    .next = Zuerst aus dem Plan nehmen, oder unter Lager angeben, dass sie der Werkstatt gehören
customer-parts-here =
    { $n ->
        [one] Teil { $codes } gehört dem Kunden und ist noch hier. Zuerst zurückgeben oder übernehmen.
       *[other] Die Teile { $codes } gehören dem Kunden und sind noch hier. Zuerst zurückgeben oder übernehmen.
    }
customer-parts = Eigene Teile
customer-part-of = von { $code }
customer-line-part = { $code } gehört { $whose ->
        [shop] der Werkstatt
       *[other] { $whose }
    }
