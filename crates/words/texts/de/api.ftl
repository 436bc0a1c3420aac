### Api

# What sort of problem, in a few words.
problem-title-not-found = Nicht gefunden
problem-title-conflict = Konflikt
problem-title-not-saved = Nicht gespeichert
problem-title-too-large = Zu groß
problem-title-content-type = Falscher Inhaltstyp
problem-title-refused = Abgelehnt
problem-title-method = Methode nicht erlaubt
problem-title-internal = Interner Fehler
problem-title-check = Angaben prüfen

# What is refused before any use case is asked.
edge-fault-content-type = diese Adresse nimmt ein JSON-Dokument
    .next = Mit „Content-Type: application/json“ senden
edge-fault-foreign-page = diese Eingabe kam von einer fremden Website; nichts wurde geändert
    .next = Setwright in einem eigenen Tab öffnen und dort eingeben
edge-fault-not-encrypted = das kam unverschlüsselt über das Netz, deshalb wurde nichts gelesen oder geändert
    .next = In der Adresse https:// und Port { $port } schreiben
edge-fault-no-own-root = diese Werkbank hat kein eigenes Zertifikat
    .next = Die Adresse der Werkbank selbst öffnen
edge-fault-unknown-name = dieser Server heißt nicht „{ $name }“
    .next = Die Adresse nehmen, die er beim Start ausgegeben hat; stimmt der Name, den Server mit --name und diesem Namen starten
edge-fault-no-page = diese Seite gibt es nicht
    .next = Bei Heute neu beginnen
edge-fault-no-api-address = diese Adresse hat die API nicht
    .next = Alle Adressen stehen in /api/v1/openapi.json
edge-fault-no-api-method = diese Adresse nimmt die Methode nicht
    .next = Alle stehen in /api/v1/openapi.json
edge-fault-panicked = das Programm hat einen Fehler gemacht; nichts wurde halb gespeichert
    .next = Zurückgehen, noch einmal versuchen und den Entwicklern melden, was Sie getan haben
edge-fault-too-large =
    { $size_mb ->
        [none] diese Datei ist zu groß: höchstens { $most_mb } MB sind möglich
       *[other] diese Datei hat { $size_mb } MB; höchstens { $most_mb } MB sind möglich
    }
    .next = Aufteilen und die Stücke einzeln senden
edge-fault-method = diese Adresse nimmt die Methode nicht
    .next = Zurückgehen und die Knöpfe der Seite benutzen
edge-fault-no-address = diese Adresse gibt es nicht
    .next = Bei Heute neu beginnen
edge-fault-request = die Anfrage konnte nicht angenommen werden
    .next = Die Seite neu laden
edge-fault-unread = die Anfrage ist nicht lesbar: { $what }
    .next = Die Adresse prüfen und was damit gesendet wurde
edge-fault-no-codes = keine Codes angegeben
    .next = So schreiben: codes=H7-014,H7-015
edge-fault-not-a-model = { $place }: muss ein Modell sein, ein Objekt { "{" } … { "}" }. Von der Liste wurde nichts gespeichert
    .next = Berichtigen und noch einmal senden
edge-fault-not-models = { $what }
    .next = Eine Liste von Modellen angeben, [ … ]
edge-fault-mapping = die Zuordnung: { $what }
edge-fault-unwritable = das Dokument konnte nicht geschrieben werden: { $log }
edge-fault-no-file = es kam keine Datei
    .next = Zuerst eine Aufnahme wählen
edge-fault-file-broken = die Datei kam nicht vollständig an
    .next = Noch einmal wählen und senden
edge-fault-no-calculation = die Berechnung „{ $name }“ gibt es nicht
    .next = Unter Berechnungen eine wählen
edge-fault-no-step = in Auftrag { $job } gibt es den Schritt „{ $step }“ nicht
    .next = An der Werkbank einen seiner Schritte wählen
edge-fault-too-many-labels = { $n } Etiketten sind mehr als { $most }
    .next = In kleineren Mengen drucken
edge-fault-no-action = kein Knopf wurde gedrückt
    .next = Einen der Knöpfe neben dem Wert drücken
edge-fault-nothing-chosen = keine Aktion gewählt
    .next = Nichts wurde geändert. Zurückgehen und noch einmal eingeben
edge-fault-mistyped = { $what }
    .next = Nichts wurde geändert. Zurückgehen und noch einmal eingeben
edge-fault-not-seconds = „{ $text }“ ist keine Zahl von Sekunden
    .next = Eine der Zeiten antippen, um länger zu suchen
edge-fault-not-entry-time = „{ $text }“ ist kein Zeitpunkt eines Eintrags
    .next = Die Seite neu laden und noch einmal eingeben
edge-fault-no-spacers-number = der Anteil der Glasperlen „{ $text }“ ist keine Zahl
    .next = Zum Beispiel 3 eingeben
edge-fault-no-room-number = die Temperatur „{ $text }“ ist keine Zahl
    .next = Zum Beispiel 21 eingeben
edge-fault-not-a-time = „{ $text }“ ist kein Tag mit Uhrzeit
    .next = Wählen, wann der Ansatz gemischt wurde; leer heißt jetzt
edge-fault-not-picks = „{ $text }“ sagt nicht, was in welchen Schläger kommt
    .next = Die Tabelle neu öffnen und dort übernehmen
edge-fault-no-state = dieser Schläger hat keinen Stand
    .next = Den Auftrag neu laden

# What a refusal calls an entry that it stands beside.
entry-name-it = der Wert
entry-name-labelled = { $label }

# Over a form whose entry was not kept.
page-still-below = Was Sie eingegeben haben, steht noch unten.

# Over a form that could not be used.
form-wrong =
    { $n ->
        [one] Eine Eingabe war nicht brauchbar.
       *[other] { $n } Eingaben waren nicht brauchbar.
    }
form-wrong-next = Nichts wurde gespeichert; Ihre Eingaben stehen noch da. Die Stellen sind rot markiert.

form-fault-number = „{ $text }“ ist keine Zahl
    .next = Zum Beispiel 12.5 eingeben
form-fault-count = „{ $text }“ ist keine Anzahl
    .next = Eine ganze Zahl eingeben, zum Beispiel 12
form-fault-date = „{ $text }“ ist kein Datum
    .next = So schreiben: 2031-05-24
form-fault-tip = „{ $text }“ ist keine Anzahl
    .next = 0, 1 oder 2 eingeben

edge-fault-file-lost = die Datei kam von der Seite nicht vollständig zurück
    .next = Noch einmal wählen

# What is wrong with a place of an address.
place-fault-not-whole = „{ $text }“ muss eine ganze Zahl sein
place-fault-not-utf8 = { $name } ist nicht in UTF-8
