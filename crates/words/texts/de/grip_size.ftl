### Grip size, and the tape that brings a grip to it

grip-place-upper = obere Hand
grip-place-lower = untere Hand

grip-size-says-unknown = Keine Vorhersage: Das Griffmodell sagt nicht, wie dick der Griff ist. Einen davon messen und unter Modelle eintragen.
grip-size-says-not-asked = Das Blatt verlangt keine Griffstärke.
grip-size-says-no-tape = Die Stärke passt nicht, und es ist kein Griffband bekannt: auf dem Blatt eines nennen oder unter Werkstatt das übliche.
grip-size-says-as-asked = Die geplanten Lagen ergeben die Stärke.
grip-size-says-wraps =
    { $full ->
        [0] Keine volle Lage
        [one] Eine volle Lage
       *[other] { $full } volle Lagen
    } über der Grundlage{ $lower ->
        [0] {""}
        [one] , dazu eine unter der unteren Hand
       *[other] , dazu { $lower } unter der unteren Hand
    }: Schwunggewicht { POINTS($by_points, signed: 1) }.
grip-size-says-wraps-cost =
    { $full ->
        [0] Keine volle Lage
        [one] Eine volle Lage
       *[other] { $full } volle Lagen
    } über der Grundlage{ $lower ->
        [0] {""}
        [one] , dazu eine unter der unteren Hand
       *[other] , dazu { $lower } unter der unteren Hand
    }: Schwunggewicht { POINTS($by_points, signed: 1) }, damit liegt es nicht mehr im Soll. Ein dickerer Griff gleicher Masse oder ein anderes Gewicht am Kopf schafft beides.
grip-size-says-too-thick = { LENGTH($by_mm, digits: 3) } zu dick, auch ganz ohne Lage über der Grundlage: einen dünneren Griff nehmen oder einen mit weiterem Kern.
grip-size-says-too-thin = { LENGTH($by_mm, digits: 3) } zu dünn, auch mit allen Lagen, die sich lohnen: einen dickeren Griff nehmen.
grip-size-says-on-and-off =
    { $by_mm ->
       *[other] Der Griff ist drauf und { LENGTH($by_mm, digits: 3) } neben seiner Stärke. Das ändert nur ein neuer Griff.
    }

wrap-fault-nothing = für Auftrag { $job } sind gerade keine anderen Lagen empfohlen
    .next = Auf dem Blatt eine Griffstärke verlangen oder die Schläger mit ihren Lagen nennen
wrap-fault-twice = der Schläger in Fach { $slot } ist zweimal genannt
    .next = Jeden Schläger einmal nennen
wrap-fault-too-many = der Schläger in Fach { $slot } bekäme mehr als { $most } Lagen einer Art
    .next = Weniger eingeben oder einen dickeren Griff nehmen
wrap-fault-on = der Griff ist schon drauf, oder es gibt keinen Plan: { $number }
    .next = Weglassen oder den Schläger zuerst planen

grip-size-page = Griffstärke
grip-size-open = Griffstärke und Lagen
grip-size-about = Wie dick jeder Griff dort wird, wo die Hände liegen: 2 in und 6 in unter der Griffkappe. Eine Messung mit dem Messschieber sagt etwas über alle Griffe desselben Modells. Wie weit sich ein Griff dehnen darf, steht im Herstellerblatt.
grip-size-at = { $place } { LENGTH($diameter_mm, digits: 3) } ± { LENGTH($band_mm, digits: 3) }
grip-size-at-asked = Soll { LENGTH($asked_mm, digits: 3) }
grip-size-line = { $slot }  { $club }: { $places }. { $to_do }
grip-size-stands = Griff: { $places }
grip-size-measure = Den Messschieber quer zum Griff nur anlegen: Gedrückter Gummi misst sich zu dünn.
grip-size-asked-upper = Griffstärke, obere Hand
grip-size-asked-hint = 2 in unter der Griffkappe; leer: wie der Griff ist
grip-size-asked-lower = Griffstärke, untere Hand
grip-size-asked-lower-hint = 6 in unter der Griffkappe, wo er aufgebaut werden soll
grip-size-asked-needs-upper = Zur Stärke an der unteren Hand gehört auch die an der oberen.
grip-size-column-club = Schläger
grip-size-column-upper = Obere Hand
grip-size-column-lower = Untere Hand
grip-size-column-wraps = Griffband
grip-size-column-to-do = Abhilfe
grip-size-doubted = angezweifelt
grip-size-read = gemessen { LENGTH($read_mm, digits: 3) }
grip-size-take = Diese Lagen wickeln
