### Swing inertia, and the pendulum that it is timed with

swing-inertia-stands = Swing inertia { $inertia }
swing-inertia-asked = The sheet asks { $asked } ± { $tolerance }; the swing weight is the one that gives it.
swing-inertia-hang =
    { $n ->
        [one] Hang it { $pivot_mm } from the cap, let it swing about 5° and time one swing, there and back: about { $all } s.
       *[other] Hang it { $pivot_mm } from the cap, let it swing about 5° and time { $n } swings, there and back: about { $all } s.
    }
plan-inertia = inertia { PLAIN($value_kg_cm2, digits: 0) } ± { PLAIN($band_kg_cm2, digits: 0) } kg·cm²

pendulum-title = Pendulum
pendulum-pivot = Pivot
pendulum-pivot-hint = Where the club hangs, from the outside of its cap; negative above the cap
pendulum-swings = Swings timed
pendulum-swings-hint = Full swings, there and back; more of them tell the inertia better
pendulum-time-sd = Time good to
pendulum-time-sd-hint = Of all swings together: about 0.07 by hand, 0.001 by a light gate
pendulum-amplitude = Swings out to
pendulum-amplitude-hint = To either side, half way through
pendulum-gravity = Gravity
pendulum-gravity-hint = 9.780 at the equator to 9.832 at the poles; every 0.1 % is 0.1 % of the inertia

time-fault-not-a-time = “{ $typed }” is not the time of a number of swings
    .next = Enter seconds, with how many swings they are of: 18.81/10; with another pivot 18.2/10 @ 100 mm

arrival-fault-period-alone = a timed swing says nothing without the mass and the swing weight of the club
    .next = Enter these too
