### What is open on a club before a step that cannot be undone

open-point-doubted = { $what } bei „{ $step }“ ist angezweifelt
open-point-unread = { $what }: nicht gemessen

# A reading outside of what the sheet asks.
open-point-off-swing-weight = { $what } { LETTER($now_points) }, Soll laut Blatt { LETTER($asked_points) } ± { PLAIN($tolerance_points) }
open-point-off-mass = { $what } { $now_g }, Soll laut Blatt { $asked_g } ± { $tolerance_g }
open-point-off-length = { $what } { LENGTH($now_mm, digits: 2) }, Soll laut Blatt { LENGTH($asked_mm, digits: 2) } ± { LENGTH($tolerance_mm, digits: 2) }
open-point-off-angle = { $what } { $now_deg }, Soll laut Blatt { $asked_deg } ± { $tolerance_deg }
open-point-off-frequency = { $what } { CPM($now_cpm, digits: 0) }, Soll laut Blatt { CPM($asked_cpm, digits: 0) } ± { CPM($tolerance_cpm, digits: 0) }

# The head needs more bending than its maker allows.
open-point-loft-weak = Loft { $by_deg } zu schwach; dieser Kopf darf höchstens { $limit_deg } gebogen werden
open-point-loft-strong = Loft { $by_deg } zu stark; dieser Kopf darf höchstens { $limit_deg } gebogen werden
open-point-lie-flat = Lie { $by_deg } zu flach; dieser Kopf darf höchstens { $limit_deg } gebogen werden
open-point-lie-upright = Lie { $by_deg } zu aufrecht; dieser Kopf darf höchstens { $limit_deg } gebogen werden

# The nearest setting of an adapter does not bring it in.
open-point-set-weak = Loft auch mit Adapter auf „{ $setting }“ { $by_deg } zu schwach
open-point-set-strong = Loft auch mit Adapter auf „{ $setting }“ { $by_deg } zu stark
open-point-set-flat = Lie auch mit Adapter auf „{ $setting }“ { $by_deg } zu flach
open-point-set-upright = Lie auch mit Adapter auf „{ $setting }“ { $by_deg } zu aufrecht

# The club will more likely finish outside of its tolerance, and no choice still to come changes that.
open-point-light = wird am Ende { $by_points } zu leicht, und kein freier Griff bringt ihn in die Toleranz
open-point-heavy = wird am Ende { $by_points } zu schwer, und kein freier Griff bringt ihn in die Toleranz

# The shaft cannot be cut longer.
open-point-cut-short = Schaft { LENGTH($by_mm, digits: 2) } kürzer als geplant

open-point-glued = schon mit Ansatz { $batch } geklebt
open-point-not-cured = wartet bis { $until_at } auf { $strength }
open-point-not-glued = noch nicht geklebt

open-fault-nothing = am { $number } ist vor „{ $step }“ nichts offen
    .next = Aus der Liste weglassen: Er braucht keinen Grund

# The list on the page: one touch for each, one reason for all.
open-of = { $n } von { $clubs }
open-read-again = Noch einmal messen
open-read = Messen
open-look = Ansehen
open-choose = Auswählen
open-glue = Zum Kleben
open-why-all =
    { $n ->
        [one] Warum damit weiter?
       *[other] Warum mit allen { $n } weiter?
    }
open-why-hint = Ein Grund für alle. Er kommt mit Ihrem Namen in die Akte
open-go-on =
    { $n ->
        [one] Weiter
       *[other] Mit allen { $n } weiter
    }
open-passed = übergangen
open-passed-by = { $reason } ({ $by }, { $at_at })

# An override of a cure belongs to its batch.
open-override-batch = Aushärtung von Ansatz { $batch } übergehen
open-override-means = Gilt für alle Schläger von Ansatz { $batch }: { $clubs }. Die Zeit läuft weiter.
open-override-strength = Wie fest die Klebestellen jetzt sind
open-override-kept = Aushärtung übergangen, { $strength }: { $reason } ({ $by }, { $at_at })

# On the command line.
open-nothing = { CAPITAL($done) }: davor ist nichts offen.
open-none-left = Nichts offen: Kein Schläger steht vor einem Schritt, der sich nicht zurücknehmen lässt.
open-line = { $number }: { $points }
open-line-passed = { $number }: { $points }; übergangen: { $reason } ({ $by })
open-before = { CAPITAL($done) }, davor offen:

# A step that is only done, for the whole set.
done-fault-asks-more = „{ $step }“ verlangt mehr, als dass der Schritt erledigt ist
    .next = Eingeben, was er verlangt, Schläger für Schläger
done-for-set =
    { $n ->
        [one] Für { $n } Schläger erledigt: { $numbers }
       *[other] Für alle { $n } erledigt: { $numbers }
    }
done-for-none = Dafür ist kein Schläger mehr übrig.
done-waiting = Klebestelle noch nicht fest: { $numbers }.
