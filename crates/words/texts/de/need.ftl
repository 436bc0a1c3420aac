### Need: the stock against jobs and sheets

need-page = Fehlmengen
need-export = CSV exportieren
need-nothing = Kein Teil liegt im Lager, und kein Blatt braucht eines.
need-nothing-next = Legen Sie ein Blatt an oder wiegen Sie Teile ein.
need-new-sheet = Neues Blatt
need-enough = Genug
need-enough-next = Für alle offenen Aufträge und Blätter sind genug Teile da. Ob ihr Gewicht passt, prüft der Plan.
need-short = Fehlt
need-short-caption = Fehlende Teile
need-enough-head = Köpfe in ausreichender Zahl ({ $n })
need-enough-adapter = Adapter in ausreichender Zahl ({ $n })
need-enough-shaft = Schäfte in ausreichender Zahl ({ $n })
need-enough-grip = Griffe in ausreichender Zahl ({ $n })
need-enough-tip-weight = Tip-Gewichte in ausreichender Zahl ({ $n })
need-enough-ferrule = Ferrulen in ausreichender Zahl ({ $n })
need-enough-adhesive = Kleber in ausreichender Zahl ({ $n })
need-enough-tape = Griffbänder in ausreichender Zahl ({ $n })
need-hint = Gezählt nach Modell und Nummer: zuerst Aufträge ohne Teile, der früheste Termin voran, dann nicht freigegebene Blätter. Ein Kopf muss eingewogen sein, bevor ein Plan ihn nehmen kann.
need-none-short = nichts fehlt
need-count-short =
    { $n ->
        [one] 1 fehlt
       *[other] { $n } fehlen
    }
need-not-weighed = , { $n } nicht gewogen
need-column-what = was
need-column-free = frei
need-column-held = reserviert
need-column-on-order = bestellt
need-column-for-jobs = für Aufträge
need-column-for-sheets = für Blätter
need-column-short = fehlt
need-column-to-do = zu tun
need-order = { $n } bestellen
need-ordered = bestellt
