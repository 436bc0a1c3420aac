### Help: the guide in the program

page-help = Hilfe
help-title = Hilfe
help-search = Suchwörter
help-find = Suchen
help-nothing = In der Hilfe steht nichts zu „{ $text }“.
help-contents = Alle Kapitel
help-table = Tabelle { $n }
help-quick-card = Merkblatt für die Werkbank, eine Seite zum Drucken
