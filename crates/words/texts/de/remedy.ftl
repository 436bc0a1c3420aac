### What can still be done about a club

# What is refused of something that is added to a finished plan.
extra-fault-no-plan = { $number } hat keinen Plan
    .next = Erst den Auftrag planen
extra-fault-not-added = in einen fertigen Plan lässt sich das nicht einfügen: { $action }
    .next = Dazu nehmen lassen sich lead_tape, powder, counterweight oder screw; für alles andere ein anderes Teil einsetzen

deed-tip = Tip-Gewicht { $tip_g } (jetzt { $now_g })
deed-tip-first = Tip-Gewicht { $tip_g } (Tip jetzt leer)
deed-tip-empty = Kein Tip-Gewicht (jetzt { $now_g })
deed-tip-one-for-two = Ein Tip-Gewicht von { $tip_g } statt zweien
deed-ferrule = Ferrule { $part } ({ $mass_g })
deed-head = Kopf { $part } ({ $mass_g })
deed-adapter = Adapter { $part } ({ $mass_g })
deed-screw = Schraube { $label } ({ $mass_g }) im Kopf
deed-grip = Griff { $part } ({ $mass_g })
deed-grip-of-other = Griff { $part } ({ $mass_g }), reserviert für { $club }: Die beiden Schläger tauschen die Griffe
deed-re-grip = Griff ab, dann { $part } ({ $mass_g }) drauf
deed-lead-tape = { $mass_g } Bleiband auf den Kopf
deed-powder = { $mass_g } Pulver in den Schaft, Stopfen darüber
deed-counterweight = { $mass_g } Gegengewicht in den Butt
deed-lower-hand-tape = Ein Streifen Griffband mehr unter die untere Hand ({ $mass_g }, wenn der Spieler es dort dicker mag)
deed-cut = Noch { LENGTH($by_mm, digits: 2) } am Butt kürzen, bleibt in der Längentoleranz
deed-butt-extension = Butt um { LENGTH($by_mm, digits: 2) } verlängern, bleibt in der Längentoleranz
deed-pull-head = Kopf mit Hitze abziehen, { $tip_g } in den Tip setzen und neu kleben (ist der Tip beschädigt, den Schaft für einen kürzeren Schläger aufheben)

remedy-finish = { $deed }: Endwert { LETTER($finish_points) }, { $chance }
remedy-then-heavier-grip = { $deed }, dann ein schwererer Griff: { $chance }
remedy-then-lighter-grip = { $deed }, dann ein leichterer Griff: { $chance }

# The bench's screen.
remedy-title = Abhilfe
remedy-list = Möglichkeiten, die beste zuerst
# The first line of the list: the same conditions hold for all lines.
remedy-left = So gelassen: { $chance }
remedy-conditions = Jede Chance rechnet die Messungen mit, die noch kommen, und den Griff, der danach ausgesucht wird.
remedy-take = Nehmen
remedy-done = Erledigt

# The command line.
remedy-no-plan = Schläger { $slot } hat noch keinen Plan. Annehmen mit: setwright plan { $job } --accept
remedy-as-planned = Schläger { $slot }: wie geplant, { $chance }.
remedy-grip-for = Griff { $part } ({ $mass_g }) für Schläger { $slot }.
