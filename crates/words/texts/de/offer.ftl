### Extra measurements that are worth their minutes

offer-time-seconds = { $n } Sekunden, die sich lohnen
offer-time-minutes =
    { $n ->
        [one] Eine Minute, die sich lohnt
       *[other] { $n } Minuten, die sich lohnen
    }

offer-gain-half = Das halbiert den Bereich der Vorhersage.
offer-gain-third = Das macht die Vorhersage um ein Drittel enger.
offer-gain-quarter = Das macht die Vorhersage um ein Viertel enger.
offer-gain-sixth = Das macht die Vorhersage um ein Sechstel enger.
offer-gain-tenth = Das macht die Vorhersage um ein Zehntel enger.
offer-gain-twentieth = Das macht die Vorhersage etwas enger.
offer-gain-other-clubs = Das macht die Vorhersagen der anderen Schläger enger.

offer-check-weight = { $time }: Prüfgewicht messen. { $gain }
offer-reference = { $time }: Referenzschläger auf dieser Waage messen. { CAPITAL($last) }. { $gain }
offer-tape = { $time }: Griffband für { $club } wiegen, bevor es draufkommt. { $gain }
offer-grip-centre = { $time }: Griff für { $club } auf einer Kante ausbalancieren und ab Griffkappe messen. { $gain }
offer-cap = { $time }: Griffkappe für { $club } messen. { $gain }
offer-shaft-centre = { $time }: Gekürzten Schaft für { $club } auf einer Kante ausbalancieren und ab Butt-Ende messen. { $gain }
offer-weighed = { $time }: { $club } vor dem Kleben und nach dem Aushärten wiegen. { $gain }
offer-total = { $time }: { $club } wiegen, wie er ist: geklebt und ohne Griff. { $gain }
offer-again = { $time }: { $club } neu auflegen und das Schwunggewicht noch einmal messen. { $gain }
offer-tape-scatter = { $time }: Griffband für { $club } wiegen, bevor es draufkommt. Die Werkstatt lernt noch, wie sehr sich ein Streifen vom nächsten unterscheidet.
offer-grip-centre-scatter = { $time }: Griff für { $club } auf einer Kante ausbalancieren und ab Griffkappe messen. Die Werkstatt lernt noch, wie sehr sich ein Griff vom nächsten unterscheidet.
offer-cap-scatter = { $time }: Griffkappe für { $club } messen. Die Werkstatt lernt noch, wie sehr sich eine Kappe von der nächsten unterscheidet.

# The command line and the screen.
offer-decline = In diesem Auftrag nicht mehr

# Where and when the reference club was read last.
reference-read-here =
    { $n ->
        [one] er wurde hier an einem Tag dieses Auftrags einmal gemessen
       *[other] er wurde hier an Tagen dieses Auftrags { $n }-mal gemessen
    }
reference-read-other-day =
    { $read_on ->
        [none] er wurde auf dieser Waage gemessen, aber ohne Datum, und eine Waage weicht jeden Tag etwas anders ab
       *[other] er wurde am { $read_on } auf dieser Waage gemessen, und eine Waage weicht jeden Tag etwas anders ab
    }
reference-read-other-scale =
    { $read_on ->
        [none] er wurde auf einer anderen Waage gemessen („{ $scale }“), die anders abweichen kann als diese
       *[other] er wurde am { $read_on } auf einer anderen Waage gemessen („{ $scale }“), die anders abweichen kann als diese
    }
reference-read-known = sein wahres Schwunggewicht steht auf dem Blatt und zeigt, wie weit diese Waage abweicht

# Several measurements together, and the order of work.
bundle-worth =
    { $minutes ->
        [one] Eine Minute messen: statt { PLAIN($before, digits: 1) } voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz
       *[other] { $minutes } Minuten messen: statt { PLAIN($before, digits: 1) } voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz
    }
order-worth-one-cured-first = Einen Schläger kleben und nach dem Aushärten messen, erst dann die anderen kleben: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }
order-worth-one-finished-first = Einen Schläger fertig machen, erst dann die anderen kleben: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }
order-worth-one-one-rest = Einen Schläger fertig machen, dann einen zweiten, erst dann die anderen kleben: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }
order-worth-one-by-one = Jeden Schläger fertig machen, bevor der nächste geklebt wird: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }
order-assumes-usual-joint = Das gilt, wenn Ihre Klebestellen so viel wiegen wie üblich, etwa { $joint_g }. Noch kein Schläger von Ihnen hat das gezeigt: Sagen Sie dem Programm, was eine Klebestelle bei Ihnen ausmacht, oder kleben Sie erst einen Schläger und lassen ihn aushärten.
told-aside-not-used = Vorwissen von { $by } ({ $of }: { POINTS($change_points, digits: 2, signed: 1) }) passt nicht zu dem, was dieser Satz zeigt. Es wird hier nicht verwendet.
order-worth-untried-cured-first =
    Einen Schläger kleben und nach dem Aushärten messen, erst dann die anderen kleben: In dieser Werkstatt wurde noch keine ausgehärtete Klebestelle gemessen, Kleber { $adhesive }. Voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }, wenn die Klebestellen so viel wiegen wie erwartet; sonst steht mehr auf dem Spiel
order-worth-untried-finished-first =
    Einen Schläger fertig machen, erst dann die anderen kleben: In dieser Werkstatt wurde noch keine ausgehärtete Klebestelle gemessen, Kleber { $adhesive }. Voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, mit einem einzigen Ansatz { PLAIN($before, digits: 1) }, wenn die Klebestellen so viel wiegen wie erwartet; sonst steht mehr auf dem Spiel
order-worth-after-bundle = Nach diesen Messungen: { $says }
grip-turns-one-first = Einen Griff aufziehen und den Schläger messen, erst dann die anderen Griffe aussuchen: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, bei Auswahl auf einmal { PLAIN($before, digits: 1) }
grip-turns-in-turn = Jeden Griff aufziehen und den Schläger messen, bevor der nächste ausgesucht wird: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, bei Auswahl auf einmal { PLAIN($before, digits: 1) }
grip-turns-wait-for-solvent = Den Schläger mit dem frischen Griff trocken messen, ab { $dry_at }, erst dann die anderen Griffe aussuchen: voraussichtlich { PLAIN($after, digits: 1) } von { $clubs } Schlägern in der Toleranz, bei Auswahl jetzt { PLAIN($before, digits: 1) }
offer-bundle-part = Eine von { $n } Messungen, die sich zusammen lohnen. { $worth }.
order-insisted = Vor dem Kleben klären.
order-title = Vor dem Kleben
order-title-grips = Reihenfolge der Griffe
order-measure-first = Erst messen
order-decline = Trotzdem in einem Ansatz kleben
