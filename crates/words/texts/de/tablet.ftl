### This tablet: its colours, its figures, its keys

tablet-title = Dieses Tablet
tablet-crumb = Gilt nur auf diesem Tablet
tablet-kept = Auf diesem Tablet gespeichert.
tablet-keep = Speichern

tablet-show = Farben und Zahlen
tablet-theme = Farben
tablet-theme-device = wie am Gerät eingestellt
tablet-theme-light = hell
tablet-theme-dark = dunkel
tablet-language = Sprache
tablet-language-browser = wie im Browser eingestellt
tablet-language-hint = Andere Tablets behalten ihre
tablet-decimal = Dezimalzeichen
tablet-decimal-language = wie in der Sprache üblich
tablet-decimal-point = Punkt, etwa 264.3
tablet-decimal-comma = Komma, etwa 264,3
tablet-decimal-hint = Eingeben können Sie beides

tablet-hands = Tasten und Pedal
tablet-letters = Einzelne Buchstaben lösen Schaltflächen aus
tablet-letters-hint = Ausschalten, wenn Sie Ihre Eingaben sprechen oder ein Buchstabe etwas ausgelöst hat, was Sie nicht wollten. Enter, Pedal und Scanner gehen weiterhin.
tablet-pedal = Taste des Fußpedals
tablet-pedal-hint = Dieses Feld antippen und das Pedal treten. Leer gilt jede Funktionstaste außer F5, F11 und F12.
tablet-pedal-wrong = „{ $key }“ taugt nicht für das Pedal: Die Taste schreibt einen Buchstaben oder bewegt den Cursor
    .next = Das Pedal auf eine Funktionstaste, PageDown, Pause oder Ähnliches einstellen

tablet-keys = Was die Tasten tun
tablet-key = Taste
tablet-does = Wirkung
tablet-where = Wo
tablet-key-pedal = Pedal
tablet-key-scanner = Scanner
tablet-key-enter = Enter
tablet-key-tab = Tab
tablet-key-esc = Esc

tablet-everywhere = überall
tablet-at-bench = Werkbank
tablet-in-lists = Listen, Kleben
tablet-at-weigh-in = Einwiegen
tablet-at-scales = Waagen

tablet-does-list = zeigt die Tasten dieser Seite
tablet-does-enter = speichert die Eingabe und geht zum nächsten Schläger; drückt „Erledigt“, wenn ein Schritt nur zu erledigen ist
tablet-does-weigh-enter = speichert das Teil
tablet-does-pedal = speichert die Eingabe, wo auch immer der Cursor steht
tablet-does-scanner = öffnet das Teil oder den Schläger; an der Werkbank speichert die eigene Laufkarte des Schlägers die Eingabe
tablet-does-tab = geht zum nächsten Feld oder zur nächsten Schaltfläche
tablet-does-next = nächster Schläger, nächster Schritt
tablet-does-all = alle Schläger bei diesem Schritt
tablet-does-wrong = der letzte Messwert war falsch: nimmt ihn zurück
tablet-does-again = misst den letzten noch einmal
tablet-does-done = erledigt für alle Schläger
tablet-does-glue = mischt einen Ansatz an
tablet-does-new = neues Blatt, Teil, Modell oder neue Bestellung
tablet-does-weigh-wrong = das letzte Teil war falsch
tablet-does-weigh-again = wiegt das Teil noch einmal
tablet-does-check = prüft die Waage
