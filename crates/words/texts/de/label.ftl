### Labels of parts

label-title = Etiketten
label-scan-square = das Quadrat scannen
label-of-part = { $code }, { $what }, { $mass }
label-part = { $name } { $number }

# The page of labels.
label-none = Kein Teil passt.
label-none-next = Die Teile auf der Seite Lager wählen, dann ihre Etiketten drucken.
label-next = Die nächsten, ab { $from } von { $total }
label-sheet = Bogen
label-strip = Streifen, eines je Seite
label-back = Zurück zum Lager
label-print-sheet = Diese Seite mit 100 % und ohne eigene Ränder drucken: jedes Etikett misst 62 × 29 mm.
label-print-strip = Diese Seite mit 100 % und ohne eigene Ränder drucken: jedes Etikett misst 62 × 29 mm, eines auf jeder Seite des Streifens.
label-count =
    { $n ->
        [one] { $n } Etikett
       *[other] { $n } Etiketten
    }
