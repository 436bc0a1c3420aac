### The soft side of a club's shaft, found and checked

soft-side-says-stiffness = Weiche Seite { ANGLE($at_deg, digits: 0) } ± { ANGLE($band_deg, digits: 0) } ab Etikett. Es ist die Biegesteifigkeit: In diese Richtung biegt sich der Schaft leichter.
soft-side-says-stiffness-and-bow = Weiche Seite { ANGLE($at_deg, digits: 0) } ± { ANGLE($band_deg, digits: 0) } ab Etikett, auf der Seite der Krümmung. Außerdem ist der Schaft um { LENGTH($bow_mm, digits: 2) } krumm, in Richtung { ANGLE($bow_deg, digits: 0) }.
soft-side-says-bow-alone = Keine weiche Seite: Der Schaft biegt sich rundum gleich. Er ist um { LENGTH($bow_mm, digits: 2) } krumm, in Richtung { ANGLE($bow_deg, digits: 0) }; auf Rollen sähe das wie eine weiche Seite aus.
soft-side-says-alike = Keine weiche Seite: Die Biegesteifigkeit unterscheidet sich um höchstens { PERCENT($at_most_share, digits: 1) }. Das Etikett so drehen, wie das Blatt es verlangt.
soft-side-says-cannot-tell = Aus diesen Messwerten geht nichts hervor: Bis zu { PERCENT($at_most_share, digits: 1) } sind möglich. Bei mehr Winkeln messen oder jeden Winkel noch einmal.

two-planes-say-as-asked = Die weiche Seite liegt, wo das Blatt sie will: Diese Ebene schwingt { CPM($by_cpm, digits: 1) } langsamer.
two-planes-say-turned = Die weiche Seite liegt um eine Vierteldrehung falsch: Die andere Ebene schwingt { CPM($by_cpm, digits: 1) } langsamer. Die Markierung ansehen, bevor der Griff aufgezogen wird.
two-planes-say-cannot-tell = Die Ebenen sind gleich, soweit Ihr Messgerät das zeigt: Sie müssten sich um { CPM($least_cpm, digits: 1) } unterscheiden.
two-planes-say-soft-along = Die weiche Ebene liegt in Spielrichtung, { CPM($by_cpm, digits: 1) } langsamer. Das Blatt verlangt keine Richtung.
two-planes-say-soft-across = Die weiche Ebene liegt von Heel nach Toe, { CPM($by_cpm, digits: 1) } langsamer. Das Blatt verlangt keine Richtung.

soft-side-fault-one-of-two = nötig sind entweder Messwerte rundum oder eine Aufnahme, nur eines von beiden
    .next = Messwerte unter mehreren Winkeln oder eine Aufnahme mit zwei Achsen angeben
soft-side-fault-not-asked = kein Schritt fragt bei Nummer { $number } nach einer weichen Seite
    .next = Einen solchen Schritt im Auftrag ergänzen oder es beim Ergebnis belassen
soft-side-fault-nothing-to-mark = diese Messwerte zeigen keine weiche Seite, die sich eintragen ließe
    .next = Das Etikett so drehen, wie das Blatt es verlangt, oder noch einmal messen

soft-side-page = Weiche Seite: { $club }
soft-side-open = Aus Messwerten rundum bestimmen
soft-side-check-open = Weiche Seite in zwei Ebenen prüfen
soft-side-about = Den Schaft schrittweise drehen und bei jedem Winkel messen: ab Etikett, im Uhrzeigersinn, vom Butt aus gesehen. Sechs Winkel sind das Mindeste, zwölf sind besser.
soft-side-kind = Was gemessen wurde
soft-side-kind-frequency = Frequenz
soft-side-kind-deflection = Durchbiegung unter einem Gewicht
soft-side-kind-force = Kraft bei fester Durchbiegung, in N
soft-side-fixed = Kraft in N oder die feste Durchbiegung
soft-side-fixed-hint = Bei Frequenzen leer lassen
soft-side-at = { ANGLE($at_deg, digits: 0) }
soft-side-show = Zeigen
soft-side-keep = Als weiche Seite speichern
soft-side-planes-title = Fertiger Schläger in zwei Ebenen
soft-side-planes-about = Den fertigen Schläger einspannen und anzupfen, erst in Spielrichtung, dann von Heel nach Toe.
soft-side-along = In Spielrichtung
soft-side-across = Von Heel nach Toe
soft-side-check = Prüfen
