### Stock list

# What is refused of remembered columns.
layout-fault-bad-name = „{ $name }“ geht nicht als Name für gemerkte Spalten
    .next = 1 bis { $most } Zeichen angeben, zum Beispiel den Namen des Lieferanten
layout-fault-bad-line = „{ $name }“ hat die Spaltennamen in einer Zeile, die es in keiner Liste gibt
    .next = Die Zeile mit den Spaltennamen angeben, 1 bis { $most }, oder weglassen
layout-fault-no-headings = „{ $name }“ hat keine Spaltennamen, an denen die Liste zu erkennen wäre
    .next = Die Spaltennamen so angeben, wie sie in der Liste stehen

# Why a list of parts or models is refused as a whole.
stock-file-empty = die Datei ist leer
    .next = Die erste Zeile muss die Spalten nennen, zum Beispiel { $columns }
stock-file-other-file = das ist { $what }, keine CSV-Datei und keine XLSX-Arbeitsmappe
stock-file-not-text = Zeile { $line } ist kein Text in UTF-8 (Byte { $at_byte })
    .next = Die Datei als CSV in UTF-8 speichern
stock-file-not-csv = die Datei ist nicht als CSV lesbar: { $problem }
    .next = Als CSV in UTF-8 speichern, durch Kommas getrennt
stock-file-no-header = die erste Zeile nennt nicht alle Spalten: Es fehlt { $missing }, und dort steht „{ $found }“
    .next = Zum Beispiel { $columns } schreiben
stock-file-no-column = keine Spalte für: { $missing }
    .next = Die Spalte wählen oder eingeben, was für alle Zeilen gilt
stock-file-unknown-column = nicht bekannte Spalte: { $names }
    .next = Wählen, was sie enthält, oder sie nicht verwenden; bekannt sind { $known }
stock-file-two-columns = die Spalte „{ $name }“ gibt es zweimal
    .next = Nur eine der beiden behalten
stock-file-not-xlsx = die Arbeitsmappe ist nicht lesbar: { $problem }
    .next = Öffnen und neu als XLSX speichern, oder ihr Tabellenblatt als CSV
stock-file-unpacked-too-large = die Arbeitsmappe hat entpackt mehr als { $limit_mb } MB
    .next = Nur das Tabellenblatt mit den Teilen speichern, oder als CSV
stock-file-too-many-rows = die Liste hat mehr als { $limit } Zeilen
    .next = Aufteilen und die Stücke nacheinander einlesen
stock-file-too-many-columns = die Liste hat mehr als { $limit } Spalten
    .next = Die entfernen, in denen nichts über Teile steht
stock-file-too-many-cells = das Tabellenblatt hat mehr als { $limit } Zellen oder { $letters_mb } MB Text
    .next = Nur die Spalten mit den Teilen speichern, oder als CSV
stock-file-no-sheet = das Tabellenblatt „{ $name }“ gibt es nicht
    .next =
        { $known ->
            [none] Eine Textdatei hat keine Tabellenblätter: den Namen weglassen
           *[other] Vorhanden: { $known }
        }
stock-file-no-header-line = Zeile { $line } ist leer und kann die Spalten nicht nennen
    .next = Die erste Zeile mit Inhalt ist { $first }
stock-file-merged-headings = die Zellen { $cells } mit Spaltennamen sind verbunden
    .next = Den Verbund auflösen und jeder Spalte ihren eigenen Namen geben
stock-file-unknown-field = „{ $name }“ wird zu einem Teil nicht gespeichert
    .next = Bekannt sind { $known }
stock-file-no-heading = für { $field } gibt es keine Spalte „{ $heading }“
    .next = Die Spalten sind { $found }
stock-file-field-twice = „{ $first }“ und „{ $second }“ können nicht beide „{ $field }“ sein
    .next = Eine der beiden wählen
stock-file-wrong-unit = „{ $unit }“ ist keine Einheit für { $field }
    .next =
        { $two_meanings ->
            [none]
                { $known ->
                    [none] Eine Einheit ist nur bei Masse, Länge und Balancepunkt zu wählen
                   *[other] Eine wählen: { $known }
                }
           *[other] { $two_meanings }
        }
stock-file-not-json = die Modelle sind ab Zeile { $line }, Spalte { $column } nicht als JSON lesbar: { $what }
    .next = Eine Liste von Modellen angeben, [ … ]

other-file-locked = eine Arbeitsmappe mit Passwort
    .next = Ohne Passwort speichern und diese Datei einlesen
other-file-old-spreadsheet = eine Tabelle im alten Format (.xls)
    .next = Als XLSX-Arbeitsmappe oder als CSV speichern und diese Datei einlesen
other-file-binary-workbook = eine binäre Arbeitsmappe (.xlsb)
    .next = Als XLSX-Arbeitsmappe oder als CSV speichern und diese Datei einlesen
other-file-open-document = eine OpenDocument-Datei
    .next = Als XLSX-Arbeitsmappe oder als CSV speichern und diese Datei einlesen
other-file-zipped = ein ZIP-Archiv mit anderem Inhalt
    .next = Entpacken und die Liste selbst einlesen
other-file-pdf = ein PDF
    .next = Die Liste als CSV oder XLSX anfordern
other-file-utf16 = Text in UTF-16
    .next = Als CSV in UTF-8 speichern
other-file-binary = eine Binärdatei
    .next = Eine CSV-Datei oder eine XLSX-Arbeitsmappe einlesen
other-file-web-page = eine Webseite
    .next = Die CSV-Datei selbst einlesen
other-file-json = JSON
    .next = Als Modelle einlesen, oder die Teile als CSV

# A unit that means two things.
unit-fault-gram-or-grain = Die Einheit heißt für manche Gramm, für andere Grain: g oder grain wählen

# What is refused of a list of models.
model-file-fault-not-a-list = das ist keine Liste von Modellen
model-file-fault-field = { $what }
    .next = Das Feld berichtigen oder weglassen
model-file-fault-code-twice = der Code { $code } steht weiter vorn schon in der Liste
    .next = Jedem Modell einen eigenen geben
model-file-fault-code-of-other = diesen Code hat schon ein anderes Modell ({ $kind })
    .next = Einen anderen wählen

# What is wrong with a cell or a row of a list of parts.
cell-fault-unreadable = { $what }
cell-fault-no-owner = das ist kein Code eines Kunden
    .next = Zum Beispiel CU-3 schreiben, oder leer lassen, wenn das Teil der Werkstatt gehört
cell-fault-part = { $what }
cell-fault-impossible = { $value } ist nicht möglich; { $kind }, { $name }: { $low } bis { $high }
    .next = Wert und Einheit prüfen
cell-fault-no-model = kein Modell angegeben
    .next = Den Code des Modells schreiben
cell-fault-unknown-model = dieses Modell gibt es nicht
    .next =
        { $known ->
            [none] Zuerst das Modell anlegen
           *[other] Bekannt sind { $known }
        }
cell-fault-model-spelling = dieses Modell gibt es nicht
    .next = { $code } schreiben
cell-fault-other-kind = Modell und Zeile passen nicht zusammen: im Modell { $model }, in der Zeile { $kind }
    .next = Eines von beiden berichtigen
cell-fault-parallel-number = ein Parallel-Tip hat keine Nummer
    .next = Die Zelle leer lassen
cell-fault-no-numbers = Teile dieser Art ({ $kind }) haben keine Nummer
    .next = Die Zelle leer lassen
cell-fault-number-missing = die Nummer fehlt
    .next = Möglich: { $known }
cell-fault-unknown-number = diese Nummer gibt es im Modell nicht
    .next = Möglich: { $known }
cell-fault-code-missing = der Code fehlt
    .next = 1 bis 32 Zeichen verwenden: Buchstaben, Ziffern, - _ oder ., zum Beispiel H7-014
cell-fault-bad-code = das geht nicht als Code
    .next = 1 bis 32 Zeichen verwenden: Buchstaben, Ziffern, - _ oder ., zum Beispiel H7-014
cell-fault-code-in-stock = diesen Code hat schon ein Teil im Lager
    .next = Dem neuen Teil einen eigenen geben
cell-fault-code-before = diesen Code hat auch Zeile { $line }
    .next = Jedem Teil einen eigenen geben
cell-fault-kind-missing = die Art fehlt
    .next = Möglich: { $known }
cell-fault-unknown-kind = diese Art von Teil gibt es nicht
    .next = Möglich: { $known }
cell-fault-of-job = ein Teil mit dem Stand „{ $state }“ gehört zu einem Auftrag
    .next = free schreiben oder die Zeile weglassen
cell-fault-unknown-state = diesen Stand gibt es nicht
    .next = free, ordered, pulled oder rejected schreiben
cell-fault-bad-count = das ist keine ganze Zahl ab 0
    .next = Schreiben, wie viele in der Schachtel sind, oder leer lassen
cell-fault-not-weighed = was in der Werkstatt liegt ({ $kind }), muss gewogen sein
    .next = Auf 0,1 g wiegen oder ordered schreiben
cell-fault-neither-mass-nor-count = weder Masse noch Anzahl angegeben
    .next = Wiegen, oder zählen, wie viele in der Schachtel sind
cell-fault-quote-open = die Zeile hat { $has } Zellen, die Kopfzeile { $width }
    .next = Ein Anführungszeichen darin ist nicht geschlossen
cell-fault-too-many-cells = die Zeile hat { $has } Zellen, die Kopfzeile { $width }
    .next = Eine Zelle, die ein Komma enthält, in Anführungszeichen setzen, zum Beispiel "256,1"
cell-fault-too-few-cells = die Zeile hat { $has } Zellen, die Kopfzeile { $width }
    .next = Die fehlenden Kommas ergänzen
cell-fault-formula = die Zelle { $place } enthält eine Formel, deren Wert nicht mitgespeichert ist
    .next = Die Arbeitsmappe in ihrem Programm öffnen und neu speichern, oder den Wert selbst schreiben
cell-fault-date = die Zelle { $place } ist ein Datum oder eine Uhrzeit
    .next = Die Zelle als Text formatieren und den Text neu schreiben
cell-fault-error = die Zelle { $place } zeigt den Fehler { $error }
    .next = Ihre Formel berichtigen oder den Wert schreiben
cell-fault-merged = die Zellen { $cells } sind verbunden, und nur die erste enthält einen Wert
    .next = Den Verbund auflösen und den Wert in jede schreiben

# Figures of a part, in a sentence about one.
figure-name-mass = Masse
figure-name-length = Länge
figure-name-balance-point = Balancepunkt
figure-name-frequency = Frequenz
figure-name-loft = Loft
figure-name-lie = Lie
figure-name-other = { $name }

# What is wrong in a row.
row-fault-cell = { $column } „{ $cell }“: { $what }
row-fault-row = { $what }
row-fault-line = Zeile { $line }, { $what }
row-fault-line-as-whole = Zeile { $line }: { $what }

# What is refused of a list to import.
list-fault-too-large = diese Datei hat { $size_mb } MB; höchstens { $most_mb } MB lassen sich einlesen
    .next = Aufteilen und die Stücke nacheinander einlesen

stock-list-title = Teile einlesen
stock-list-file = Datei
stock-list-file-hint = Eine Arbeitsmappe (XLSX) oder eine Tabelle, als CSV in UTF-8 gespeichert
stock-list-rows = Oder ihre Zeilen
stock-list-look = Liste prüfen
stock-list-look-first = Nichts wird gespeichert, bevor Sie das Ergebnis gesehen haben.
stock-list-form = Form der Liste
stock-list-form-size = Jede Liste mit einem Teil je Zeile, bis { $rows } Zeilen und { $size_mb } MB. Eine Zeile nennt die Spalten; im nächsten Schritt wählen Sie, was in welcher Spalte steht.
stock-list-form-names = Diese Namen werden in beliebiger Reihenfolge erkannt: <code>{ $names }</code>. Code und Modell müssen angegeben sein.
stock-list-form-cells = Zellen wie in der Werkstatt schreiben: 256.1 oder 256,1, 8.9 oz, 36 3/4 in. Eine Zelle ohne Einheit hat die Einheit ihrer Spalte.
stock-list-form-models = Zuerst die Modelle anlegen: <a>Modelle laden</a>.
stock-list-remembered = Gemerkte Spalten
stock-list-remembered-hint = eine Liste mit denselben Spaltennamen wird erkannt
stock-list-forget = Vergessen
stock-list-nothing = Weder Datei noch Text. Wählen Sie eine Datei oder fügen Sie ihre Zeilen ein
stock-list-not-whole = Die Datei kam nicht vollständig von der Seite zurück. Wählen Sie sie noch einmal.
stock-list-load-again = Noch einmal laden.

# The second step: which column is which.
stock-list-twice = „{ $first }“ und „{ $second }“ können nicht beide „{ $name }“ sein. Eine wählen
stock-list-columns-next = Unten wählen, was in welcher Spalte steht, dann noch einmal prüfen. Noch ist nichts gespeichert.
stock-list-known = Diese Liste ist wie „{ $name }“.
stock-list-known-next = Die gemerkten Spalten gelten; ändern Sie, was hier anders ist.
stock-list-not-kept = noch nichts gespeichert
stock-list-keep-all =
    { $n ->
        [one] { $n } Teil speichern
       *[other] { $n } Teile speichern
    }
stock-list-keep-good =
    { $n ->
        [one] Die gute Zeile speichern
       *[other] Die { $n } guten Zeilen speichern
    }
stock-list-look-again = Noch einmal prüfen
stock-list-another = Andere Datei
stock-list-sheet = Tabellenblatt
stock-list-header-line = Zeile mit den Spaltennamen
stock-list-remember = Diese Spalten merken als
stock-list-remember-hint = Zum Beispiel der Name des Lieferanten; die nächste Liste mit denselben Spaltennamen wird erkannt. Leer: nicht gemerkt
stock-list-columns = Spalten
stock-list-columns-caption = Spalten der Datei
stock-list-heading = Spaltenname
stock-list-is = ist
stock-list-unit = Einheit
stock-list-first-cells = erste Zellen
stock-list-means = Bedeutung von „{ $heading }“
stock-list-unit-of = Einheit von „{ $heading }“
stock-list-not-used = nicht verwendet
stock-list-choose = wählen
stock-list-every-row = Für jede Zeile
stock-list-every-row-hint = was in der Liste fehlt
stock-list-as-in-column = wie in der Spalte

# What it gives.
stock-list-good = gute Zeilen
stock-list-doubtful = davon fraglich
stock-list-bad = fehlerhafte Zeilen
stock-list-good-first = Gute Zeilen (die ersten 50)
stock-list-good-rows = Gute Zeilen
stock-list-bad-rows = Fehlerhafte Zeilen
stock-list-doubtful-rows = Fragliche Zeilen
stock-list-doubtful-hint = gut, aber nachsehen
stock-list-line = Zeile { $line }
stock-list-more = Und { $n } mehr.
stock-list-more-bad = Und { $n } mehr; alle stehen in der Datei der fehlerhaften Zeilen.
stock-list-bad-file = Die fehlerhaften Zeilen speichern, berichtigen (die erste Spalte sagt, was falsch ist, und wird nicht mitgelesen) und diese Datei einlesen.
stock-list-save-bad = Fehlerhafte Zeilen speichern
stock-list-remembered-as = Die Spalten sind gemerkt als <strong>{ $name }</strong>.
stock-list-not-remembered = Die Spalten sind nicht gemerkt: { $what }
stock-list-import-more = Mehr einlesen
stock-list-kept =
    { $n ->
        [one] { $n } Teil gespeichert.
       *[other] { $n } Teile gespeichert.
    }
stock-list-refused =
    { $n ->
        [one] { $n } Zeile abgelehnt.
       *[other] { $n } Zeilen abgelehnt.
    }

# What the command prints.
stock-list-models = Modelle: { $kept } gespeichert, { $refused } abgelehnt
stock-list-done = Teile: { $kept } gespeichert, Zeilen: { $refused } abgelehnt
stock-list-unused = nicht verwendete Spalten: { $headings }
stock-list-warning = Zeile { $line }, { $code }: { $doubt }
