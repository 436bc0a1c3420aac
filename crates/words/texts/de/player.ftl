### The sheet that a player keeps

player-title = Spielerblatt
player-of = { $player }, gebaut von { $shop }
player-for-print = Auf A4 oder Letter drucken; es passt in beiden Formaten auf eine Seite.
player-full-record = Die ganze Akte
player-draft = noch nicht übergeben
player-set = Satz mit { $n ->
    [one] einem Schläger
   *[other] { $n } Schlägern
 }, { $hand }
player-set-finished = { $set }, fertig am { $at }
player-drawing = Die { $n } Schläger des Satzes, im selben Maßstab, jeder in seinem Lie
player-drawing-scale = im selben Maßstab, jeder in seinem Lie
player-table = Was verlangt war und was gebaut ist
player-club = Schläger
player-asked = verlangt
player-built = gebaut
player-felt = erfühlt
player-felt-means = Erfühlt: der Schläger, auf den das Fitting hinauslief ({ $club }).
player-felt-means-read = Erfühlt: der Schläger, auf den das Fitting hinauslief ({ $club }), gemessen am { $read_on }.
player-nothing = –
player-asked-built = { $asked } → { $built }
player-column = { $what ->
    [finished_length] Länge, { $sign }
    [swing_weight] Schwunggewicht
    [cpm] Flex, cpm
    [loft] Loft, °
    [lie] Lie, °
   *[total_mass] Gesamtmasse, { $sign }
 }
player-made-of = { $kind ->
    [head] Köpfe
    [shaft] Schäfte
   *[grip] Griffe
 } { $models }
player-soft-side = weiche Seite { $soft_side }
player-wraps = { $n ->
    [one] eine Lage Griffband über die ganze Länge
   *[other] { $n } Lagen Griffband über die ganze Länge
 }
player-with = { $a }, { $b }
player-lengths = Längen gelten bis zur Außenseite der Griffkappe.
player-promised = Kein Schläger weicht vom verlangten Wert um mehr ab als { POINTS($swing_weight_points) } beim Schwunggewicht, { LENGTH($length_mm, digits: 2) } bei der Länge und { ANGLE($loft_deg) } bei Loft und Lie: Das versprechen wir.
player-promised-cpm = Kein Schläger weicht vom verlangten Wert um mehr ab als { POINTS($swing_weight_points) } beim Schwunggewicht, { LENGTH($length_mm, digits: 2) } bei der Länge, { ANGLE($loft_deg) } bei Loft und Lie und { CPM($tolerance_cpm, digits: 0) } bei der Frequenz: Das versprechen wir.
player-builder = { $builder }, Schlägerbauer
player-job = Auftrag { $job }
