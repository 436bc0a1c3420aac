### The same again: clubs as they were built, and what differs today

again-swing-weight = gebaut { LETTER($built_points) }, das alte Blatt verlangte { LETTER($asked_points) }
again-length = gebaut { LENGTH($built_mm, digits: 2) } bis zur Griffkappe, das alte Blatt verlangte { LENGTH($asked_mm, digits: 2) }
again-loft = gebaut mit { $built_deg } Loft, das alte Blatt verlangte { $asked_deg }
again-lie = gebaut mit { $built_deg } Lie, das alte Blatt verlangte { $asked_deg }
again-not-read = { $what }: nie gemessen, es gilt der Wert des alten Blatts
again-as-others = { $what } nach der Linie durch die anderen Schläger
again-no-model = { $kind }: kein Modell eines Herstellers bekannt; auf dem Blatt eines wählen
again-model-gone = { $kind }: { $model } ist nicht mehr in der Modellsammlung; auf dem Blatt ein anderes wählen
again-none-free = { $kind }: von { $model } ist nichts frei
again-none-weighed =
    { $n ->
        [one] { $kind }: 1 Stück frei, nicht gewogen
       *[other] { $kind }: { $n } Stück frei, keines gewogen
    }
again-same = { $kind } { $part } wiegt gleich viel
again-heavier = { $kind } { $part } kommt am nächsten, { $by_g } schwerer
again-lighter = { $kind } { $part } kommt am nächsten, { $by_g } leichter
again-other-lot = { $kind } jetzt aus Charge { $lot }, vorher { $was }

again-fault-no-club = kein Schläger genannt
    .next = Schläger mit ihren Codes nennen, einen übergebenen Auftrag oder einen Kunden
again-fault-several-players = { $club } und { $other } gehören verschiedenen Spielern
    .next = Ein Blatt gilt für einen Spieler: die Schläger getrennt nehmen
again-fault-not-handed-over = Auftrag { $job } ist noch nicht übergeben
    .next = Erst abschließen: nachgebaut wird, was zuletzt gemessen wurde
again-fault-no-others = weniger als { $fewest } andere Schläger derselben Art sind gemessen
    .next = Erst die anderen messen, oder nach den eigenen letzten Werten bauen

again-page = Noch einmal genauso
again-button = Noch einmal bauen
again-note = Noch einmal: { $clubs }
again-means = Das neue Blatt verlangt, was zuletzt gebaut und gemessen wurde, nicht, was das alte Blatt verlangte.
again-column-club = Schläger
again-column-asks = das neue Blatt verlangt
again-column-says = Unterschiede
again-asks = { LETTER($swing_weight_points) }, { LENGTH($length_mm, digits: 2) }, Loft { $loft_deg }, Lie { $lie_deg }
again-as-others-check = Passend zu den anderen Schlägern, wie sie heute sind
again-others = Die Linie durch die anderen Schläger ergibt heute:
again-due = Neue fällig am
again-make = Als neues Blatt speichern
again-line = { $like }: { $asks }
