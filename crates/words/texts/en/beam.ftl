### The club on the balance beam

# A picture of one club, or of a club without a name.
beam-title =
    { $club ->
        [none] The club on the balance beam
       *[other] { $club } on the balance beam
    }
beam-list =
    { $club ->
        [none] Masses of the club from butt to head
       *[other] Masses of the { $club } from butt to head
    }

# The picture in words, for those who do not see it.
beam-now = The club is at { LETTER($now_points) } now.
beam-no-reading = The club has no reading yet.
beam-finish =
    { $band_points ->
        [none] It will finish at { LETTER($finish_points) }.
       *[other] It will finish at { LETTER($finish_points) } ± { PLAIN($band_points) }.
    }
beam-target =
    { $tolerance_points ->
        [none] The target is { $target }.
       *[other] The target is { $target } ± { PLAIN($tolerance_points) }.
    }
beam-see-table = The table lists the masses.

beam-number = number
beam-piece = piece
beam-mass = mass
beam-arm = arm
beam-points = points
beam-empty = nothing on the club yet
beam-to-come = { $piece }, to come

# The letter scale under the club.
beam-axis-target =
    { $tolerance ->
        [none] target { $target }
       *[other] target { $target } ± { $tolerance }
    }
beam-axis-now = now { LETTER($now_points) }
beam-axis-finish =
    { $band_points ->
        [none] finish { LETTER($finish_points) }
       *[other] finish { LETTER($finish_points) } ± { PLAIN($band_points) }
    }
beam-rest = cap and rest
beam-more = { $n } more
beam-rung = { $piece } { $points }

# The ruler over the club, in inches as the balance beam is.
beam-ruler-zero = { $place } { $unit }
beam-ruler-fulcrum = fulcrum { $place }

# What hangs on the beam.
beam-piece-head = head
beam-piece-adapter = adapter
beam-piece-screw = screw
beam-piece-shaft = shaft
beam-piece-ferrule = ferrule
beam-piece-turnings = turnings
beam-piece-tip-weight = tip weight
beam-piece-adhesive = adhesive
beam-piece-tape = tape
beam-piece-grip = grip
beam-piece-solvent = solvent
beam-piece-extra = added mass

# Other masses tried on the beam.
beam-what-if = What if
beam-show = Show
beam-as-planned = As planned
