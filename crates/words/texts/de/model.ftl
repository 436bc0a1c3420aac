### Models: what the maker says of heads, shafts, grips and the rest

# What is refused of a model.
model-fault-no-name = das Modell „{ $code }“ hat keinen Namen
    .next = Den Namen angeben, der auf der Schachtel steht
model-fault-bad-code = „{ $code }“ geht nicht als Code: 1 bis 32 Buchstaben, Ziffern, - _ oder ., zum Beispiel HERON-7
shaft-fault-no-blank = das Schaftmodell „{ $code }“ hat keinen Rohschaft
    .next = Mindestens einen Rohschaft mit Masse, Länge und Balancepunkt angeben
shaft-fault-stiffness-order = die Steifigkeitstabelle des Schaftmodells „{ $code }“ ist nicht geordnet
    .next = Jede Stelle einmal, vom Tip her: Abstand vom Tip in mm, Biegesteifigkeit in N·m²
shaft-fault-blank-for-tip =
    { $number ->
        [none] das Schaftmodell „{ $code }“ passt nicht zu seinem Rohschaft: { $tip }, aber der Rohschaft gilt für alle Nummern
       *[other] das Schaftmodell „{ $code }“ passt nicht zu seinem Rohschaft: { $tip }, aber der Rohschaft gilt für Nummer { $number }
    }
    .next = Ein Taper-Tip hat einen Rohschaft je Nummer, ein Parallel-Tip einen ohne Nummer
head-fault-no-numbers = das Kopfmodell „{ $code }“ hat keine Nummern
    .next = Mindestens eine Nummer mit Masse, Loft, Lie und Tabellenlänge eintragen
head-fault-number-twice = im Kopfmodell „{ $code }“ steht die Nummer { $number } zweimal
    .next = Eine der beiden behalten
adapter-fault-setting-name = Einstellung { $number } des Adapters hat keinen Namen oder einen mit mehr als 32 Zeichen
    .next = Eintragen, was auf dem Adapter steht, zum Beispiel +1
adapter-fault-setting-twice = der Adapter hat die Einstellung „{ $name }“ zweimal
    .next = Eine der beiden behalten
adapter-fault-no-such-setting = Schläger werden mit Einstellung „{ $name }“ gebaut, aber sie fehlt in der Liste der Einstellungen
    .next = In die Liste eintragen oder eine nennen, die dort steht
adhesive-fault-ratios-disagree = die Mischungsverhältnisse des Klebers „{ $code }“ widersprechen sich: { FIGURE($by_volume) } : 1 nach Volumen ergibt mit diesen Dichten { PLAIN($as_mass, digits: 2) } : 1 nach Masse, angegeben ist { FIGURE($by_mass) } : 1
    .next = Beide Verhältnisse und beide Dichten noch einmal vom Blatt des Klebers ablesen
adhesive-fault-cure-times =
    { $n ->
        [0] der Kleber „{ $code }“ hat keine Zeit bis zur { $strength }
       *[other] der Kleber „{ $code }“ hat { $n } Zeiten bis zur { $strength }
    }
    .next = Eine Zeit angeben, oder zwei bei verschiedenen Temperaturen, vom Blatt des Klebers
adhesive-fault-cure-slower-with-heat = die beiden Zeiten von „{ $code }“ werden mit der Wärme nicht kürzer ({ $strength })
    .next = Noch einmal vom Blatt des Klebers ablesen

model-kind-head = Köpfe
model-kind-adapter = Adapter
model-kind-shaft = Schäfte
model-kind-grip = Griffe
model-kind-tip-weight = Tip-Gewichte
model-kind-ferrule = Ferrulen
model-kind-adhesive = Kleber
model-kind-tape = Bänder
model-models = Modelle
model-kinds = Arten
model-new = Neues Modell: { $kind }
model-load-file = Aus einer Datei laden
model-save-file = Alle als Datei speichern
model-parts = Teile
model-none = Noch kein Modell: { $kind }.
model-none-next = Eines vom Herstellerblatt eingeben oder Modelle aus einer Datei laden.
model-count =
    { $count ->
        [one] ein Modell
       *[other] { $count } Modelle
    }
model-count-kept =
    { $count ->
        [one] Ein Modell gespeichert.
       *[other] { $count } Modelle gespeichert.
    }
model-of-kind = Modelle: { $kind }
model-name = Name
model-code = Code
model-what = was es ist
model-head-right = { $kind }: { $numbers }; Bohrung { LENGTH($bore_mm, digits: 3) }
model-head-left = { $kind }, Linkshand: { $numbers }; Bohrung { LENGTH($bore_mm, digits: 3) }
model-adapter = { $mass_g }, für { $head }
model-shaft = { $material }, { $tip } { LENGTH($tip_mm, digits: 3) }
model-shaft-raw = { $material }, { $tip } { LENGTH($tip_mm, digits: 3) }, roh { $mass_g }
model-grip = { $mass_g }, { $shape }, Kern { LENGTH($core_mm, digits: 3) }
model-tip-weight = { $mass_g }, für Tips von { LENGTH($from_mm, digits: 3) } bis { LENGTH($to_mm, digits: 3) }
model-ferrule = innen { LENGTH($inside_mm, digits: 3) }, { $mass_g }
model-adhesive = Topfzeit { PLAIN($life_min, digits: 0) } min bei { PLAIN($at_c, digits: 0) } °C
model-tape = { PLAIN($area_g_per_m2, digits: 0) } g/m², { LENGTH($thick_mm, digits: 3) } dick
model-example = Die Werte unten sind ein Beispiel.
model-example-next = Jeden davon durch den Herstellerwert oder die eigene Messung ersetzen.
model-kept = { $name } gespeichert.
model-code-taken = { $code } ist schon der Code von { $name }. Einen anderen Code wählen
model-keep = Modell speichern
model-keep-change = Änderung speichern
model-remove-this = Dieses Modell entfernen
model-remove-hint = Entfernen lässt sich nur ein Modell, das kein Teil und kein Blatt verwendet.
model-remove = Entfernen
model-all-of-kind = Alle Modelle: { $kind }
model-crumb = Modell, { $kind }, Code { $code }
model-file = Datei
model-file-hint = Modelle, die hier als Datei gespeichert wurden (JSON)
model-file-text = Oder der Text daraus
model-file-good = Gute Modelle werden gespeichert und ersetzen die mit demselben Code; schlechte werden aufgelistet.
model-load = Modelle laden
model-save-all = Alle Modelle als Datei speichern
model-back = Zurück zu den Modellen
model-from-file = Modelle aus einer Datei
model-file-none = Datei auswählen oder die Modelle einfügen
model-not-kept = Nicht gespeichert
model-entry = Modell { $entry }
model-file-again = Die anderen in der Datei berichtigen und sie noch einmal laden.
