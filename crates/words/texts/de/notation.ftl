### Notation

notation-unreadable =
    { $n ->
        [none] „{ $input }“ ist als { $what } nicht lesbar: { $problem }
       *[other]
            { $found ->
                [none] „{ $input }“ ist als { $what } nicht lesbar, Zeichen { $n } (Ende): { $problem }
               *[other] „{ $input }“ ist als { $what } nicht lesbar, Zeichen { $n } („{ $found }“): { $problem }
            }
    }
    .next =
        { $meant ->
            [none] Zum Beispiel { $example } schreiben
           *[other] Meinten Sie { $meant }?
        }

notation-length = Länge
notation-length-offset = Längenunterschied
notation-mass = Masse
notation-mass-offset = Massenunterschied
notation-swing-weight = Schwunggewicht
notation-swing-weight-offset = Unterschied im Schwunggewicht
notation-angle = Winkel
notation-angle-offset = Winkelunterschied
notation-frequency = Frequenz

notation-problem-empty = nichts eingegeben
notation-problem-number-expected = hier muss eine Zahl stehen
notation-problem-sign-not-allowed = dieser Wert hat kein Vorzeichen
notation-problem-two-signs = die Richtung ist doppelt angegeben, mit Vorzeichen und mit Wort
notation-problem-digit-grouping = die Ziffern könnten in Tausender gegliedert sein; ohne Gliederung schreiben, Nachkommastellen hinter einem Punkt
notation-problem-fraction-after-decimal = auf eine Dezimalzahl folgt ein Bruch
notation-problem-bad-fraction = der Bruch muss kleiner als eins sein und darf nicht durch null teilen
notation-problem-too-large = der Wert ist hier zu groß
notation-problem-missing-unit = der Zahl fehlt die Einheit oder der Buchstabe
notation-problem-fraction-without-unit = ein Bruch ohne Einheit heißt Zoll, hier wird aber metrisch erwartet; die Einheit dazuschreiben
notation-problem-unknown-unit = diese Einheit ist hier nicht bekannt
notation-problem-ambiguous-unit = diese Einheit heißt für manche Gramm, für andere Grain; g oder grain schreiben
notation-problem-unknown-letter = die Buchstaben gehen von A bis G
notation-problem-beyond-letter = ein Buchstabe hat die Punkte 0 bis 9,9
notation-problem-disagree = das Moment neben dem Buchstaben passt nicht dazu
notation-problem-unexpected = das gehört nicht hierher

notation-example-length = 36 3/4 in, 93.3 cm oder 940 mm
notation-example-length-offset = +1/2 in oder -5 mm
notation-example-mass = 8 g oder 1.75 oz
notation-example-mass-offset = +2 g oder -0.1 oz
notation-example-swing-weight = D3.5 oder 213.5 oz in
notation-example-swing-weight-offset = +2 oder -1/2
notation-example-angle = 61.5 oder 61.5°
notation-example-angle-offset = +2, -1° oder 2 up
notation-example-frequency = 262 cpm oder 4.37 Hz
