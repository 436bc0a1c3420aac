### A club that lives on

club-change-grip = Griff { $from_g } → { $to_g }
club-change-shaft = Schaft { $from_g } → { $to_g }
club-change-length = Länge { $from_mm } → { $to_mm }
club-change-loft = Loft { $from_deg } → { $to_deg }
club-change-lie = Lie { $from_deg } → { $to_deg }
club-change-added = { $action } { $mass_g }

owned-club-fault-no-player = ein Schläger hat einen Spieler und eine Nummer
    .next = Beides angeben
owned-club-fault-long-number = die Nummer eines Schlägers hat höchstens { $most } Zeichen
    .next = Den Rest in seinen Namen schreiben
owned-club-fault-nothing-read = nichts wurde gemessen
    .next = Mindestens einen Wert angeben
owned-club-fault-odd = das wäre ungewöhnlich: { $odd }
    .next = Noch einmal nachsehen; stimmen die Werte, bestätigen
arrival-odd-of-kind = { $club }, { $what } { $read }; üblich sind { $from } bis { $to }
arrival-odd-pieces-over-whole = die Teile wiegen { $pieces_g }, der ganze Schläger { $total_g }
arrival-odd-whole-over-pieces = der ganze Schläger wiegt { $total_g }, Kopf, Schaft und Griff { $pieces_g }
arrival-odd-balance = mit diesem Schwunggewicht und dieser Masse läge der Balancepunkt bei { $balance_mm } von { $length_mm }
club-life-sure = Die Werte stimmen
owned-club-fault-stale = { $club } wurde inzwischen geändert
    .next = Neu laden, dann entscheiden

club-life-page = Schläger
club-life-search = Code, Name, Spieler oder Modell
club-life-note = Schläger erfassen
club-life-new = Schläger von anderswo
club-life-none = Kein Schläger gefunden.
club-life-none-next = Hier gebaute Schläger werden bei der Übergabe erfasst. Um an einem von anderswo zu arbeiten, erfassen Sie ihn zuerst.
club-life-count = { $n } Schläger
club-life-caption = Schläger
club-life-of = { $club } von { $player }
club-life-pick = { $club } auswählen
club-life-job-on-these = Auftrag für die angekreuzten Schläger
club-life-column-pick = Auswahl
club-life-column-code = Code
club-life-column-club = Schläger
club-life-column-swing-weight = Schwunggewicht
club-life-column-length = Länge
club-life-column-mass = Masse
club-life-column-job = Auftrag
club-life-column-player = Spieler
club-life-column-day = Tag
club-life-column-what = was
club-life-column-changed = geändert
club-life-column-read = gemessen
club-life-column-by = von
club-life-player = Spieler
club-life-kind = Schlägerart
club-life-number = Nummer
club-life-number-hint = etwa 7, P oder 54
club-life-hand = Hand
club-life-label = Eigener Name
club-life-label-hint = leer: Nummer und Spieler
club-life-material = Kopf
club-life-material-hint = begrenzt das Biegen, wo der Hersteller nichts angibt
club-life-on-arrival = Bei Eingang gemessen
club-life-on-arrival-hint = Was Sie weglassen, bleibt grob geschätzt, bis es gemessen ist.
club-life-length = Länge bis zur Griffkappe
club-life-swing-time =
    { $n ->
        [one] Zeit für eine Schwingung
       *[other] Zeit für { $n } Schwingungen
    }
club-life-swing-time-hint = Sekunden, aufgehängt { $pivot_mm } von der Griffkappe; bei anderer Anzahl 18.81/10. Mit Masse und Schwunggewicht ergibt das das Trägheitsmoment
club-life-grip-size = Griffstärke, 50 mm unter der Griffkappe
club-life-weighed-pieces = Teile, die lose gewogen wurden
club-life-note-field = Notiz
club-life-nothing-read = An diesem Schläger wurde noch nichts gemessen.
club-life-its-life = Verlauf
club-life-made-of = Bestandteile
club-life-not-weighed = etwa { MASS($about_g, digits: 0) }, nicht gewogen
club-life-work = Daran arbeiten
club-life-in-job = Auf der Werkbank in Auftrag { $job }
club-life-measure = Neu messen
club-life-change = Name oder Spieler ändern
club-life-retire = Ausgemustert: verloren, gebrochen oder verkauft
club-life-all = Alle Schläger
club-life-picture = Schwunggewicht von { $club } seit der Erfassung
