### The club on the balance beam

# A picture of one club, or of a club without a name.
beam-title =
    { $club ->
        [none] Der Schläger auf der Balkenwaage
       *[other] { $club } auf der Balkenwaage
    }
beam-list =
    { $club ->
        [none] Massen am Schläger vom Butt bis zum Kopf
       *[other] { $club }: Massen vom Butt bis zum Kopf
    }

# The picture in words, for those who do not see it.
beam-now = Der Schläger liegt jetzt bei { LETTER($now_points) }.
beam-no-reading = Der Schläger ist noch nicht gemessen.
beam-finish =
    { $band_points ->
        [none] Fertig liegt er bei { LETTER($finish_points) }.
       *[other] Fertig liegt er bei { LETTER($finish_points) } ± { PLAIN($band_points) }.
    }
beam-target =
    { $tolerance_points ->
        [none] Das Ziel ist { $target }.
       *[other] Das Ziel ist { $target } ± { PLAIN($tolerance_points) }.
    }
beam-see-table = Die Massen stehen in der Tabelle.

beam-number = Nummer
beam-piece = Teil
beam-mass = Masse
beam-arm = Hebelarm
beam-points = Punkte
beam-empty = am Schläger ist noch nichts
beam-to-come = { $piece }, kommt noch

# The letter scale under the club.
beam-axis-target =
    { $tolerance ->
        [none] Ziel { $target }
       *[other] Ziel { $target } ± { $tolerance }
    }
beam-axis-now = jetzt { LETTER($now_points) }
beam-axis-finish =
    { $band_points ->
        [none] fertig { LETTER($finish_points) }
       *[other] fertig { LETTER($finish_points) } ± { PLAIN($band_points) }
    }
beam-rest = Griffkappe und Rest
beam-more = { $n } weitere
beam-rung = { $piece } { $points }

# The ruler over the club, in inches as the balance beam is.
beam-ruler-zero = { $place } { $unit }
beam-ruler-fulcrum = Drehpunkt { $place }

# What hangs on the beam.
beam-piece-head = Kopf
beam-piece-adapter = Adapter
beam-piece-screw = Schraube
beam-piece-shaft = Schaft
beam-piece-ferrule = Ferrule
beam-piece-turnings = Abdrehspäne
beam-piece-tip-weight = Tip-Gewicht
beam-piece-adhesive = Kleber
beam-piece-tape = Griffband
beam-piece-grip = Griff
beam-piece-solvent = Lösemittel
beam-piece-extra = Zusatzmasse

# Other masses tried on the beam.
beam-what-if = Was wäre, wenn
beam-show = Anzeigen
beam-as-planned = Wie geplant
