### Set grid: one step across all clubs of a job

grid-title = Satzübersicht
grid-crumb = Auftrag { $job } · { $step } · { $what } · alle Schläger
grid-of-step = { $step }: alle Schläger
grid-against-target = wo jeder Schläger am Ende liegt, Soll { LETTER($target_points) }
grid-against-targets = wo jeder Schläger am Ende liegt, gegen sein Soll

# What is left at this step.
grid-all-read = Alle Schläger sind in diesem Schritt gemessen.
grid-what-read = { CAPITAL($what) }: an allen Schlägern gemessen.
grid-next = Weiter: { $next }

# A row.
grid-look-again = angezweifelt: noch einmal nachsehen
grid-off = { $by } gegen das Soll
grid-waits-for-cure = härtet noch aus
grid-mix = Kleber anmischen
grid-enter = eingeben
grid-done = Erledigt
grid-kept = { $club }: { $said }

# A step that is only done, for the whole set.
grid-set-left = Noch zu tun: { $clubs }.
grid-set-do = Für alle { $n } erledigt
grid-set-done = „{ $step }“ ist für den ganzen Satz erledigt.

# What is open on the clubs before a step that cannot be undone.
grid-open-before = Offen vor „{ $step }“

# The last reading.
grid-wrong = { $club }: Das war falsch
grid-read-again = Noch einmal messen

# What the keys do.
grid-key-keep = Eingabetaste, Pedal oder Scan
grid-keep-next = speichern, nächster Schläger
