### Swing inertia, and the pendulum that it is timed with

swing-inertia-stands = Trägheitsmoment { $inertia }
swing-inertia-asked = Das Blatt verlangt { $asked } ± { $tolerance }; das Schwunggewicht ergibt sich daraus.
swing-inertia-hang =
    { $n ->
        [one] { $pivot_mm } von der Griffkappe aufhängen, etwa 5° schwingen lassen und eine Schwingung stoppen, hin und zurück: etwa { $all } s.
       *[other] { $pivot_mm } von der Griffkappe aufhängen, etwa 5° schwingen lassen und { $n } Schwingungen stoppen, hin und zurück: etwa { $all } s.
    }
plan-inertia = Trägheitsmoment { PLAIN($value_kg_cm2, digits: 0) } ± { PLAIN($band_kg_cm2, digits: 0) } kg·cm²

pendulum-title = Pendel
pendulum-pivot = Drehachse
pendulum-pivot-hint = Wo der Schläger hängt, von der Außenseite der Griffkappe; negativ oberhalb der Kappe
pendulum-swings = Gestoppte Schwingungen
pendulum-swings-hint = Ganze Schwingungen, hin und zurück; je mehr, desto genauer das Trägheitsmoment
pendulum-time-sd = Zeit genau auf
pendulum-time-sd-hint = Aller Schwingungen zusammen: etwa 0.07 von Hand, 0.001 mit Lichtschranke
pendulum-amplitude = Ausschlag
pendulum-amplitude-hint = Nach jeder Seite, in der Mitte der Messung
pendulum-gravity = Fallbeschleunigung
pendulum-gravity-hint = 9.780 am Äquator bis 9.832 an den Polen; je 0,1 % ändert das Trägheitsmoment um 0,1 %

time-fault-not-a-time = „{ $typed }“ ist keine Zeit für eine Anzahl Schwingungen
    .next = Sekunden eingeben und dazu, für wie viele Schwingungen: 18.81/10; mit anderer Drehachse 18.2/10 @ 100 mm

arrival-fault-period-alone = eine gestoppte Schwingung sagt nichts ohne Masse und Schwunggewicht des Schlägers
    .next = Beides dazu eingeben
