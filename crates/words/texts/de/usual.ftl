### Übliche Modelle: von keinem Hersteller, für den Anfang

usual-title = Übliche Modelle
usual-intro = Diese Modelle sind von keinem Hersteller: Werte, wie sie im Handwerk üblich sind. Einige für den Anfang übernehmen, die eigenen Teile wiegen und die Werte durch die des Herstellers ersetzen, sobald sie da sind. Für das Aushärten gilt das Blatt des eigenen Klebers.
usual-keep = Angekreuzte Modelle übernehmen
usual-there = schon da
usual-none-ticked = Kein Modell ist angekreuzt.
usual-none-ticked-next = Die gewünschten Modelle ankreuzen.
usual-sources = Woher die Werte kommen
usual-sources-open = Wert für Wert
usual-line-there = , schon da
usual-done =
    { $kept ->
        [0] Kein neues Modell.
        [one] Ein Modell übernommen.
       *[other] { $kept } Modelle übernommen.
    } { $there ->
        [0] { "" }
        [one] Eines gab es schon; es bleibt, wie es ist.
       *[other] { $there } gab es schon; sie bleiben, wie sie sind.
    }
usual-fault-no-codes = kein übliches Modell genannt
    .next = Die Codes der gewünschten angeben

usual-name-blade-irons = Blade-Eisen
usual-name-cavity-irons = Cavity-Eisen
usual-name-wedges = Wedges
usual-name-driver = Driver
usual-name-fairway-woods = Fairwayhölzer
usual-name-hybrids = Hybride
usual-name-putter = Putter
usual-name-left-hand = { $of }, Linkshand
usual-name-steel-iron-shaft = Stahlschaft für Eisen, parallel, { MASS($mass_g, digits: 0) }
usual-name-steel-taper-shaft = Stahlschaft für Eisen, Taper, { MASS($mass_g, digits: 0) }
usual-name-graphite-iron-shaft = Graphitschaft für Eisen, { MASS($mass_g, digits: 0) }
usual-name-graphite-wood-shaft = Graphitschaft für Hölzer, { MASS($mass_g, digits: 0) }
usual-name-graphite-hybrid-shaft = Graphitschaft für Hybride, { MASS($mass_g, digits: 0) }
usual-name-steel-putter-shaft = Stahlschaft für Putter
usual-name-undersize-grip = Dünner Griff
usual-name-standard-grip = Standardgriff
usual-name-midsize-grip = Midsize-Griff
usual-name-jumbo-grip = Jumbo-Griff
usual-name-putter-grip = Puttergriff
usual-name-tip-weight = Tip-Gewicht aus Messing, { MASS($mass_g, digits: 0) }
usual-name-ferrule = Ferrule, { LENGTH($inside_mm, digits: 3) }
usual-name-double-sided-tape = Doppelseitiges Band
usual-name-build-up-tape = Aufbauband
usual-name-quick-adhesive = Zweikomponentenkleber, schnell
usual-name-day-adhesive = Zweikomponentenkleber, über Nacht
usual-name-slow-adhesive = Zweikomponentenkleber, langsam

# Woher ein Wert eines üblichen Modells kommt.
usual-source-common-practice = Im Handwerk üblich, ohne Quelle
usual-source-seven-grams = Im Handwerk üblich, ohne Quelle: derselbe Massenschritt von Nummer zu Nummer
usual-source-half-inch = Im Handwerk üblich, ohne Quelle: derselbe Längenschritt von Nummer zu Nummer
usual-source-sold-sizes = Handelsgrößen solcher Teile, aus dem Gedächtnis
usual-source-mass-class = Die Klasse, für die es steht
usual-source-from-memory = Aus dem Gedächtnis
usual-source-wide-guess = Eine weite Schätzung, ohne Quelle
usual-source-cautious = Auf der vorsichtigen Seite, ohne Quelle; das Blatt des Herstellers geht vor
usual-source-brass = Aus der Dichte von Messing und der Dicke des Stifts
usual-source-densities = Aus den beiden Dichten
