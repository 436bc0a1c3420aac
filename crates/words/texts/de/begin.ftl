### Die erste Stunde einer neuen Werkstatt

begin-ways = Hier anfangen
begin-ways-about = Diese Werkstatt ist noch leer. Mit einem Satz anfangen: drei Fragen, der Satz in einer Zeile, die Massen seiner Teile. Was jetzt fehlt, kommt später dazu.
begin-one-set = Mit einem Satz anfangen
begin-my-lists = Eigene Listen mitbringen
begin-try = Die Beispielwerkstatt ausprobieren
begin-title = Drei Fragen
begin-step-one = Schritt 1 von 3
begin-step-two = Schritt 2 von 3
begin-step-three = Schritt 3 von 3
begin-go-on = Weiter
begin-known = Was über Klebestellen, Griffe und Lagen bekannt ist
begin-known-hint = Werte aus der eigenen Arbeit, in Punkten Schwunggewicht. Unbekanntes leer lassen: Die Werkstatt lernt es aus den Schlägern.
begin-joint = Eine Klebestelle bringt
begin-adhesive = Kleber
begin-grip-takes = Ein Griff nimmt weg
begin-grip = Griff
begin-wrap-takes = Eine Lage nimmt weg
begin-tape = Band
begin-scales = Wie fein die Waagen anzeigen
begin-balance-step = Schwunggewichtswaage
begin-mass-step = Grammwaage
begin-step-needed = den Schritt der Anzeige eingeben
begin-units = Einheiten
begin-units-field = Einheiten auf diesem Tablet
begin-units-hint = Jeder kann andere Einheiten haben.
begin-set-title = Der Satz in einer Zeile
begin-written = Das Blatt
begin-written-hint = Wie sonst auch geschrieben: „7, D2“ für einen Schläger, „5-PW, D3, 2 wraps, +1/4“ für einen Satz
begin-head = Kopf
begin-shaft = Schaft
begin-shaft-fits = Einer, der zum Kopf passt
begin-models-hint = Für den Anfang gibt es Modelle mit üblichen Werten. Sie durch die des Herstellers ersetzen, sobald sie da sind.
begin-own-model = Ein eigenes Modell eingeben
begin-whole-sheet = Ein ganzes Blatt schreiben
begin-parts-title = Die Teile wiegen
begin-parts-hint = Was jedes Teil wiegt. Einige können jetzt, die anderen später gewogen werden.
begin-parts-there = Alle Köpfe, Schäfte und Griffe dieses Blatts sind im Lager.
begin-piece-number = { $number }: { $name }
begin-mass-needed = die Masse eingeben oder zum Blatt zurückgehen
begin-sure = Die Masse stimmt
begin-small =
    { $n ->
        [one] Ferrulen und ein Kasten Tip-Gewichte sind zur Hand: je eines ins Lager nehmen
       *[other] Ferrulen und ein Kasten Tip-Gewichte sind zur Hand: je { $n } ins Lager nehmen
    }
begin-to-plan = Zum Plan
begin-see-sheet = Das Blatt ansehen
begin-import = Die Teile aus einer Liste laden
begin-lists-about = Modelle, Teile und Blätter aus Dateien
begin-lists-models = Modelle laden
begin-lists-models-how = Eine Datei mit Modellen, hier gespeichert oder von einem Programm geschrieben.
begin-lists-usual = Übliche Modelle
begin-lists-usual-how = Modelle mit üblichen Werten, wenn die des Herstellers nicht zur Hand sind.
begin-lists-parts = Teile laden
begin-lists-parts-how = Eine Liste oder Arbeitsmappe. Welche Spalte was ist, wird gefragt; unlesbare Zeilen werden genannt.
begin-lists-sheets = Ein Blatt laden
begin-lists-sheets-how = Ein Blatt, das als Datei gespeichert wurde.
begin-lists-set-how = Ohne Listen: ein Satz in einer Zeile.
begin-try-crumb = Sie hat eine eigene Datenbank
begin-try-about = Die Beispielwerkstatt hat Spieler, ein Lager, einen Satz auf der Werkbank und fertige Protokolle. Nichts davon kommt in die eigene Werkstatt. Wer Setwright gestartet hat, startet sie auf derselben Maschine mit diesem Befehl:
begin-try-next = Er zeigt die Adresse an, die zu öffnen ist. Danach wieder beenden; die eigene Werkstatt bleibt, wie sie ist.

plan-anyway = Trotzdem bauen
plan-anyway-about = Genommen werden die Teile, die dem Ziel am nächsten kommen. Das Ziel bleibt, wie es auf dem Blatt ist, und die Werkbank zeigt weiter, wie weit der Schläger davon weg ist und was ihn hinbringt.
plan-anyway-why = Warum, für das Protokoll
plan-weigh-missing = Fehlende Teile wiegen
