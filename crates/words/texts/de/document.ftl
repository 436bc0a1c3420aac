### Document

# What is wrong with a document.
document-not-json = der Text ist kein JSON, Zeile { $line }, Spalte { $column }: { $what }
document-in-text =
    { $place ->
        [none] das Dokument: { $what } (Zeile { $line }, Spalte { $column })
       *[other] { $place }: { $what } (Zeile { $line }, Spalte { $column })
    }
document-in-value =
    { $place ->
        [none] das Dokument: { $what }
       *[other] { $place }: { $what }
    }
document-of-name =
    { $name ->
        [none] { $what }
       *[other] { $name } { $what }
    }

document-mistake-missing = fehlt
document-mistake-unknown-field =
    { $known ->
        [none] unbekanntes Feld `{ $name }`; hier gibt es keine Felder
       *[other] unbekanntes Feld `{ $name }`; hier bekannt: { $known }
    }
document-mistake-not-a-choice = „{ $name }“ steht nicht zur Wahl; hier bekannt: { $known }
document-mistake-twice = ist doppelt angegeben
document-mistake-wrong-kind = muss { $wanted } sein, nicht { $found }
document-mistake-empty = ist leer, muss aber { $wanted } sein oder ganz fehlen
document-mistake-wrong-length = muss { $wanted } sein, hat aber { $n }
document-mistake-other = ist nicht lesbar: { $log }

document-wanted-number = eine Zahl
document-wanted-whole-number = eine ganze Zahl
document-wanted-count = eine ganze Zahl ab 0
document-wanted-whole-number-within = eine ganze Zahl von { $low } bis { $high }
document-wanted-text = ein Text
document-wanted-yes-no = true oder false
document-wanted-list = eine Liste [ … ]
document-wanted-list-of = eine Liste der Länge { $n }
document-wanted-object = ein Objekt { "{" } … { "}" }
document-wanted-choice = eine der Möglichkeiten als Text oder Objekt
document-wanted-name = ein Name als Text
document-wanted-null = ein leerer Wert
document-wanted-other = { $log }

document-found-null = ein leerer Wert
document-found-list = eine Liste
document-found-object = ein Objekt
document-found-text = der Text „{ $text }“
document-found-value = { $text }

not-json-empty = er ist leer
not-json-too-short = er endet zu früh
not-json-value = ein Wert fehlt oder ist falsch geschrieben. Texte stehen in doppelten Anführungszeichen, Zahlen und die Wörter true und false nicht
not-json-colon = nach einem Namen fehlt ein Doppelpunkt
not-json-comma-in-list = ein Komma oder das Ende einer Liste fehlt
not-json-comma-in-object = ein Komma oder das Ende eines Objekts fehlt
not-json-name = ein Name muss in doppelten Anführungszeichen stehen
not-json-trailing-comma = vor dem Ende einer Liste oder eines Objekts darf kein Komma stehen
not-json-more = nach dem Ende des Dokuments folgt noch Text
not-json-control = ein Text enthält einen Zeilenumbruch oder Tabulator. Dafür \n oder \t schreiben
not-json-escape = ein Text enthält einen umgekehrten Schrägstrich ohne gültige Fortsetzung. Dafür \\ schreiben
not-json-hex-escape = eine Folge \u… ist unvollständig
not-json-number = eine Zahl ist falsch geschrieben
not-json-too-large = eine Zahl ist zu groß
not-json-not-utf8 = der Text ist nicht in UTF-8
not-json-too-deep = Listen und Objekte sind mehr als 128-fach verschachtelt
