### Price: the list, a quote, a bill

price-fault-no-amount =
    { $digits ->
        [0] „{ $text }“ ist kein Betrag in dieser Währung
       *[other] „{ $text }“ ist kein Betrag mit höchstens { $digits } Nachkommastellen
    }
    .next = Zum Beispiel 12 schreiben
price-fault-currency = die Währung oder der Text unter der Summe ist zu lang, oder es sind zu viele Nachkommastellen
    .next = Ein Zeichen oder drei Buchstaben, 0 bis 3 Stellen und höchstens 2000 Zeichen schreiben
price-fault-too-many = mehr als { $most } Zeilen
    .next = Einige zusammenfassen
price-fault-model-twice = das Modell { $model } hat zwei Preise
    .next = Nur einen behalten
price-fault-no-name = eine Zeile hat keinen Namen oder einen mit mehr als { $most } Zeichen
    .next = Schreiben, wofür sie steht
price-fault-range = ein Preis oder eine Anzahl ist nicht möglich
    .next = Die Anzahl ab 1, der Preis unter zehn Millionen
price-fault-no-line = Zeile { $n } ist nicht lesbar
    .next = So schreiben, wie es unter dem Feld steht, mit ; dazwischen
per-club = Schläger
per-job = Auftrag

price-title = Preise
price-currency = Währung
price-currency-hint = wie sie hinter einem Betrag steht: EUR
price-decimals = Nachkommastellen
price-decimals-hint = 2, wenn hundert Münzen eins ergeben
price-tax = Unter der Summe
price-tax-hint = Steuer, Nummern und Anschrift der Werkstatt, wie es das Gesetz vor Ort verlangt
price-work = Arbeit
price-work-lines = Je eine Zeile
price-work-hint = Name; Preis; Schläger oder Auftrag; immer – zum Beispiel: Aufbau; 25.00; Schläger; immer. Was mit „immer“ endet, steht in jedem neuen Angebot.
price-usual = immer
price-parts = Teile
price-parts-hint = Je Stück. Ein Modell ohne Preis steht nicht im Angebot.
price-quote = Angebot
price-quote-of = Angebot für { $player }
price-quote-lines = Zeilen
price-quote-hint = Anzahl; was; Einzelpreis – zum Beispiel: 8; Griffwechsel; 6.50. Ein Preis unter null zieht ab.
price-quote-save = Angebot speichern
price-quote-anew = Neu aus der Preisliste
price-proposed = Aus der Preisliste, noch nicht gespeichert. Ändern Sie, was Sie möchten, dann speichern.
price-no-prices = Noch kein Modell dieses Blatts hat einen Preis. Zeilen von Hand schreiben oder zuerst die Preisliste füllen.
price-lines = Zeilen des Angebots
price-total = Summe
price-column-what = was
price-column-count = Stück
price-column-each = einzeln
price-column-sum = Betrag
price-bill = Rechnung zu Auftrag { $job }
price-bill-on = Auftrag { $job }, { $drawn_on }
price-bill-no-lines = Zu diesem Auftrag gibt es noch kein Angebot: Die Rechnung hat keine Zeilen.
price-built = Was gebaut wurde
price-line = { $count } × { $what }: { $sum }
