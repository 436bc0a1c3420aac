### Backups

# What is wrong with them.
backup-wrong-none = in { $folder } gibt es noch keine Sicherung dieser Werkstatt
    .next = Eine anlegen: setwright backup. Den Ordner ab und zu auf eine andere Festplatte kopieren
backup-wrong-old = die letzte Sicherung in { $folder } ist vom { $made_at }
    .next = Die Werkbank laufen lassen oder eine anlegen: setwright backup
backup-wrong-failed = die Sicherung vom { $tried_at } ist fehlgeschlagen: { $why }
backup-wrong-no-folder = dieses Programm legt keine Sicherungen an
    .next = Mit --backups FOLDER starten
backup-wrong-damaged = die Datei dieser Werkstatt ist beschädigt: { $log }
    .next = Nichts mehr eingeben. Das Programm beenden, dann die letzte Sicherung zurückspielen: setwright restore FILE

# On a page.
backup-title = Sicherung
backup-not-safe = nicht gesichert

# On the command line.
backup-made = { $path } enthält { $held }; die Datei wurde geöffnet und ist heil
backup-held =
    „{ $shop }“ mit { $jobs ->
        [one] 1 Auftrag
       *[other] { $jobs } Aufträgen
    }, { $parts ->
        [one] 1 Teil
       *[other] { $parts } Teilen
    }, { $readings ->
        [one] 1 Messwert
       *[other] { $readings } Messwerten
    }{ $last_at ->
        [none] {""}
       *[other] {""}, der letzte vom { $last_at }
    }
backup-whole = { $path } ist heil: { $held }
backup-restored = { $path } ist jetzt { $held }
backup-before = Die bisherige Werkstatt bleibt erhalten als { $path }.
backup-would = { $backup } enthält { $held }
backup-would-lose = { $path } enthält jetzt { $held }. Alles, was nach der Sicherung eingegeben wurde, ist dann nicht mehr in der Werkstatt
backup-would-unread = { $path } lässt sich zurzeit nicht lesen: { $what }
backup-would-empty = In { $path } gibt es zurzeit keine Werkstatt.

# An archive: the whole shop as a text.
archive-made =
    { $path } enthält { $held }: { $rows ->
        [one] 1 Zeile
       *[other] { $rows } Zeilen
    }, Prüfsumme { $sum }
archive-unpacked = { $place } ist jetzt { $held }, Stand { $at }. Die Zugänge sind die von damals: siehe setwright key list
