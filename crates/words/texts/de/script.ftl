### What the scripts of a page show

# Entries that wait for the network.
script-waits = Auf diesem Tablet gespeichert, noch nicht gesendet: { $what }. Wird einmal gesendet, sobald das Netz wieder da ist.
script-refused = Beim späteren Senden abgelehnt: { $what }. { $why }
script-enter-again = Noch einmal eingeben.
script-seen = Verstanden
script-no-next = Das Netz ist weg: Der nächste Schläger lässt sich nicht anzeigen.

# Entries that were typed ahead and must not go to another club than they were meant for.
script-lost-away = Das Netz ist weg. Nicht gespeichert: { $typed }. Schläger ansehen, dann noch einmal eingeben.
script-lost-refused = Die Eingabe davor wurde nicht angenommen. Nicht gespeichert: { $typed }. Schläger ansehen, dann noch einmal eingeben.
script-lost-done = Hier ist nichts mehr einzugeben. Nicht gespeichert: { $typed }. Schläger ansehen, dann noch einmal eingeben.

# A list that is being read.
script-reading-list = Liste wird gelesen …
script-parts-read = { $done } von { $all } Teilen

# A scale that settles while an entry is still open.
script-scale-busy = { $name }: { $text } kam und wurde nicht übernommen. Erst diese Eingabe abschließen, dann das Teil abheben und wieder auflegen.

# A code that was scanned.
script-no-look-up = { $code } ließ sich nicht nachschlagen: kein Netz.
script-typed-first = { $typed } ist eingetippt und noch nicht gespeichert. Erst die Eingabetaste drücken, dann { $code } noch einmal scannen.

# The keypad at the thumb.
script-delete = Löschen

# The list of keys, and the key of a pedal.
script-keys-here = Tasten auf dieser Seite
script-keys-all = Alle Tasten und die Einstellungen dieses Tablets
script-close = Schließen
script-pedal-types = { $key } schreibt einen Buchstaben oder bewegt den Cursor und kann deshalb nicht das Pedal sein. Das Pedal auf eine andere Taste stellen.

# Clocks of the glue that ring.
script-ring-pot-life = Ansatz { $batch }: Die Topfzeit ist vorbei. Aus diesem Becher nicht mehr kleben.
script-ring-handling = Ansatz { $batch } ist handfest.
script-ring-cured = Ansatz { $batch } ist ausgehärtet.
script-ring-soon = Topfzeit von Ansatz { $batch }:
script-ring-snooze = In 5 Minuten

# The open job, held on the tablet.
script-held = Das Netz ist weg: Sie sehen, was vom Auftrag auf dem Tablet liegt. Ihre Eingaben werden gesendet, sobald es wieder da ist.
script-not-held = Das Netz ist weg, und diese Seite liegt nicht auf dem Tablet.
