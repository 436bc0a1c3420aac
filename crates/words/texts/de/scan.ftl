### A code scanned at the bench

scan-put-in = { $part } ist jetzt eingesetzt: { $kind }, { $club }.
scan-already = { $part } ist hier schon eingesetzt: { $club }.
scan-free = { $part } ist frei: { $kind }.
scan-other-model = { $part }: { $kind } { $model }; zu { $club } gehört { $wants }.
scan-other-number = { $part }: { $kind } { $model } { $number }; zu { $club } gehört { $wants }.
scan-other-club = { $part } gehört zu { $club } aus Auftrag { $job }.
scan-some-club = { $part } gehört zu einem anderen Schläger.
scan-other-step = { $part } ist frei: { $kind }; in diesem Schritt wird so ein Teil nicht eingesetzt.
scan-not-free = { $part } ist { $state } und kann in keinen Schläger.

scan-next-nothing-changed = Nichts wurde geändert.
scan-next-can-go-in = Es kann das geplante Teil ersetzen.
scan-next-takes-back =
    { $readings ->
        [one] Wird es eingesetzt, gilt der Messwert mit dem geplanten Teil nicht mehr.
       *[other] Wird es eingesetzt, gelten die { $readings } Messwerte mit dem geplanten Teil nicht mehr.
    }
scan-next-into-its-tray = Zurück in sein Fach legen; nichts wurde geändert.
scan-next-choose-step = In diesem Schritt wird kein Teil eingesetzt. Den passenden Schritt wählen.
scan-next-step-takes = In diesem Schritt wird eingesetzt: { $kinds }.
scan-next-open-in-stock = Unter Lager öffnen oder ein anderes Teil scannen.

# The page.
scan-label = Code scannen oder eintippen
scan-placeholder = Teil oder Laufkarte scannen
scan-go = Einsetzen oder öffnen
scan-club-of-card = Der Schläger dieser Karte
scan-put-it-in = Einsetzen
scan-to-club = Zu { $club }
scan-open-part = { $part } öffnen
