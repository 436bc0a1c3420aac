### Stock

# What is refused of models and parts in stock.
stock-fault-model-code-taken = „{ $code }“ ist schon als Code vergeben ({ $kind })
    .next = Einen anderen Code wählen
stock-fault-models-unwritable = die Modelle ließen sich nicht schreiben: { $log }
    .next = Die Werte der Modelle ansehen
stock-fault-not-by-hand = { $code } ist { $state }; von Hand lässt sich das nicht ändern in: { $to }
    .next = „Reserviert“ und „verbaut“ kommen aus Aufträgen: stattdessen den Plan des Schlägers ändern
stock-fault-bad-code = „{ $code }“ geht nicht als Code eines Teils
    .next = Den Code auf seinem Etikett angeben, höchstens 64 Zeichen
stock-fault-not-added-as = { $code } lässt sich so nicht anlegen: { $state }
    .next = „Reserviert“ und „verbaut“ kommen aus Aufträgen: als frei anlegen

stock-title = Lager
stock-weigh-in = Einwiegen
stock-import = Liste importieren
stock-export-csv = CSV exportieren
stock-export-xlsx = XLSX exportieren
stock-print-labels = Etiketten drucken
stock-print-label = Etikett drucken
stock-models = Modelle
stock-back = Zurück zum Lager
stock-count-and-customers = { $parts }, davon { $n } von Kunden
stock-count =
    { $n ->
        [one] { $n } Teil
       *[other] { $n } Teile
    }
stock-went-out = <a>{ $code }</a> ist in einen Schläger eingebaut und nicht mehr in der Werkstatt.
stock-none-found = Kein Teil passt.
stock-none-found-next = Einen Filter entfernen oder das Teil einwiegen.
stock-all-parts = Alle Teile
stock-with-gone = Auch Teile in Schlägern
stock-no-models = Das Lager ist leer, und es gibt noch keine Modelle.
stock-no-models-next = Ein Modell enthält die Herstellerwerte eines Kopfs, Schafts oder Griffs. Erst die Modelle anlegen, dann die Teile einwiegen.
stock-new-head-model = Neues Kopfmodell
stock-load-models = Modelle aus einer Datei laden
stock-empty = Noch ist kein Teil auf Lager.
stock-empty-next = Köpfe, Schäfte und Griffe einzeln einwiegen oder eine Liste importieren.

stock-kinds = Arten
stock-all-kinds = alle
stock-kinds-head = Köpfe
stock-kinds-adapter = Adapter
stock-kinds-shaft = Schäfte
stock-kinds-grip = Griffe
stock-kinds-tip-weight = Tip-Gewichte
stock-kinds-ferrule = Ferrulen
stock-kinds-adhesive = Kleber
stock-kinds-tape = Bänder

stock-search = Code, Charge oder Platz
stock-any-model = jedes Modell
stock-in-shop = in der Werkstatt
stock-any-state = jeder Zustand
stock-find = Suchen
stock-clear = Leeren

stock-parts = Teile auf Lager
stock-not-weighed = nicht gewogen
stock-left = noch { $n }
stock-pages = Seiten
stock-page-before = Zurück
stock-page-next = Weiter
stock-page = { $first }–{ $last } von { $total }

# One part.
stock-model-mass = Modell { $model_g }
stock-line = seine Linie { $line_cpm }
stock-where = wo
stock-in-club = in einem Schläger
stock-why-hint = Wird mit der Änderung festgehalten
stock-change = Ändern
stock-see-now = Ansehen, wie es jetzt ist
stock-figure-wrong = Einen Wert berichtigen
stock-still-below = Was Sie eingetippt haben, steht noch unten.
stock-mass-hint-g = 256.1, oder 9.03 oz
stock-mass-hint-oz = 9.034, oder 256.1 g
