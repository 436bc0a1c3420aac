### What the shop has learned

# What is refused of the learned values.
learned-fault-unknown = unter „{ $key }“ ist nichts gelernt
    .next =
        { $known ->
            [none] Zuerst einen Auftrag fertigstellen: Die Werkstatt lernt aus seinen Messwerten
           *[other] Bekannt sind { $known }
        }

# What is refused of changing what the shop has learned.
learning-fault-nothing = die Werkstatt hat noch nichts gelernt
    .next = Zuerst einen Auftrag fertigstellen: Aus seinen Messwerten lernt sie

# What is refused of a figure that a builder says.
told-fault-one-figure = { $of }: genau ein Wert ist nötig
    .next = In Punkten eingeben, was dazukommt oder was wegfällt: Eine Klebestelle bringt 0.75, ein Griff nimmt 9.5
told-fault-puts-on = { $of } kann nicht { POINTS($points, digits: 2) } bringen: sitzt am Butt-Ende hinter dem Drehpunkt und nimmt Schwunggewicht weg
    .next = Den Wert als das eingeben, was wegfällt
told-fault-takes-off = { $of } kann nicht { POINTS($points, digits: 2) } nehmen: sitzt am Kopf und bringt Schwunggewicht
    .next = Den Wert als das eingeben, was dazukommt
told-fault-limits = { $of }: { $points } ist nicht möglich, erlaubt ist { $least_points } bis { $most_points }
    .next = Eingeben, was ein Stück davon an einem Schläger ausmacht, in Punkten Schwunggewicht: zum Beispiel 0.75 für eine Klebestelle, 9.5 für einen Griff, 0.25 für eine Lage, 0.6 für eine Ferrule
told-fault-unknown-model = { $of }: Das Modell „{ $model }“ gibt es nicht
    .next =
        { $known ->
            [none] Das Modell zuerst unter Lager anlegen
           *[other] Möglich sind { $known }
        }
told-fault-no-model = { $of }: Das Modell fehlt
    .next =
        { $known ->
            [none] Das Modell zuerst unter Lager anlegen
           *[other] Den Code eingeben, möglich sind { $known }
        }
told-fault-not-told = { $of }, Modell „{ $model }“: Dazu ist kein Vorwissen angegeben
    .next = Unter Gelernt steht, was angegeben ist

# What a learned value is of.
learned-what-head-centre = { $head }: Schwerpunkt des Kopfs jenseits des Bodenpunkts
learned-what-grip-centre = { $grip }: Schwerpunkt des Griffs, von der Griffkappe
learned-what-cap = { $grip }: Dicke der Griffkappe
learned-what-shaft-centre = { $shaft }: Balancepunkt des abgelängten Schafts gegen seine Massenlinie
learned-what-shaft-cut = { $shaft }: Masse des Abschnitts gegen die Massenlinie
learned-what-shaft-stiffness = { $shaft }: Biegesteifigkeit gegen die Tabelle oder gegen Masse und Durchmesser
learned-what-shaft-tilt = { $shaft }: wie viel steifer zum Tip hin als danach
learned-what-clamp-gives = Einspannung zur Frequenzmessung: wie viel länger ein Schaft darin wirkt, als er ist
learned-what-grip-gives = dasselbe mit Griff in der Einspannung, zusätzlich
learned-what-joint = { $adhesive }: Kleber in einer Klebestelle
learned-what-tape-mass = { $tape }: Masse des Bands gegen das Modell
learned-what-solvent = Lösemittel, das in einem frischen Griff bleibt
learned-what-scale-offset = { $scale }: zeigt zu viel um
learned-what-scale-noise = { $scale }: von einem Messwert zum nächsten
learned-what-scale-today = { $scale }: von einem Tag zum nächsten
learned-what-scale-drift = { $scale }: von morgens bis abends
learned-what-hand = Messwerte von { $name } gegen die der Werkstatt
learned-what-told = { $name }: was dazukommt oder wegfällt ({ $of })
learned-what-scatter = { $of }
learned-what-unknown = { $key }, aus einer anderen Version des Programms

# The page.
learned-title = Gelernt
learned-changed = zuletzt geändert { $changed_at }
learned-kept = Gespeichert.
learned-kept-next = Offene Aufträge rechnen ab jetzt damit.
learned-empty = Die Werkstatt hat noch nichts gelernt.
learned-empty-next = Sie lernt aus den Messwerten jedes fertigen Auftrags: wie schwer Klebestellen und Band sind, wo Köpfe und Griffe ihren Schwerpunkt haben, wie weit die Waagen daneben liegen. Bauen Sie einen Auftrag zu Ende; für den nächsten ist die Vorhersage schon genauer.
learned-open-bench = Werkbank
learned-about = Was frühere Aufträge gezeigt haben und womit der nächste beginnt. „±“ heißt: Der wahre Wert liegt in 95 von 100 Fällen darin. Die Linie im Bild zeigt, womit eine neue Werkstatt beginnt.
learned-group-glue = Kleber und Band
learned-group-heads = Köpfe und Schäfte
learned-group-grips = Griffe
learned-group-scales = Waagen
learned-group-other = Aus einer anderen Version
learned-locked = gesperrt
learned-of-model = { $difference } gegen den Wert des Modells. Eine neue Werkstatt beginnt mit ± { $new_shop }.
learned-of-new-shop = Eine neue Werkstatt beginnt mit ± { $new_shop }.
learned-from =
    { $clubs ->
        [one] Aus 1 Schläger gelernt.
       *[other]
            { $jobs ->
                [one] Aus { $clubs } Schlägern in 1 Auftrag gelernt.
               *[other] Aus { $clubs } Schlägern in { $jobs } Aufträgen gelernt.
            }
    }
learned-picture = { $what }: woher der Wert kommt
learned-picture-job = Auftrag { $job }
learned-which = Welche Schläger
learned-which-job = <a>Auftrag { $job }</a>: { $clubs }
learned-change = Zurücksetzen oder sperren
learned-why = Warum
learned-why-hint = Kommt in den Verlauf
learned-reset = Zurücksetzen
learned-lock = Sperren
learned-unlock = Entsperren
learned-change-hint = Ein gesperrter Wert gilt, wie er ist, und lernt nichts dazu. Ein zurückgesetzter Wert beginnt wie in einer neuen Werkstatt.
learned-scatter = Streuung
learned-scatter-about = Etwa zwei von drei liegen innerhalb. Je kleiner, desto genauer die Vorhersage.
learned-scatter-of =
    { $n ->
        [one] Eine neue Werkstatt beginnt mit { $new_shop }. Aus 1 Messwert.
       *[other] Eine neue Werkstatt beginnt mit { $new_shop }. Aus { $n } Messwerten.
    }
learned-column-what = was
learned-column-now = jetzt
learned-column-new-shop = neue Werkstatt
learned-column-readings = zählt wie … Messwerte
learned-column-from = woher
learned-column-change = ändern
learned-history = Verlauf
learned-history-job = <a>Auftrag { $job }</a> fertig
learned-history-value = <strong>{ CAPITAL($cause) }</strong>: { $what }
learned-history-all = <strong>{ CAPITAL($cause) }</strong>: alles
learned-history-reason = , Grund: „{ $reason }“
learned-history-by = { $by }, { $changed_at }
learned-all = Wie eine neue Werkstatt beginnen
learned-all-about = Alle Werte gehen auf den Anfang einer neuen Werkstatt zurück, auch die gesperrten. Der Verlauf bleibt.
learned-all-hint = Zum Beispiel: umgezogen, alle Waagen neu
learned-reset-all = Alles zurücksetzen
learned-no-button = keine Aktion gewählt
learned-no-button-next = Einen der Knöpfe neben dem Wert drücken

# The command.
learned-command-empty = Die Werkstatt hat noch nichts gelernt. Sie lernt aus den Messwerten jedes fertigen Auftrags.
learned-command-column-mean = Mittelwert
learned-command-column-key = Schlüssel
learned-command-column-clubs = Schläger in Aufträgen
learned-command-column-scatter = was streut
learned-command-clubs = { $clubs } in { $jobs }

# The command that tells how capable the shop is.
learned-capability-none = Noch kein Schläger ist fertig: Jeder fertige zählt mit dem, was in seiner Akte steht.
learned-capability-index = { $index } ({ $low } bis { $high })
learned-capability-too-few = zu wenige
learned-capability-column-clubs = Schläger
learned-capability-column-mean = im Mittel daneben
learned-capability-column-in = in der Toleranz
learned-capability-column-close = zu knapp
learned-capability-column-out = außerhalb
learned-capability-column-cp = Cp
learned-capability-column-cpk = Cpk

# What a builder knows of his shop.
told-title = Vorwissen
told-about = Was Klebestelle, Griff, Lage und Ferrule in Ihrer Werkstatt am Schwunggewicht eines mittleren Eisens ausmachen. Die Angabe zählt in jeder Vorhersage wie ein Messwert; sagen Ihre Schläger später etwas anderes, gehen sie vor. Zurückgezogen ist sie, als hätte es sie nie gegeben.
told-say = Vorwissen angeben
told-say-more = Ändern oder mehr angeben
told-hint = In Punkten Schwunggewicht, wie Sie damit arbeiten. Was Sie nicht wissen, leer lassen.
told-keep = Speichern
told-skip = Überspringen: keine Werte
told-withdraw = Zurückziehen
told-of = { CAPITAL($of) }: { $name }
told-puts-on = bringt { $by_points }
told-takes-off = nimmt { $by_points }
told-sure = { $sure } (± { PLAIN($sd_points, digits: 2) })
told-by = von { $by }, { $told_at }
told-learned = { $learned_points } ± { PLAIN($band_points, digits: 2) }
told-learned-change = { $change } ± { PLAIN($band_points, digits: 2) }
told-nothing-learned = noch nichts
told-nothing-typed = Mindestens einen Wert eingeben, zum Beispiel 0.75 für eine Klebestelle, oder die Frage überspringen.
told-column-of = Teil
told-column-model = Modell
told-column-said = angegeben
told-column-learned = nach Ihren Schlägern
told-column-models = nach den Modellen
told-form-joint-points = Eine Klebestelle bringt
told-form-joint-sure = Klebestelle: wie sicher
told-form-joint-model = Kleber
told-form-grip-points = Ein Griff nimmt
told-form-grip-sure = Griff: wie sicher
told-form-grip-model = Griff
told-form-wrap-points = Eine Lage Griffband nimmt
told-form-wrap-sure = Lage: wie sicher
told-form-wrap-model = Griffband
told-form-ferrule-points = Eine Ferrule bringt
told-form-ferrule-sure = Ferrule: wie sicher
told-form-ferrule-model = Ferrule
