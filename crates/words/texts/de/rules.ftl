### Margins against the Equipment Rules of golf

# What the rules limit.
limited-length = Länge
limited-shaft-lean = Schaft gegen die Senkrechte
limited-shaft-along = Schaft in Spielrichtung
limited-straight-shaft = gerader Schaft
limited-bending = Biegung und Verdrehung
limited-neck = Hals
limited-grip-length = Grifflänge
limited-grip-across = Griffdicke
limited-grip-shape = Griffform
limited-wood-head = Kopf eines Holzes
limited-clubs = mitgeführte Schläger

# A limit.
rules-limit-length-at-least = mindestens { $at_mm }
rules-limit-length-at-most = höchstens { $at_mm }
rules-limit-angle-at-least = mindestens { $at_deg }
rules-limit-clubs-at-most = höchstens { $n } Schläger
rules-limit-lean-along = höchstens { ANGLE($forward_deg, digits: 0) } nach vorn und { ANGLE($back_deg, digits: 0) } nach hinten
rules-limit-straight = gerade vom oberen Griffende bis höchstens { $above_sole_mm } über der Sohle
rules-limit-bends-alike = gleich, wie immer der Schaft gedreht ist
rules-limit-neck = Schaft am Heel, Hals höchstens { $most_mm }
rules-limit-round-grip = runder Querschnitt, außer beim Putter
rules-limit-wood-head = von Heel nach Toe höchstens { $heel_to_toe_mm } und mehr als von vorn nach hinten, von der Sohle zur Krone höchstens { $height_mm }, höchstens { $volume_cc } cm³ (+{ $volume_play_cc }), Trägheitsmoment höchstens { $inertia_g_cm2 } g·cm² (+{ $inertia_play_g_cm2 })

# How a length was come by.
length-basis-plane = an der 60°-Ebene; entlang der Schaftachse { $axis_mm }
length-basis-plane-assumed = an der 60°-Ebene, ± { $open_mm }, weil der Auflagepunkt der Sohle angenommen und nicht gemessen ist; entlang der Schaftachse { $axis_mm }
length-basis-axis = entlang der Schaftachse

# A club against a limit.
rules-length-inside = { $what } { $measured_mm }, { $by_mm } innerhalb der Grenze von { $limit_mm }
rules-length-beyond = { $what } { $measured_mm }, { $by_mm } jenseits der Grenze von { $limit_mm }
rules-length-at = { $what } genau an der Grenze von { $limit_mm }
rules-angle-inside = { $what } { $measured_deg }, { $by_deg } innerhalb der Grenze von { $limit_deg }
rules-angle-beyond = { $what } { $measured_deg }, { $by_deg } jenseits der Grenze von { $limit_deg }
rules-angle-at = { $what } genau an der Grenze von { $limit_deg }
rules-clubs = { $n } Schläger; ein Spieler führt höchstens { $limit } mit
rules-not-measured = { $what }: nicht gemessen
rules-grip-round = Griff laut Modell rund; nicht gemessen
rules-grip-ribbed = Griff laut Modell mit Rippe; welche Rippen erlaubt sind, entscheiden nur die Regelgeber
rules-grip-flat-sided = Griff laut Modell abgeflacht, der Schläger ist aber kein Putter

# A clause, as it is cited.
rules-clause =
    { $clause ->
        [G-10] Platzregel G-10, wo sie gilt
       *[other] { $clause }
    }
