### Part

# What is refused of a part.
part-fault-no-frequency = nur ein Rohschaft hat eine Frequenz, hier steht { FIGURE($is_cpm) } ({ $kind }). Leer lassen
part-fault-bad-count = { $code } hat die Anzahl { $n }
    .next = Angeben, wie viele in der Schachtel sind, ab 0
part-fault-counted = { $code } ({ $kind }) hat eine Anzahl
    .next = Köpfe und Schäfte werden einzeln gewogen: jedem eine eigene Zeile und einen eigenen Code geben

# The fields of a part, as a word within a sentence or at the head of a column.
part-field-code = Code
part-field-kind = Art
part-field-model = Modell
part-field-number = Nummer
part-field-mass = Masse
part-field-length = Länge
part-field-balance-point = Balancepunkt
part-field-cpm = Frequenz
part-field-tip-trimmed = am Tip ab
part-field-loft = Loft
part-field-lie = Lie
part-field-lot = Charge
part-of-lot = Charge { $lot }
part-field-owner = Eigentümer
part-field-place = Ort
part-field-state = Stand
part-field-count = Anzahl

# The same as the name of a box to type into.
part-label-code = Code auf dem Etikett
part-label-kind = Art
part-label-model = Modell
part-label-number = Nummer
part-label-mass = Masse
part-label-length = Rohlänge
part-label-balance-point = Balancepunkt vom Butt
part-label-cpm = Frequenz bei Lieferung
part-label-loft = Loft bei Lieferung
part-label-lie = Lie bei Lieferung
part-label-lot = Charge
part-label-owner = Teil eines Kunden
part-hint-owner = Code des Kunden; leer: gehört der Werkstatt
part-label-place = Ort
part-label-state = Stand
part-label-count = Wie viele noch da sind

# What stands under such a box.
part-hint-length = Leer: Länge des Modells
part-hint-balance-point = Leer: Balancepunkt des Modells
part-hint-cpm = Der Rohschaft in der eigenen Einspannung, mit dem eigenen Gewicht am Tip
