### Calculations: their names and their pages

calc-title-swing-weight = Schwunggewicht
calc-summary-swing-weight = Moment um das Auflager, Punkte und Buchstabe eines Schlägers, aus seinen Teilen oder aus Masse und Balancepunkt.
calc-title-inertia = Trägheitsmoment
calc-summary-inertia = Trägheitsmoment eines Schlägers aus seinen Teilen oder mit dem Pendel, dazu Kopfmassen für gleiches Trägheitsmoment oder gleiches Schwunggewicht.
calc-title-trim = Schaft kürzen
calc-summary-trim = Masse, Balancepunkt und Massenlinie eines Schafts nach seinen Schnitten und der Schnitt, der eine fertige Länge ergibt.
calc-title-frequency = Frequenz und Durchbiegung
calc-summary-frequency = Frequenz und Durchbiegung eines eingespannten Schlägers, an einem Messwert kalibriert, und was eine Änderung bewirkt.
calc-title-soft-side = Weiche Seite und Krümmung
calc-summary-soft-side = In welche Richtung ein Schaft weich und in welche er krumm ist, aus Messwerten rundum, und wie sicher das ist.
calc-title-pluck = Aufnahme eines angezupften Schlägers
calc-summary-pluck = Frequenz und Dämpfung aus einer Aufnahme; mit zwei Achsen auch die weiche und die steife Richtung.
calc-title-grip-size = Griffstärke
calc-summary-grip-size = Durchmesser entlang eines Griffs auf seinem Schaft, Lagen Griffband für eine gewünschte Stärke, und was das Band am Schwunggewicht ändert.
calc-title-lie = Lie und Loft
calc-summary-lie = Lie bei geänderter Länge, Zielfehler durch falschen Lie und Biegeschritte innerhalb der Grenze des Herstellers.
calc-title-glue = Kleber
calc-summary-glue = Kleber je Klebestelle und Ansatz, Topfzeit und Aushärtung bei einer Temperatur und die Belastung im Schwung.

calc-index = Berechnungen
calc-index-crumb = immer für einen Schläger; nichts wird gespeichert
calc-all = Alle Berechnungen
calc-crumb = Berechnung
calc-example = Die Werte sind ein Beispiel.
calc-example-next = Überschreiben Sie sie; was Sie nicht brauchen, bleibt leer.
calc-not-used =
    { $count ->
        [one] Eine Eingabe war nicht zu gebrauchen.
       *[other] { $count } Eingaben waren nicht zu gebrauchen.
    }
calc-not-used-next = Sie sind rot markiert.
calc-recording = Aufnahme
calc-recording-hint = WAV mit einem oder zwei Kanälen oder CSV mit Zeit und einer oder zwei Achsen.
calc-recording-read = Aufnahme lesen
calc-recording-samples = Stattdessen Abtastwerte eingeben
calc-figures = Werte
calc-calculate = Berechnen
calc-back-to-example = Zurück zum Beispiel
calc-sd-hint = ± ist eine Standardabweichung des Messwerts; leer lassen, wenn sie nicht bekannt ist.
calc-usual = üblich
calc-numbers-hint = Zahlen, eine nach der anderen
calc-numbers-unit-hint = Zahlen in { $unit }, eine nach der anderen
calc-rows-first-line = Erste Zeile: { $columns }
calc-rows-hint = Unter der Zeile mit den Spaltennamen je eine Zeile
calc-more-figures = Weitere Werte
calc-what = was
calc-value = Wert
calc-one-sd = eine Standardabweichung
calc-yes = ja
calc-no = nein

calc-what-if = Was wäre, wenn
calc-what-if-show = Zeigen
calc-what-if-planned = Wie geplant
calc-what-if-head-g = Kopf
calc-what-if-tip-g = Tip-Gewicht
calc-what-if-grip-g = Griff
