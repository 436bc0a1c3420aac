### Frequencies of a set, and trimming the tip to them

slope-sheet = wie es das Blatt verlangt
slope-flat = flach, alle gleich
slope-step = gleicher Anstieg je halben Zoll
slope-reference = durch den Referenzschläger

cpm-says-not-forecast = Keine Vorhersage: den Schläger planen und einen Schaft aus dem Lager wählen.
cpm-says-no-aim = Das Blatt verlangt für diesen Schläger keine Frequenz.
cpm-says-as-planned = Nach Plan am Ziel.
cpm-says-trim-more = Am Tip { LENGTH($by_mm, digits: 2) } mehr: +{ CPM($gain_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }, Schwunggewicht { POINTS($by_points, signed: 1) }
cpm-says-trim-less = Am Tip { LENGTH($by_mm, digits: 2) } weniger: −{ CPM($loss_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }, Schwunggewicht { POINTS($by_points, signed: 1) }
cpm-says-not-far-enough = Für die ganze Kürzung ist der Schaft zu kurz: Es fehlen noch { CPM($by_cpm, digits: 1) }. Einen anderen Schaft nehmen.
cpm-says-soft = { CPM($by_cpm, digits: 1) } weicher als das Ziel. Am Tip wird nicht mehr gekürzt: einen steiferen Schaft nehmen oder ihn so behalten.
cpm-says-stiff = { CPM($by_cpm, digits: 1) } steifer als das Ziel. Kürzen macht ihn nicht weicher: einen weicheren Schaft nehmen oder ihn so behalten.

cpm-remedy-heavier-head = Ein um { MASS($by_g, digits: 1) } schwererer Kopf: −{ PLAIN($loss_cpm, digits: 1) } cpm, Schwunggewicht { POINTS($by_points, signed: 1) }.
cpm-remedy-lighter-head = Ein um { MASS($by_g, digits: 1) } leichterer Kopf: +{ PLAIN($gain_cpm, digits: 1) } cpm, Schwunggewicht { POINTS($by_points, signed: 1) }.
cpm-remedy-shorter-butt = Am Butt { LENGTH($by_mm, digits: 2) } ab, noch in der Toleranz der Länge: +{ PLAIN($gain_cpm, digits: 1) } cpm, Schwunggewicht { POINTS($by_points, signed: 1) }.
cpm-remedy-other-shaft = Es fehlen { CPM($by_cpm, digits: 1) }: einen anderen Schaft suchen.

trim-fault-nothing = in Auftrag { $job } ist jetzt kein Tip zu kürzen
    .next = Eine andere Steigung wählen, oder die Schläger und ihre Tip-Kürzungen angeben
trim-fault-twice = Schläger { $slot } ist zweimal genannt
    .next = Jeden Schläger einmal nennen
trim-fault-fixed = an Nummer { $number } wird der Tip nicht mehr gekürzt: Der Schaft ist abgelängt oder hat einen Taper-Tip
    .next = Weglassen oder einen anderen Schaft dafür einplanen

cpm-take = Diese Tip-Kürzungen übernehmen
cpm-page = Auf Frequenz kürzen
cpm-about = Was jeder Schläger in Ihrer Einspannung zeigen wird und welche Tip-Kürzung ihn auf die Steigung bringt. Was am Tip mehr abkommt, kommt am Butt weniger ab; die Länge des Schlägers bleibt. Ein gekürzter Tip bleibt gekürzt, und die Grenzen des Herstellers gehen vor.
cpm-with-grip = Gemessen mit dem Griff in der Einspannung.
cpm-without-grip = Gemessen ohne Griff.
cpm-slope = Steigung
cpm-heading = Ziel: { $slope }
cpm-heading-step = Ziel: { CPM($step_cpm, digits: 1) } mehr je halben Zoll
cpm-little = Diese Kürzungen bringen fast nichts: Was von den Schäften nicht bekannt ist, macht weit mehr aus. Messen Sie zuerst einen Schläger in der Einspannung.
cpm-step = Anstieg je halben Zoll
cpm-level = Erster Schläger
cpm-level-hint = Leer lassen: was zu den Schäften des Satzes passt
cpm-show = Zeigen
cpm-column-club = Schläger
cpm-column-forecast = Vorhersage
cpm-column-aim = Ziel
cpm-column-tip = Tip-Kürzung
cpm-column-after = Danach
cpm-column-chance = In der Toleranz
cpm-column-to-do = Zu tun
cpm-inside = Voraussichtlich in der Toleranz: { $planned } von { $clubs } Schlägern nach Plan, { $trimmed } mit diesen Kürzungen.
cpm-rests-on = Solange kein Schaft gemessen ist, beruht die Vorhersage auf: { $from }.
cpm-open = Auf Frequenz kürzen
cpm-line = { $slot }  { $club }: { $forecast }{ $aim ->
        [none] {""}
       *[other] {", "}Ziel { $aim }
    }. { $to_do }
