### Glue: what to weigh out, the batch, its clocks

# What is refused of a batch of adhesive.
glue-fault-no-clubs = ein Ansatz für keinen Schläger
    .next = Schläger auswählen, die damit geklebt werden
glue-fault-beyond-calendar = die Aushärtung endet nach dem Jahr 9999
    .next = Die Zeiten des Klebers prüfen
glue-fault-room-too-cold = der Raum hat { FIGURE($room_c) } °C, und die kälteste Aushärtung auf dem Blatt von „{ $adhesive }“ gilt für { FIGURE($sheet_c) } °C: So kalt härten viele Kleber nie ganz aus, deshalb läuft keine Aushärtezeit an
    .next = Den Raum auf { FIGURE($warm_to_c) } °C oder mehr heizen oder beim Hersteller nachfragen und den Grund angeben

glue-fault-pot-life-beyond-calendar = die Topfzeit endet nach dem Jahr 9999
    .next = Die Topfzeit des Klebers prüfen

# What is refused of gluing clubs.
batch-fault-lot-missing = die Charge des Klebers fehlt
    .next = Charge von den Gebinden abschreiben: Über sie finden Sie jeden Schläger einer schlechten Charge
batch-fault-no-strength = keine Festigkeit ist angegeben
    .next = „handling“ oder „full“ angeben
batch-fault-taken-back = Ansatz { $batch } ist zurückgenommen
    .next = Kein Schläger gilt als damit geklebt: unter „Kleben“ nach dem Ansatz sehen, der gilt
batch-fault-started-before = dieses Formular hat Ansatz { $batch } schon gestartet, mit anderen Schlägern oder anderen Werten
    .next = Unter „Kleben“ nachsehen; ist er falsch, zurücknehmen und einen neuen starten
batch-fault-not-glued = am { $number } wird nichts geklebt: kein Schritt dieser Auftragsart enthält das Kleben
    .next = Aus diesem Ansatz weglassen
batch-fault-no-gluing = in den Schritten von Auftrag { $job } wird nicht geklebt
    .next = In diesem Auftrag wird nichts geklebt
batch-fault-no-parts = { $number } hat noch keine Teile
    .next = Erst planen oder aus diesem Ansatz weglassen
batch-fault-club-twice = Schläger { $slot } steht zweimal in diesem Ansatz
    .next = Jeden Schläger einmal nennen
batch-fault-glued-already = dieser Schläger wurde mit Ansatz { $batch } geklebt, dessen Zeiten laufen
    .next = Den Ansatz unter „Kleben“ zurücknehmen. Schläger, die trotzdem damit geklebt wurden, kommen in einen neuen Ansatz mit der Zeit, zu der er gemischt wurde
batch-fault-read-since = { $number } wurde nach dem Kleben mit Ansatz { $batch } bei „{ $step }“ gemessen
    .next = Erst diesen Messwert zurücknehmen, falls auch er falsch ist
batch-fault-no-adhesive = kein Kleber ist angegeben, und die Werkstatt hat keinen eigenen
    .next = Einen angeben oder unter „Werkstatt“ den eigenen festlegen

glue-title = Kleben
glue-batches = Ansätze
glue-none = Keine Ansätze in letzter Zeit.
glue-none-next = Mit einem Ansatz beginnen die Topfzeit und die Aushärtung seiner Schläger.
glue-none-curing = Kein Ansatz härtet gerade aus.
glue-cured = Ausgehärtet
glue-taken-back = Zurückgenommen
glue-new-for-job = Neuer Ansatz für Auftrag { $job }
glue-batch-of = Ansatz { $batch } · { $adhesive }
glue-batch-taken-back = Ansatz { $batch }, { $clubs }, Charge { $lot }: { $reason }

# The clubs of a batch, job by job.
glue-clubs-of-job = Auftrag { $job }, Schläger { $clubs }
glue-more-jobs = { $a }; { $b }

glue-batch-said = <b>{ CAPITAL($clubs) }.</b> Charge { $lot }, { $resin_g } Harz, { $hardener_g } Härter, { $beads_g } Glasperlen, bei { PLAIN($room_c, digits: 0) } °C. Gemischt: { $mixed_at }, { $by }.
glue-batch-line = Ansatz { $batch }, { $clubs }: handfest ab { $handling_at }, endfest ab { $full_at }
glue-batch-cold = Trotz Kälte gestartet: { $reason }.

# Its clocks.
glue-clocks = Zeiten von Ansatz { $batch }
glue-what = was
glue-left = noch
glue-until = bis
glue-pot-life = Topfzeit
glue-handle = anfassen, Griff aufziehen, messen
glue-swing = biegen, übergeben, schwingen
glue-over = vorbei
glue-now = jetzt

glue-entered-wrongly = Falsch eingegeben
glue-take-back-means = Die Zeiten werden angehalten, und kein Schläger gilt als damit geklebt. Das geht nicht mehr, sobald ein Schläger mit dieser Klebestelle gemessen wurde.
glue-take-back-why = Warum? Der Grund kommt in die Akte.
glue-take-back = Ansatz zurücknehmen

# A new batch.
glue-new = Neuer Ansatz
glue-new-crumb = Auftrag { $job } · { $player }
glue-weigh-out =
    { $n ->
        [one] Abwiegen für { $n } Klebestelle
       *[other] Abwiegen für { $n } Klebestellen
    }
glue-resin = Harz
glue-hardener = Härter
glue-spacers = Glasperlen, eingerührt
glue-handle-after = handfest nach
glue-swing-after = endfest nach
glue-ml = { PLAIN($volume_ml, digits: 1) } ml
glue-min = { PLAIN($time_min, digits: 0) } min
glue-h = { PLAIN($time_h, digits: 0) } h
glue-tenths-h = { PLAIN($time_h, digits: 1) } h
glue-by-sheet = Nach den Werten, die vom Blatt des Klebers eingegeben wurden, bei { PLAIN($room_c, digits: 0) } °C. Im Zweifel gilt das Blatt selbst.
glue-clubs-from-cup = Schläger, die aus diesem Becher geklebt werden
glue-club = { $club } · Tip-Gewicht { $tip_g } · Endwert { LETTER($finish_points) }
glue-club-turned = { $club } · { $turned }
glue-mixed-now = bis { $until_at }
glue-none-clear = Kein Schläger dieses Auftrags ist bereit zum Kleben.
glue-open =
    { $n ->
        [one] An { $n } Schläger ist etwas offen
       *[other] An { $n } Schlägern ist etwas offen
    }
glue-why-open = Warum trotzdem kleben? Der Grund kommt in die Akte.
glue-lot = Charge auf den Gebinden
glue-lot-why = Damit findet man später jeden Schläger einer schlechten Charge
glue-lot-last = Scannen oder eintippen; nur Eingabetaste: { $lot }, wie beim letzten Becher
glue-cold-why = Warum er in diesem Raum aushärtet
glue-cold-hint = Was der Hersteller zu dieser Temperatur sagt. Kommt in die Akte. Oder leer lassen und den Raum heizen
glue-start = Gemischt: Zeit starten
glue-adhesive = Kleber
glue-mixed-at = Gemischt um
glue-mixed-at-hint = Leer lassen, wenn der Becher jetzt gemischt wird
glue-room = Raum
glue-beads = Glasperlen
glue-beads-unit = % der Masse

# Clubs by the lot of their adhesive or of a part.
glue-find-lot = Schläger einer Charge suchen

# Before the cup is filled: what its room and its pot life mean.
mix-colder-than-sheet = der Raum hat { PLAIN($room_c, digits: 0) } °C, und die kälteste Aushärtung auf dem Blatt des Klebers gilt für { PLAIN($sheet_c, digits: 0) } °C; viele Kleber härten in so einem Raum nie ganz aus
mix-warmer-than-sheet = der Raum hat { PLAIN($room_c, digits: 0) } °C, und die wärmste Aushärtung auf dem Blatt des Klebers gilt für { PLAIN($sheet_c, digits: 0) } °C
mix-several-cups = aus einem Becher zu kleben dauert etwa { PLAIN($work_min, digits: 0) } min, und der Becher hält { PLAIN($pot_life_min, digits: 0) } min
mix-too-fast = dieser Kleber hält hier { PLAIN($pot_life_min, digits: 0) } min, weniger als eine Klebestelle samt Mischen braucht

mix-next-warm-room = den Raum auf { PLAIN($to_c, digits: 0) } °C oder mehr heizen oder beim Hersteller nachfragen und den Grund angeben
mix-next-wait-as-for = so lange warten, wie es das Blatt für { PLAIN($sheet_c, digits: 0) } °C angibt
mix-next-mix-cups = { $cups } Becher nacheinander mischen, je { $joints_a_cup } Klebestellen: { $resin_g } Harz, { $hardener_g } Härter, { $beads_g } Glasperlen je Becher
mix-next-change-adhesive = einen langsameren Kleber nehmen oder in einem kühleren Raum mischen
