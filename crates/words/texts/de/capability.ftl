### Capability: how well the shop meets its tolerances

capability-title = Prozessfähigkeit
capability-crumb = beim Schwunggewicht, über alle fertigen Schläger
capability-none = Noch ist kein Schläger fertig.
capability-none-next = Hier zählt jeder fertige Schläger mit dem Urteil seiner Akte. Zuerst einen Auftrag abschließen.
capability-means = Cp sagt, wie oft die Streuung der Werkstatt in die Toleranz passt: Bei 1 verfehlt eine Werkstatt, die im Mittel genau trifft, 3 von 1000 Schlägern; üblich als Ziel ist 1,33. Cpk zählt mit, wie weit der Mittelwert neben dem Ziel liegt. Jeder Schläger zählt nach seiner eigenen Toleranz. In Klammern: In 95 von 100 Fällen liegt der Wert in diesem Bereich, bei dieser Anzahl Schläger.
capability-all = Alle Schläger
capability-all-finished = Alle fertigen Schläger
capability-by-month = Nach Monat
capability-of-months = Prozessfähigkeit nach Monat
capability-by-model = Nach Kopfmodell
capability-of-models = Prozessfähigkeit nach Kopfmodell
capability-which = welche
capability-month = Monat
capability-model = Modell
capability-clubs = Schläger
capability-mean = im Mittel daneben
capability-in = in der Toleranz
capability-too-close = zu knapp
capability-out = daneben
capability-cp = Cp
capability-cpk = Cpk
capability-too-few = zu wenige
capability-every = alle
capability-index = { $value } ({ $low } bis { $high })

# How often the forecasts held.
capability-bands = Wie oft die Vorhersagen stimmten
capability-bands-mean = Vor jedem Messwert sagt Setwright, wo er liegen sollte, und verspricht, dass 95 von 100 dort liegen. Hier werden die Messwerte der Werkstatt seit { $since_on } gegen die Vorhersage gezählt, die vor jedem stand. Zurückgenommene und wiederholte Messwerte zählen nicht. In Klammern: Auf Dauer liegt der Anteil der Werkstatt in 95 von 100 Fällen hier; die Messwerte eines Auftrags gelten als ein Fall.
capability-bands-none = Zu keinem Messwert des letzten Jahres gab es eine Vorhersage.
capability-bands-by-step = Eingetroffene Vorhersagen nach Schritt
capability-bands-by-month = Eingetroffene Vorhersagen nach Monat
capability-bands-step = Schritt
capability-bands-read = Messwert
capability-bands-of = Messwerte
capability-bands-share = eingetroffen
capability-bands-verdict = was das heißt
capability-bands-percent = { PLAIN($percent, digits: 0) } % ({ PLAIN($low, digits: 0) } bis { PLAIN($high, digits: 0) })
capability-bands-every = jeder Schritt

promise-too-sure = zu sicher: weniger eingetroffen als versprochen
promise-too-careful = zu vorsichtig: mehr eingetroffen als versprochen
promise-kept = wie versprochen
promise-too-few = zu wenige Messwerte für ein Urteil
