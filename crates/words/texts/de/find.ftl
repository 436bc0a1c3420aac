### Find: one field for everything

find-title = „{ $text }“
find-count = { $n } Treffer
find-nothing = Nichts passt zu „{ $text }“.
find-nothing-next = Den Namen eines Kunden eingeben, „job 1“, den Code eines Teils oder einer Laufkarte, eine Charge oder „order 2“; oder ein Etikett noch einmal scannen.
find-customer = Kunde { $name }, { $code }
find-sheet = Blatt: { $player }, nicht freigegeben
find-club = Schläger { $slot } aus Auftrag { $job }
find-owned-club = { $club } von { $player }, { $code }
find-part = { $kind } { $code }
find-parts =
    { $n ->
        [one] 1 Teil mit „{ $text }“
       *[other] { $n } Teile mit „{ $text }“
    }
find-lot =
    { $n ->
        [one] Charge { $lot }: in 1 Schläger steckt etwas davon
       *[other] Charge { $lot }: in { $n } Schlägern steckt etwas davon
    }
find-order = Bestellung { $order }
find-model = { $name }, Modell, { $kind }, { $code }
find-note = „{ $text }“ ({ $by })
find-note-job = „{ $text }“, Auftrag { $job } ({ $by })
find-meant = Nichts passt zu „{ $text }“. Meinten Sie „{ $meant }“?
find-page = Suchen
find-empty = Ein Name, „job 1“, ein Code, eine Charge, eine Bestellung, ein Wort aus einer Notiz; ein Teil davon genügt.
find-batch = Kleber, Ansatz { $batch }
