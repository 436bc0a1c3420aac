### Weigh-in

# What is refused of weighing a part in.
weigh-in-fault-no-mass = es fehlt eine Masse zum Beurteilen
    .next = mass_g angeben, oder mass wie getippt, zum Beispiel 268.4
weigh-in-fault-changed = { $code } wurde seit dem Einwiegen geändert oder eingeplant
    .next = Unter Lager öffnen und dort schreiben, was daran nicht stimmt
weigh-in-fault-bad-key = „{ $key }“ geht nicht als Schlüssel einer Anfrage
    .next = 1 bis 64 Buchstaben, Ziffern und - angeben, oder weglassen

# What a weighed part may be. $way says whether such parts are heavier or lighter than the number it was weighed as.
weigh-likely-as-said = es ist das gewählte Teil
weigh-likely-next-head =
    { $way ->
        [heavier] sieht nach der nächsten Nummer aus, { $number } – Köpfe für { $club } sind { $by_g } schwerer
       *[other] sieht nach der nächsten Nummer aus, { $number } – Köpfe für { $club } sind { $by_g } leichter
    }
weigh-likely-next-shaft =
    { $way ->
        [heavier] sieht nach der nächsten Nummer aus, { $number } – Schäfte dieser Nummer sind { $by_g } schwerer
       *[other] sieht nach der nächsten Nummer aus, { $number } – Schäfte dieser Nummer sind { $by_g } leichter
    }
weigh-likely-before-head =
    { $way ->
        [heavier] sieht nach der Nummer davor aus, { $number } – Köpfe für { $club } sind { $by_g } schwerer
       *[other] sieht nach der Nummer davor aus, { $number } – Köpfe für { $club } sind { $by_g } leichter
    }
weigh-likely-before-shaft =
    { $way ->
        [heavier] sieht nach der Nummer davor aus, { $number } – Schäfte dieser Nummer sind { $by_g } schwerer
       *[other] sieht nach der Nummer davor aus, { $number } – Schäfte dieser Nummer sind { $by_g } leichter
    }
weigh-likely-other-head =
    { $way ->
        [heavier] sieht nach einer anderen Nummer aus, { $number } – Köpfe für { $club } sind { $by_g } schwerer
       *[other] sieht nach einer anderen Nummer aus, { $number } – Köpfe für { $club } sind { $by_g } leichter
    }
weigh-likely-other-shaft =
    { $way ->
        [heavier] sieht nach einer anderen Nummer aus, { $number } – Schäfte dieser Nummer sind { $by_g } schwerer
       *[other] sieht nach einer anderen Nummer aus, { $number } – Schäfte dieser Nummer sind { $by_g } leichter
    }
weigh-likely-other-model =
    { $number ->
        [none] sieht nach einem anderen Modell aus – { $model } wiegt { $expected_g }
       *[other] sieht nach einem anderen Modell aus – { $model } { $number } wiegt { $expected_g }
    }
weigh-likely-wrapped = { $by_g } zu schwer – vielleicht ist noch Folie oder ein Etikett darauf
weigh-likely-slip = kein Teil der Modelle wiegt so viel

# What its mass says.
weigh-finding-as-expected = wiegt, was es soll
weigh-finding-not-compared = keine Masse zum Vergleichen
weigh-finding-looks = { $mass_g }: { $likely }
weigh-finding-too-heavy =
    { $number ->
        [none] { $mass_g } sind { $by_g } zu viel; { $kind } soll { $expected_g } wiegen
       *[other] { $mass_g } sind { $by_g } zu viel; Nummer { $number } soll { $expected_g } wiegen
    }
weigh-finding-too-light =
    { $number ->
        [none] { $mass_g } sind { $by_g } zu wenig; { $kind } soll { $expected_g } wiegen
       *[other] { $mass_g } sind { $by_g } zu wenig; Nummer { $number } soll { $expected_g } wiegen
    }

# What to do then.
weigh-next-take-off = Abmachen und noch einmal wiegen
weigh-next-read-sole = Die Nummer auf der Sohle ansehen
weigh-next-read-part = Die aufgedruckte Nummer ansehen
weigh-next-weigh-again = Auf leerer Waagschale noch einmal wiegen

# Heads as received that cannot be bent to their model's figures.
bend-doubt-loft = Loft { $is_deg }, { $off_deg } neben dem Modell ({ $model_deg }): Er lässt sich nur auf { $least_deg } bis { $most_deg } biegen
bend-doubt-lie = Lie { $is_deg }, { $off_deg } neben dem Modell ({ $model_deg }): Er lässt sich nur auf { $least_deg } bis { $most_deg } biegen
bend-doubt-loft-unbendable = Loft { $is_deg }, { $off_deg } neben dem Modell ({ $model_deg }): Dieser Kopf darf nicht gebogen werden
bend-doubt-lie-unbendable = Lie { $is_deg }, { $off_deg } neben dem Modell ({ $model_deg }): Dieser Kopf darf nicht gebogen werden

# The page of the weigh-in.
weigh-in-title = Einwiegen
weigh-in-no-models = Es gibt noch keine Modelle.
weigh-in-no-models-next = Jedes Teil gehört zu einem Modell: zuerst das Modell anlegen.
weigh-in-which-number = <strong>Welche Nummer?</strong> Einmal wählen; sie bleibt für die folgenden Teile.
weigh-in-choose-model = zuerst das Modell wählen
weigh-in-number-first = Zuerst die Nummer wählen
weigh-in-booked = Bestellung { $order } ist eingebucht.
weigh-in-booked-next = Die gelieferten Teile einwiegen, zusammen { $n }.
weigh-in-this-model = Dieses Modell einwiegen
weigh-in-another-model = Modell wechseln
weigh-in-numbers = Nummern
weigh-in-count = Oder wie viele in der Schachtel
weigh-in-count-hint = Die Schachtel jetzt zählen; jedes Stück wiegen, wenn Sie es verwenden
weigh-in-lot-and-place = Charge und Ort
weigh-in-stays = Bleibt für das nächste Teil
weigh-in-code-hint = Der nächste Code; überschreiben oder ein schon gedrucktes Etikett scannen
weigh-in-mass-only = Nur die Masse abfragen
weigh-in-with-angles = Loft und Lie von jedem abfragen
weigh-in-keep = Speichern, nächstes
weigh-in-as-it-is = So behalten
weigh-in-again = Noch einmal wiegen
weigh-in-it-is = Es ist Nummer { $number }
weigh-in-done = Fertig
weigh-in-key-same = fragt noch einmal
weigh-in-key-again = noch einmal wiegen
weigh-in-key-next-box = nächstes Feld; vom letzten aus: speichern
weigh-in-key-next = speichern, nächstes Teil
weigh-in-key-undo = das letzte zurücknehmen

# The large sign over it, and what was kept.
weigh-in-question = <strong>{ CAPITAL($finding) }.</strong> { $next }. Noch nicht gespeichert.
weigh-in-in-box = { $n } in der Schachtel
weigh-in-kept-as = Gespeichert als Nummer { $number }.
weigh-in-bend = <strong>{ CAPITAL($doubt) }.</strong> Gespeichert; den Kopf vor dem Einkleben beiseitelegen.
weigh-in-total =
    { $n ->
        [one] { $n } Teil
       *[other] { $n } Teile
    }
weigh-in-last = Letzte Teile
weigh-in-off-model = { MASS($off_g, signed: 1) }
weigh-in-undo = Zurücknehmen
weigh-in-settings = Etiketten und Ton
weigh-in-print = Zu jedem gespeicherten Teil ein Etikett drucken
weigh-in-print-hint = Auf dem Drucker dieses Tablets, ein Etikett von 62 × 29 mm. Der Browser fragt jedes Mal, wenn er nicht auf sofortiges Drucken eingestellt ist.
weigh-in-sound = Ein Ton für jedes gespeicherte Teil, ein Doppelton bei einer Frage
weigh-in-settings-keep = Für die Werkstatt speichern

# The picture of the masses.
weigh-in-heap-none = Noch keines gewogen; Masse des Herstellers: { $nominal_g }
weigh-in-heap-words =
    { $sd_g ->
        [none] { $n } gewogen, im Mittel { $mean_g }, { MASS($off_g, signed: 1) } gegen die { $nominal_g } des Herstellers
       *[other] { $n } gewogen, im Mittel { $mean_g }, { MASS($off_g, signed: 1) } gegen die { $nominal_g } des Herstellers; Streuung { $sd_g }
    }
weigh-in-heap-title = Massen von { $name }: { $words }
weigh-in-heap-maker = Hersteller { $nominal_g }

# What the command prints.
weigh-in-kept = { $code } ist gespeichert; der nächste Code ist { $next }
weigh-in-sure = { $finding }. { $next }, oder mit --sure behalten
weigh-in-odds = { $hundredths } von 100: { $likely }
