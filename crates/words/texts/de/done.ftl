### What was just done, over the page that follows

done-saved = Gespeichert.
done-approved = Freigegeben: Aus dem Blatt ist ein Auftrag geworden. Jetzt die Teile auswählen.
done-held = Diese Teile sind für den Auftrag reserviert.
done-given-up = Der Auftrag ist aufgegeben, seine Teile sind wieder frei.
done-noted = Notiert: Wird in diesem Auftrag nicht mehr vorgeschlagen.
done-ordered = Die Bestellung ist aufgegeben.
done-order-closed = Die Bestellung ist abgeschlossen.
done-corrected = Berichtigt. Der alte Wert steht im Verlauf des Teils.
done-passed = Übergangen. Ihr Grund steht in der Akte.
done-batch-runs = Die Zeiten dieses Ansatzes laufen.
done-batch-back = Der Ansatz ist zurückgenommen.
done-removed = Entfernt.
