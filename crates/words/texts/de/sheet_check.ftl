### What the check of a sheet finds

# The sheet as a whole, and its clubs against each other. The club that a finding is about is shown before it.
sheet-check-too-many-clubs = { $n } Schläger sind mehr, als auf ein Blatt passen
sheet-check-no-player = der Spieler fehlt
sheet-check-no-clubs = auf dem Blatt stehen keine Schläger
sheet-check-overdue =
    { $n ->
        [one] der Termin war gestern, { $due_on }
       *[other] der Termin war { $due_on }, vor { $n } Tagen
    }
sheet-check-more-than-played = auf dem Blatt stehen { $n } Schläger; ein Spieler darf höchstens { $most } mitführen
sheet-check-no-such-number = { $head } hat keine Nummer { $number }
sheet-check-tolerance-too-fine = ±{ POINTS($tolerance_points, digits: 2) } ist feiner, als { $scale } unterscheiden kann; ein Messwert ist nur auf ±{ POINTS($reading_points, digits: 2) } sicher
sheet-check-tolerance-too-wide = ±{ $tolerance_points } merkt jeder Spieler
sheet-check-twice = dieser Schläger steht zweimal auf dem Blatt
sheet-check-mixed-ends = die Länge von { $one } gilt { $one_to }, die von { $other } { $other_to }
sheet-check-same-loft = mit { $loft_deg } gleicher Loft wie { $other }
sheet-check-loft-order = mit { $loft_deg } stärkerer Loft als { $other } mit { $other_deg }
sheet-check-same-length = mit { $length_mm } gleich lang wie { $other }
sheet-check-length-order = mit { $length_mm } länger als { $other } mit { $other_mm }

# The readings of the reference club.
sheet-reference-no-length-end = offen ist, ob die Länge bis zur Griffkappe oder bis zum Schaftende gilt; der Unterschied ist die Dicke der Griffkappe
sheet-reference-no-scale = zum Schwunggewicht fehlt die Waage; zwei Waagen können um mehr als die Toleranz auseinanderliegen
sheet-reference-no-clamp = zur Frequenz fehlt die Einspannlänge
sheet-reference-read-later = der Messtag { $read_on } liegt noch in der Zukunft
sheet-reference-readings-apart = gemessen wurden { LETTER($first_points) } und { LETTER($other_points) }; so weit liegen zwei Waagen nicht auseinander
sheet-reference-unknown-grip = ein Griffmodell „{ $code }“ gibt es nicht
sheet-reference-coupler = im Schwunggewicht steckt eine Fitting-Kupplung von { $coupler_g }, die der gebaute Schläger nicht hat
sheet-reference-other-swing-weight = gemessen wurde { LETTER($read_points) }, das Blatt verlangt für dieselbe Nummer { LETTER($asked_points) }
sheet-reference-balance-point = der Balancepunkt liegt { $at_mm } von der Griffkappe, bei { $length_mm } Länge; üblich sind etwa drei Viertel der Länge
sheet-reference-contradiction = { $mass_g } mit Balancepunkt { $at_mm } von der Griffkappe ergeben { LETTER($makes_points) }, gemessen wurde aber { LETTER($read_points) }: Unterschied { $apart_points }, die Messwerte erklären ±{ PLAIN($explained_points) } (Masse ±{ PLAIN($of_mass_points, digits: 2) }, Balancepunkt ±{ PLAIN($of_balance_points, digits: 2) }, Waage ±{ PLAIN($of_scale_points, digits: 2) })
sheet-reference-not-one-club = { $mass_g } mit Balancepunkt { $at_mm } von der Griffkappe ergeben { LETTER($makes_points) }, gemessen wurde aber { LETTER($read_points) }: Unterschied { $apart_points }, die Messwerte erklären ±{ PLAIN($explained_points) } (Masse ±{ PLAIN($of_mass_points, digits: 2) }, Balancepunkt ±{ PLAIN($of_balance_points, digits: 2) }, Waage ±{ PLAIN($of_scale_points, digits: 2) }); diese Werte stammen nicht von einem einzigen Schläger

# Whether the models of one club go together.
bore-of-head = { $name }
bore-of-adapter = Adapter { $name }
sheet-fit-wrong-hand = { $head } ist ein Kopf für { $hand }, das Blatt gilt für { $player }
sheet-fit-wrong-kind = { $head } gehört zur Schlägerart { $kind }, auf dem Blatt steht hier { $asked }
sheet-fit-no-adhesive = kein Kleber gewählt, weder hier noch für die Werkstatt
sheet-fit-no-tape = Lagen sind angegeben, aber kein Griffband, weder hier noch für die Werkstatt
sheet-fit-no-base-layer = ohne Grundlage aus Griffband hält der Griff nicht
sheet-fit-many-layers = { $n } Lagen sind mehr, als unter einem Griff üblich sind
sheet-fit-no-adapter-model = { $head } braucht einen Adapter, doch kein Adaptermodell passt
sheet-fit-no-such-setting = beim Adapter von { $head } sind für die Einstellung „{ $setting }“ keine Werte hinterlegt
sheet-fit-tip-too-thick = { $shaft }: der Tip misst { LENGTH($tip_mm, digits: 3) }, die Bohrung ({ $bore }) { LENGTH($bore_mm, digits: 3) }; er geht nicht hinein
sheet-fit-tip-too-thin = { $shaft }: der Tip misst { LENGTH($tip_mm, digits: 3) }, die Bohrung ({ $bore }) { LENGTH($bore_mm, digits: 3) }; { LENGTH($play_mm, digits: 3) } Spiel sind mehr, als der Kleber füllt
sheet-fit-tip-loose = { $shaft }: der Tip misst { LENGTH($tip_mm, digits: 3) }, die Bohrung ({ $bore }) { LENGTH($bore_mm, digits: 3) }; das gibt { LENGTH($play_mm, digits: 3) } Spiel
sheet-fit-taper-trim = { $shaft } hat einen Taper-Tip und eine Tip-Kürzung; Schäfte mit Taper-Tip werden nur am Butt gekürzt
sheet-fit-ferrule-size = { $ferrule } misst innen { LENGTH($inside_mm, digits: 3) }, der Tip { LENGTH($tip_mm, digits: 3) }
sheet-fit-no-blank = { $shaft } hat keinen Rohschaft für { $club }, nur für { $known }
sheet-fit-cannot-be-cut = { $what }
sheet-fit-blank-too-short =
    { $trim_mm ->
        [none] { $shaft }: der Rohschaft ist { $blank_mm } lang, der Schläger braucht { $needed_mm } Schaft; { $short_mm } fehlen
       *[other] { $shaft }: der Rohschaft ist vor der Tip-Kürzung um { $trim_mm } { $blank_mm } lang, der Schläger braucht { $needed_mm } Schaft; { $short_mm } fehlen
    }
sheet-fit-bend-from-stock =
    { $limit_deg ->
        [none] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, und dieser Kopf darf nicht gebogen werden; ein Kopf im Lager liegt nahe genug
       *[other] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, der Hersteller erlaubt { $limit_deg }; ein Kopf im Lager liegt nahe genug
    }
sheet-fit-bend-to-limit =
    { $limit_deg ->
        [none] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, und dieser Kopf darf nicht gebogen werden; so wie er ist, liegt er in der Toleranz
       *[other] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, der Hersteller erlaubt { $limit_deg }; so weit gebogen liegt er in der Toleranz
    }
sheet-fit-bend-too-far =
    { $limit_deg ->
        [none] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, und dieser Kopf darf nicht gebogen werden
       *[other] { $what } { $asked_deg } weicht um { $by_deg } vom Modell ({ $made_deg }) ab, der Hersteller erlaubt { $limit_deg }
    }

# What the stock does not have.
sheet-stock-neighbour-blank = für { $club } ist kein Rohschaft { $shaft } im Lager frei; das Modell erlaubt auch den von { $blanks }
sheet-stock-no-shaft = kein passender Schaft { $shaft } ist im Lager frei
sheet-stock-no-grip = kein Griff { $grip } ist im Lager frei
sheet-stock-no-ferrule = keine Ferrule { $ferrule } ist im Lager frei
sheet-stock-no-adapter = { $head } braucht einen Adapter, im Lager ist keiner frei
sheet-stock-no-head = kein Kopf { $head } für { $club } ist im Lager frei
sheet-stock-heads-too-heavy = das Lager reicht nicht bis { LETTER($asked_points) } hinunter: der leichteste freie Kopf, { $head_g }, ergibt schon ohne Tip-Gewicht { LETTER($reads_points) }
sheet-stock-heads-too-light =
    { $tip_g ->
        [none] das Lager reicht nicht bis { LETTER($asked_points) } hinauf: der schwerste freie Kopf, { $head_g }, ergibt { LETTER($reads_points) }, und kein Tip-Gewicht im Lager passt
       *[other] das Lager reicht nicht bis { LETTER($asked_points) } hinauf: der schwerste freie Kopf, { $head_g }, ergibt mit { $tip_g } im Tip { LETTER($reads_points) }
    }

# What to do.
sheet-next-at-most-clubs = Höchstens { $most } Schläger auf ein Blatt schreiben
sheet-next-name-player = Den Namen des Spielers eintragen
sheet-next-add-club = Mindestens einen eintragen, zum Beispiel mit 5-PW
sheet-next-new-date = Einen neuen Termin vereinbaren, oder so lassen, wenn dieser Tag gemeint ist
sheet-next-some-stay-home = Nichts zu tun, wenn einige zu Hause bleiben
sheet-next-choose-number = Möglich sind { $known }; sonst ein anderes Kopfmodell wählen
sheet-next-measure-as-rules-do = Den fertigen Schläger nach den Golfregeln messen oder unter Lager, Modelle die Sohle des Kopfes eintragen
sheet-next-change-or-tell = Ändern, oder dem Spieler sagen, dass der Schläger eine Grenze der Ausrüstungsregeln überschreitet
sheet-next-allow-more = Mehr zulassen, üblich sind ±0,3 Punkte
sheet-next-allow-less = Weniger zulassen, üblich sind ±0,3 Punkte
sheet-next-correct-reading = Messwert und Einheit berichtigen oder weglassen
sheet-next-name-end = Eintragen, welches von beiden gilt
sheet-next-name-scale = Die Waage eintragen, und den Schläger auf der eigenen messen, sobald er da ist
sheet-next-give-clamp = Die Einspannlänge eintragen
sheet-next-correct-date = Das Datum berichtigen
sheet-next-add-grip-model = Das Modell anlegen, oder statt des Modells die Dicke der Griffkappe eintragen
sheet-next-head-carries-coupler = Ziel bleibt, was der Spieler gespürt hat; diese Masse trägt dann der Kopf
sheet-next-if-fitting-meant-it = Nichts zu tun, wenn es beim Fitting so gemeint war
sheet-next-measure-balance-point = Von der Außenseite der Griffkappe bis zur Kante messen, auf der der Schläger balanciert; beides in derselben Einheit
sheet-next-measure-from-cap = Beides passt zusammen, wenn der Balancepunkt vom Schaftende aus gemessen wurde, also { $cap_mm } innerhalb der Griffkappe: von der Außenseite der Griffkappe messen
sheet-next-read-again = Alle drei noch einmal messen, oder den Wert weglassen, dem Sie nicht trauen
sheet-next-take-one-out = Einen streichen oder ihm die richtige Nummer geben
sheet-next-one-end = Alle Schläger eines Satzes bis zum selben Ende messen
sheet-next-correct-loft = Bei einem der beiden den Loft berichtigen
sheet-next-correct-length = Bei einem der beiden die Länge berichtigen
sheet-next-if-one-length = Nichts zu tun, wenn beide gleich lang sein sollen
sheet-next-choose-hand = Das Modell für die Hand des Spielers wählen, oder die Hand auf dem Blatt berichtigen
sheet-next-write-kind = Als Schlägerart { $kind } angeben oder ein anderes Kopfmodell wählen
sheet-next-name-adhesive = Einen wählen: seine Masse und seine Aushärtezeiten zählen mit
sheet-next-name-tape = Eines wählen: seine Masse zählt mit
sheet-next-if-no-tape = Nichts zu tun, wenn der Griff ohne Band aufgezogen wird
sheet-next-larger-grip = Einen stärkeren Griff wählen, wenn wirklich so viele Lagen gemeint sind
sheet-next-add-adapter = Den Adapter unter Lager, Modelle anlegen
sheet-next-thinner-shaft = Einen Schaft passend zur Bohrung wählen; aufreiben nur in den Grenzen des Kopfherstellers
sheet-next-shaft-of-bore = Einen Schaft passend zur Bohrung wählen
sheet-next-use-shim = Eine Hülse einsetzen oder einen Schaft passend zur Bohrung wählen
sheet-next-take-trim-out = Die Tip-Kürzung aus dem Modell nehmen, außer { $club } soll weicher oder härter werden
sheet-next-ferrule-of-tip = Eine Ferrule passend zum Tip wählen
sheet-next-shaft-with-number = Ein Schaftmodell mit dieser Nummer wählen oder den Rohschaft im Modell ergänzen
sheet-next-longer-blank = Längeren Rohschaft, kleinere Tip-Kürzung oder kürzeren Schläger wählen
sheet-next-plan-measured-head = Mit dem gemessenen Kopf planen
sheet-next-measure-loose-head = Den losen Kopf vor dem Kleben messen
sheet-next-other-head = Eine andere Nummer oder ein anderes Kopfmodell wählen
sheet-next-choose-setting = Möglich sind { $known }
sheet-next-enter-settings = Unter Lager, Modelle eintragen, was jede Einstellung ändert, oder die Einstellung weglassen
sheet-next-set-adapter = Am nächsten liegt die Einstellung „{ $setting }“: diese verlangen oder andere Winkel
sheet-next-bend-less = Weniger verlangen, oder lose Köpfe messen: einer liegt vielleicht ab Werk näher
sheet-next-order-blank = Der Rohschaft der Nachbarnummer ändert den Flex: den richtigen bestellen oder beim Auftrag einen Grund angeben
sheet-next-order = Bestellen
sheet-next-order-shaft = Bestellen oder ein anderes Schaftmodell wählen
sheet-next-order-grip = Bestellen oder ein anderes Griffmodell wählen
sheet-next-order-heads = Köpfe von { PLAIN($from_g) } bis { $to_g } bestellen
sheet-next-order-heads-or-change = Köpfe von { PLAIN($from_g) } bis { $to_g } bestellen, oder Länge, Griff oder Schwunggewicht ändern
sheet-next-correct = Berichtigen
