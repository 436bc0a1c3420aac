### Part life

# What is refused of what is done with a part.
deed-fault-stale = { $code } wurde inzwischen an einem anderen Bildschirm geändert
    .next = Nichts wurde geändert. Den neuen Stand ansehen, dann noch einmal eingeben
deed-fault-not-of-deed = { $field } passt nicht zu „{ $deed }“
    .next = Weglassen oder das wählen, wozu es gehört
deed-fault-no-club = zur Reservierung fehlt der Schläger
    .next = Auftrag und Platz im Sortierkasten angeben
deed-fault-in-no-job = { $code } ist { $state } und in keinem Auftrag
    .next = Nichts zu tun
deed-fault-not-aside = { $code } ist { $state } und wurde nicht beiseitegelegt
    .next = Nichts zu tun
deed-fault-mass-changed = { $code } wurde aus einem Schläger ausgebaut, die Masse stimmt nicht mehr
    .next = Kleber entfernen, wiegen und die Masse angeben
deed-fault-same-figures = { $code } hat diese Werte schon
    .next = Stattdessen die richtigen angeben
deed-fault-in-no-club = { $code } ist { $state } und in keinem Schläger
    .next = Das ausgebaute Teil scannen oder die Masse berichtigen
deed-fault-not-glued = { $code } ist für { $club } reserviert und noch nicht geklebt
    .next = Stattdessen zurück ins Regal legen
deed-fault-only-reserved = { $code } ist nur reserviert
    .next = Stattdessen zurück ins Regal legen
deed-fault-no-mass = { $code } geht zurück ins Regal, das jetzige Gewicht fehlt
    .next = Ohne alten Kleber wiegen und die Masse angeben
deed-fault-box = { $code } ist eine Schachtel
    .next = Neu zählen, wenn die Anzahl nicht stimmt
deed-fault-cut-already = { $code } ist schon für { $club } abgelängt
    .next = Als falsch gekürzt eintragen, mit jetziger Länge und Masse
deed-fault-used = { $code } ist verbaut und in keinem Auftrag
    .next = Das Teil steckt in einem Schläger: dort zuerst ausbauen
deed-fault-gripped = { $code } ist fest verbaut in { $club }: Der Griff ist aufgezogen
    .next = Aus dem Schläger ausbauen: Damit wird er zerlegt
deed-fault-glued = { $code } ist fest verbaut in { $club }: Es ist geklebt
    .next = Aus dem Schläger ausbauen: Damit wird er zerlegt
deed-fault-not-free =
    { $club ->
        [none] { $code } ist { $state }
       *[other] { $code } ist { $state } für { $club }
    }
deed-fault-in-club = { $code } ist verbaut in { $club }
    .next = Zuerst aus dem Schläger ausbauen
deed-fault-club-of = Schläger { $number } aus Auftrag { $job }
deed-fault-would-take-apart = { $code } ist { $state } für { $club }
    .next = An der Werkbank ein anderes Teil dafür nehmen oder bestätigen, dass Schläger { $number } zerlegt wird
deed-fault-would-replan = { $code } ist { $state } für { $club }
    .next = An der Werkbank ein anderes Teil dafür nehmen oder bestätigen, dass Schläger { $number } neu geplant wird
deed-fault-pull-first = Zuerst aus dem Schläger ausbauen
deed-fault-give-back-first = Zuerst zurück ins Regal legen
deed-fault-aside-already = Liegt schon beiseite
deed-fault-clean-first = Zuerst reinigen, wiegen und wieder ins Lager nehmen
deed-fault-book-in-first = Zuerst den Eingang buchen
deed-fault-box-empty = Die Schachtel ist leer: neu zählen
deed-fault-job-not-under-way = Auftrag { $job } läuft nicht ({ $state })
    .next = Einen laufenden Auftrag wählen
deed-fault-planned = Schläger { $number } aus Auftrag { $job } hat schon einen Plan
    .next = Das Teil an der Werkbank für ein geplantes einsetzen
deed-fault-misfit =
    { $number ->
        [none] { $code } passt nicht ({ $kind } { $model }): { $club } aus Auftrag { $job } verlangt etwas anderes
       *[other] { $code } passt nicht ({ $kind } { $model } { $number }): { $club } aus Auftrag { $job } verlangt etwas anderes
    }
    .next = Ein Teil mit Modell und Nummer dieses Schlägers wählen
deed-fault-reserved-already = { $code } ist schon reserviert, für { $club } aus Auftrag { $job }
    .next = Zuerst zurück ins Regal legen
deed-fault-box-reserved = { $code } ist eine Schachtel: Ihre Stücke werden entnommen, wenn ein Plan angenommen wird
    .next = Nur einzelne Teile reservieren
deed-fault-not-cut = { $code } ({ $kind }) wird nicht gekürzt
    .next = Den Schaft scannen
deed-fault-no-length = die jetzige Länge von { $code } fehlt
    .next = Messen und die Länge angeben
deed-fault-not-a-cut = { $code } war { $before_mm } lang; { $length_mm } mit { $tip_mm } am Tip ab lassen sich daraus nicht schneiden
    .next = Noch einmal messen: die jetzige Länge und was davon am Tip abgeschnitten wurde
deed-fault-no-weight = das jetzige Gewicht von { $code } fehlt
    .next = Wiegen und die Masse angeben

# An entry of a part's life. $figures are the figures that changed, or none.
life-came-in =
    { $figures ->
        [none] eingegangen
       *[other] eingegangen: { $figures }
    }
life-restored =
    { $figures ->
        [none] wieder im Lager
       *[other] wieder im Lager: { $figures }
    }
life-corrected =
    { $figures ->
        [none] berichtigt
       *[other] berichtigt: { $figures }
    }
life-cut =
    { $figures ->
        [none] gekürzt
       *[other] gekürzt: { $figures }
    }
life-changed =
    { $figures ->
        [none] geändert
       *[other] geändert: { $figures }
    }
life-held =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] reserviert
                       *[other] reserviert für Auftrag { $job }
                    }
               *[other] reserviert für { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] reserviert: { $figures }
                       *[other] reserviert für Auftrag { $job }: { $figures }
                    }
               *[other] reserviert für { $club } aus Auftrag { $job }: { $figures }
            }
    }
life-freed =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] wieder frei
                       *[other] wieder frei, war für Auftrag { $job }
                    }
               *[other] wieder frei, war für { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] wieder frei: { $figures }
                       *[other] wieder frei, war für Auftrag { $job }: { $figures }
                    }
               *[other] wieder frei, war für { $club } aus Auftrag { $job }: { $figures }
            }
    }
life-used =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] verbaut
                       *[other] verbaut in Auftrag { $job }
                    }
               *[other] verbaut in { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] verbaut: { $figures }
                       *[other] verbaut in Auftrag { $job }: { $figures }
                    }
               *[other] verbaut in { $club } aus Auftrag { $job }: { $figures }
            }
    }
life-returned =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] zurück im Regal
                       *[other] zurück im Regal, war für Auftrag { $job }
                    }
               *[other] zurück im Regal, war für { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] zurück im Regal: { $figures }
                       *[other] zurück im Regal, war für Auftrag { $job }: { $figures }
                    }
               *[other] zurück im Regal, war für { $club } aus Auftrag { $job }: { $figures }
            }
    }
life-pulled =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] aus dem Schläger ausgebaut
                       *[other] ausgebaut, war in Auftrag { $job }
                    }
               *[other] ausgebaut, war in { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] aus dem Schläger ausgebaut: { $figures }
                       *[other] ausgebaut, war in Auftrag { $job }: { $figures }
                    }
               *[other] ausgebaut, war in { $club } aus Auftrag { $job }: { $figures }
            }
    }
life-scrapped =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] ausgemustert
                       *[other] ausgemustert, war für Auftrag { $job }
                    }
               *[other] ausgemustert, war für { $club } aus Auftrag { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] ausgemustert: { $figures }
                       *[other] ausgemustert, war für Auftrag { $job }: { $figures }
                    }
               *[other] ausgemustert, war für { $club } aus Auftrag { $job }: { $figures }
            }
    }

# A figure of a part before and after: a new one, a changed one, one that is no longer known.
life-figure-mass =
    { $from_g ->
        [none] { $name } { $to_g }
       *[other]
            { $to_g ->
                [none] { $name } { $from_g }, nicht mehr bekannt
               *[other] { $name } { $from_g }, jetzt { $to_g }
            }
    }
life-figure-length =
    { $from_mm ->
        [none] { $name } { $to_mm }
       *[other]
            { $to_mm ->
                [none] { $name } { $from_mm }, nicht mehr bekannt
               *[other] { $name } { $from_mm }, jetzt { $to_mm }
            }
    }
life-figure-frequency =
    { $from_cpm ->
        [none] { $name } { $to_cpm }
       *[other]
            { $to_cpm ->
                [none] { $name } { $from_cpm }, nicht mehr bekannt
               *[other] { $name } { $from_cpm }, jetzt { $to_cpm }
            }
    }
life-figure-angle =
    { $from_deg ->
        [none] { $name } { $to_deg }
       *[other]
            { $to_deg ->
                [none] { $name } { $from_deg }, nicht mehr bekannt
               *[other] { $name } { $from_deg }, jetzt { $to_deg }
            }
    }
life-figure-plain =
    { $from ->
        [none] { $name } { $to }
       *[other]
            { $to ->
                [none] { $name } { $from }, nicht mehr bekannt
               *[other] { $name } { $from }, jetzt { $to }
            }
    }

# The page: who has the part, and what can be done with it.
part-life-title = Lebenslauf
part-life-csv = CSV
part-life-nothing = Noch nichts eingetragen.
part-life-in-club = Verbaut in <strong>{ $club }</strong> aus <a>Auftrag { $job }</a>.
part-life-for-club =
    { $slot ->
        [none] für { $club } aus <a>Auftrag { $job }</a>
       *[other] für { $club } aus <a>Auftrag { $job }</a>, Platz { $slot } im Sortierkasten
    }
part-life-reserve = Für einen Schläger reservieren
part-life-do-reserve = Reservieren
part-life-return = Zurück ins Regal legen
part-life-do-return = Ins Regal
part-life-restore = Ins Lager nehmen
part-life-do-restore = Ins Lager
part-life-pull = Aus dem Schläger ausgebaut
part-life-do-pull = Ausbau eintragen
part-life-miscut = Falsch gekürzt
part-life-do-miscut = Schnitt eintragen
part-life-use = Ohne Auftrag in einem Schläger verbaut
part-life-do-use = Einbau eintragen
part-life-scrap = Teil ausmustern
part-life-do-scrap = Ausmustern
part-life-mass = Masse jetzt
part-life-length = Länge jetzt
part-life-place = Platz jetzt
part-life-why = Grund
part-life-why-required = Grund (nötig)
part-life-off-tip = Davon am Tip abgeschnitten
part-life-off-tip-hint = Leer: alles am Butt
part-life-clean = Ohne Kleber, gewogen und in Ordnung: zurück ins Lager
part-life-lose-plan = Der Schläger verliert seinen Plan und wartet auf einen neuen; Grund angeben
part-life-take-apart = Der Schläger wird zerlegt und wartet auf einen neuen Plan; Grund angeben
part-life-for = Für
part-life-for-hint = Der Plan nimmt dann dieses Teil
part-life-club = Auftrag { $job }, Schläger { $number } (Platz { $slot })
part-life-no-deed = Keine Aktion gewählt
part-life-not-changed = Nichts wurde geändert. Zurückgehen und noch einmal eingeben
part-life-see = Zum Teil

# What the command prints over the life.
part-life-line =
    { $number ->
        [none] { $code }: { $kind } { $model }
       *[other] { $code }: { $kind } { $model } { $number }
    }, { $mass_g ->
        [none] nicht gewogen
       *[other] { $mass_g }
    }, { $club ->
        [none] { $state }
       *[other] { $state }, { $club } aus Auftrag { $job }
    }
