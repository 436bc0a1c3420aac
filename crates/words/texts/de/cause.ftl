### What may be behind a doubted reading

cause-nothing-wrong = alles in Ordnung, nur ein seltener Messwert
cause-neighbour-head = der Kopf von { $found } sitzt auf { $own }
cause-other-head = ein anderer Kopf als geplant ({ $club })
cause-mass-noted = beim Einwiegen falsch notierte Masse: { $part }
cause-film-on = am Kopf klebt noch Folie oder ein Etikett
cause-head-not-seated = der Kopf sitzt nicht auf
cause-tip-not-seated = das Gewicht steht aus dem Tip heraus und hält den Kopf ab
cause-screw-heavier = die Schraube im Kopf ist { $by_g } zu schwer
cause-screw-lighter = die Schraube im Kopf ist { $by_g } zu leicht
cause-ferrule-missing = die Ferrule ist nicht drauf
cause-tip-left-out = das Tip-Gewicht fehlt ({ $planned_g })
cause-tip-swapped = im Tip stecken { $found_g } statt { $planned_g }
cause-tip-added = im Tip stecken { $found_g }, er sollte leer sein
cause-other-grip = ein anderer Griff als geplant ist drauf
cause-cap-missing = der Griff hat keine Kappe
cause-grip-not-home = der Griff ist nicht ganz aufgeschoben
cause-grip-off = der Griff ist nicht drauf
cause-grip-on = der Griff ist schon drauf
cause-strip-more = ein Streifen Griffband zu viel ist unter dem Griff
cause-strip-less = ein Streifen Griffband fehlt unter dem Griff
cause-solvent-in = im Griff ist noch Lösemittel
cause-shaft-long = der Schaft ist { LENGTH($by_mm, digits: 2) } zu lang
cause-shaft-short = der Schaft ist { LENGTH($by_mm, digits: 2) } zu kurz
cause-other-shaft = ein anderer Schaft als geplant
cause-butt-off-stop = das Butt-Ende lag nicht am Anschlag
cause-scale-not-zeroed = die Waage stand nicht auf null
cause-scale-off-zero =
    { $n ->
        [one] die Waage stand bei einem Messwert nicht auf null
       *[other] die Waage stand bei { $n } Messwerten nacheinander nicht auf null
    }
cause-ferrule-was-off = bei einem früheren Messwert war die Ferrule nicht drauf, jetzt ist sie es
cause-heads-exchanged = die Köpfe von { $first } und { $second } sind vertauscht
cause-grips-exchanged = die Griffe von { $first } und { $second } sind vertauscht
cause-tips-exchanged = die Tip-Gewichte von { $first } und { $second } sind vertauscht
cause-joints-heavy = alle Klebestellen dieses Satzes sind etwa { $by_g } schwerer als üblich
cause-joints-light = alle Klebestellen dieses Satzes sind etwa { $by_g } leichter als üblich
cause-clamped-short = der Butt war zu kurz eingespannt
cause-clamped-deep = der Butt war zu weit eingespannt
cause-tip-trim-more = am Tip ist { LENGTH($by_mm, digits: 2) } zu viel ab
cause-tip-trim-less = am Tip ist { LENGTH($by_mm, digits: 2) } zu wenig ab
cause-shaft-of-club = in diesem Schläger steckt der Schaft von { $club }
cause-stiffer-shaft = ein Schaft mit steiferem Flex als geplant
cause-softer-shaft = ein Schaft mit weicherem Flex als geplant
cause-raw-noted = die Frequenz des Rohschafts wurde beim Eingang falsch notiert
cause-head-loose = der Kopf sitzt nicht fest auf dem Schaft
cause-digits-swapped = zwei Ziffern sind vertauscht, gemeint war { $meant }
cause-swings-miscounted = eine Schwingung zu viel oder zu wenig gezählt, gemeint war { $meant }
cause-other-unit = es war eine andere Einheit, gemeint war { $meant }
cause-misread = falsch abgelesen, gemeint war { $meant }
cause-else-reading = etwas anderes an diesem Messwert
cause-else-club = etwas anderes an diesem Schläger
cause-both = { $first }, und { $second }

# What to do about it.
cause-to-do-seat-again = Schläger neu auflegen und noch einmal messen.
cause-to-do-look-over = Schläger vom Butt bis zum Kopf durchsehen, dann noch einmal messen.
cause-to-do-take-head = Nummer auf der Sohle lesen; den geplanten Kopf nehmen.
cause-to-do-take-part = Code des Teils mit der Laufkarte vergleichen; das geplante Teil nehmen.
cause-to-do-correct-mass = Code des Teils mit der Laufkarte vergleichen. Ist es das geplante Teil, seine Masse im Lager berichtigen.
cause-to-do-fill-tip = Kopf abnehmen und das Gewicht in den Tip setzen.
cause-to-do-weigh-tip = Kopf abnehmen und wiegen, was im Tip steckt.
cause-to-do-glued-tip = Der Schläger ist geklebt: außen ausgleichen oder den Kopf mit Hitze abziehen.
cause-to-do-push-tip = Kopf abnehmen und das Gewicht ganz in den Tip schieben.
cause-to-do-push-head = Kopf bis auf den Sitz schieben, bis zur Marke am Schaft.
cause-to-do-glued-head = Der Schläger ist geklebt: Länge messen; stimmt sie nicht, den Kopf mit Hitze abziehen.
cause-to-do-put-ferrule = Ferrule aufstecken.
cause-to-do-glued-ferrule = Wurde ohne Ferrule geklebt, bei diesem Messwert den Haken bei „Ferrule aufgesteckt“ entfernen oder den Kopf mit Hitze abziehen.
cause-to-do-peel = Folie und Etikett vom Kopf abziehen.
cause-to-do-dry = Griff trocknen lassen, dann noch einmal messen.
cause-to-do-push-butt = Butt-Ende an den Anschlag schieben und noch einmal messen.
cause-to-do-enter-at-its-step = Messwert zurücknehmen und beim Schritt mit Griff eingeben.
cause-to-do-put-grip = Griff aufziehen oder den Messwert beim Schritt ohne Griff eingeben.
cause-to-do-look-at-cap = Griffende ansehen; fehlt die Kappe, einen anderen Griff aufziehen.
cause-to-do-push-grip = Das Schaftende unter der Kappe ertasten; Griff ganz aufschieben, solange er noch rutscht.
cause-to-do-compare-grip = Code des Griffs mit der Laufkarte vergleichen und die Streifen Griffband zählen.
cause-to-do-cut-shaft = Schaft messen und ablängen.
cause-to-do-longer-shaft = Schaft messen; ist er zu kurz, einen anderen Rohschaft nehmen oder am Butt verlängern.
cause-to-do-extend-shaft = Länge messen; ist der Schaft zu kurz, am Butt verlängern.
cause-to-do-zero-scale = Leere Waage auf null stellen, dann noch einmal messen.
cause-to-do-zero-scale-read-run =
    { $n ->
        [one] Leere Waage auf null stellen, dann diesen Messwert neu nehmen.
       *[other] Leere Waage auf null stellen, dann diese { $n } Messwerte neu nehmen.
    }
cause-to-do-take-back-without-ferrule = Den Messwert zurücknehmen, bei dem die Ferrule noch fehlte, oder ihn ohne Haken bei „Ferrule aufgesteckt“ eingeben.
cause-to-do-exchange-heads = Die beiden Köpfe tauschen, dann beide Schläger noch einmal messen.
cause-to-do-glued-heads = Nummern auf beiden Sohlen lesen. Ein geklebter Kopf geht nur mit Hitze ab.
cause-to-do-exchange-grips = Die beiden Griffe tauschen, solange sie noch rutschen, oder beide Schläger mit den aufgezogenen Griffen planen.
cause-to-do-exchange-tips = Beide Köpfe abnehmen, die beiden Tip-Gewichte tauschen, dann beide Schläger noch einmal messen.
cause-to-do-glued-tips = Beide Schläger wiegen. Ist einer geklebt, das Gewicht außen ausgleichen oder den Kopf mit Hitze abziehen.
cause-to-do-believe-joints = Die Messwerte so lassen: Die noch offenen Schläger werden damit geplant.
cause-to-do-time-again = Schläger neu aufhängen und die Schwingungen laut ab null zählen: Der erste Durchgang startet nur die Uhr.
cause-to-do-look-at-display = Noch einmal auf die Anzeige sehen; die Eingabe berichtigen, falls sie vertippt war.
cause-to-do-take-screw = Kennzeichnung der Schraube lesen; die geplante einsetzen.
cause-to-do-clamp-again = Butt-Ende bis an den Anschlag schieben, Schläger neu einspannen und noch einmal messen.
cause-to-do-measure-tip = Von der ersten Stufe oder vom Etikett bis zum Tip-Ende messen; was am Tip zu viel ab ist, bleibt ab: einen anderen Schaft nehmen.
cause-to-do-compare-shaft = Etikett des Schafts mit der Laufkarte vergleichen; den geplanten Schaft nehmen.
cause-to-do-correct-raw = Etikett des Schafts mit der Laufkarte vergleichen. Ist es der geplante Schaft, seine Frequenz im Lager berichtigen.
cause-to-do-firm-head = Kopf bis zur Marke schieben, bis nichts mehr klappert, dann noch einmal messen.
cause-to-do-glued-loose = Kopf von Hand drehen: Bewegt er sich, mit Hitze abziehen und neu kleben.
cause-to-do-both = { $first } { $second }

# What is likely.
likely-most = Am wahrscheinlichsten: { CAPITAL($cause) } ({ $odds }). { $to_do }
likely-maybe = Vielleicht: { CAPITAL($cause) } ({ $odds }). { $to_do }
likely-one-of-two = Vielleicht: { CAPITAL($first) } ({ $first_odds }) – oder { $second } ({ $second_odds }).

# The heading over the causes on the bench's screen.
cause-title = Was dahinterstecken kann

# The measurement that tells the causes apart.
telling-head-mass = Zur Klärung: Kopf wiegen.
telling-head-mass-assembled = Zur Klärung: Kopf abnehmen und wiegen.
telling-shaft-mass = Zur Klärung: Schaft wiegen.
telling-shaft-mass-assembled = Zur Klärung: Kopf abnehmen und Schaft wiegen.
telling-grip-mass = Zur Klärung: Griff wiegen.
telling-total-mass = Zur Klärung: Schläger wiegen, wie er jetzt ist.
telling-swing-weight = Zur Klärung: Schläger mit dem Butt-Ende am Anschlag neu auflegen und das Schwunggewicht noch einmal messen.
telling-shaft-length = Zur Klärung: Schaft messen.
telling-shaft-length-assembled = Zur Klärung: Kopf abnehmen und Schaft messen.
telling-finished-length = Zur Klärung: Länge bis zur Griffkappe messen.
telling-balance-point = Zur Klärung: Balancepunkt des Schlägers auf einer Kante suchen.
telling-check-weight = Zur Klärung: Prüfgewicht auf die Waage legen.
telling-empty-scale = Zur Klärung: Auf die leere Waage sehen. Zeigt sie null?
telling-ferrule-on = Zur Klärung: Auf den Tip sehen. Ist die Ferrule drauf?
telling-head-number = Zur Klärung: Auf die Sohle sehen. Ist es die Nummer dieses Schlägers?
telling-clamp-again = Zur Klärung: Schläger mit dem Butt-Ende am Anschlag neu einspannen und die Frequenz noch einmal messen.
telling-again = Zur Klärung: Noch einmal messen.

# What the command line says.
cause-none-doubted = Kein Messwert dieses Schlägers ist angezweifelt.
cause-doubted-reading = { $step }, { $what }: { $typed } ist angezweifelt.
cause-line = { $odds }: { CAPITAL($cause) }. { $to_do }
