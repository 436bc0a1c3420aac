### Der Kalender: Termine, Ende des Aushärtens, erwartete Teile; und Listen der Werkstatt als Dateien

calendar-job-due =
    { $n ->
        [one] Auftrag { $job } fällig: { $player }, 1 Schläger
       *[other] Auftrag { $job } fällig: { $player }, { $n } Schläger
    }
calendar-handling = Ansatz { $batch } ist handfest (Auftrag { $jobs })
calendar-full-cure = Ansatz { $batch } ist ausgehärtet (Auftrag { $jobs })
calendar-parts-expected = Bestellung { $order } erwartet: { $n } × { $model }
calendar-parts-expected-from = Bestellung { $order } erwartet: { $n } × { $model } von { $supplier }

export-fault-backwards = der letzte Tag liegt vor dem ersten
    .next = Die beiden tauschen
export-fault-too-many = { $n } Messwerte sind zu viele für eine Datei, höchstens { $most }
    .next = Weniger Tage wählen

# Die Seite des Kalenders.
calendar-title = Kalender
calendar-count =
    { $n ->
        [one] 1 Eintrag
       *[other] { $n } Einträge
    }
calendar-when = wann
calendar-what = was
calendar-day = { $weekday }, { $day }
calendar-time = { $weekday }, { $day }, { $time }
calendar-empty = Nichts ist fällig.
calendar-empty-next = Aufträge, Aushärtezeiten und erwartete Teile erscheinen hier nach ihrem Tag.
calendar-save = Als Kalenderdatei speichern
calendar-subscribe = Auf dem Telefon
calendar-subscribe-about = Der Kalender eines Telefons oder Rechners kann diese Tage selbst abholen, über eine eigene Adresse. Die Adresse öffnet nur den Kalender. Wer sie hat, sieht die Namen der Spieler.
calendar-owner-only = Eine solche Adresse lässt sich auf einem Gerät des Inhabers anlegen.
calendar-whose = Wessen Kalender
calendar-whose-hint = der Name in der Liste unter „Zugänge“, wo sich die Adresse wieder entziehen lässt
calendar-give = Adresse anlegen
calendar-address-for = Adresse für { $name }. Im Kalender „Abonnieren“ oder „Über Adresse hinzufügen“ wählen und eingeben:
calendar-address-picture = Code mit der Adresse
calendar-address-once = Jetzt kopieren oder scannen: Sie wird nicht gespeichert und nicht noch einmal gezeigt. Zum Beenden den Zugang unter „Zugänge“ entziehen.

# Die Seite aller Listen.
export-title = Listen als Dateien
export-about = Für eine Tabellenkalkulation oder ein anderes Programm: CSV mit Überschriften, Dezimalpunkt und Zeiten in UTC. Namen, die wie eine Formel aussehen, erhalten einen Apostroph.
export-save = Speichern
export-clubs = Schläger, mit ihren Teilen und Messwerten
export-jobs = Aufträge, auch die abgeschlossenen
export-records = Fertige Schläger: Soll, Ist, Urteil
export-orders = Bestellungen
export-needs = Bedarf und Fehlbestand
export-parts = Teile
export-parts-book = Teile als Arbeitsmappe (XLSX)
export-models = Modelle (JSON)
export-calendar = Kalender (iCalendar)
export-readings = Messwerte
export-readings-about = Jeder Messwert der Werkbank mit seiner Vorhersage; höchstens 250 000 in einer Datei. Ohne Tage: alle.
export-from = Von
export-to = Bis
export-one-customer = Die Schläger eines Kunden und alles, was über ihn gespeichert ist, gibt es auf der Seite des Kunden. Die Akte eines Auftrags hat ihre eigene Seite.
customer-clubs-export = Schläger als CSV speichern
