### Sheet form

# A new sheet.
sheet-form-player = Spieler
sheet-form-known = Name eines bekannten Kunden
sheet-form-take-known = Damit beginnen
sheet-form-which-customer = diesen Namen haben mehrere Kunden: { $codes }. Geben Sie den Code des richtigen ein
sheet-form-player-needed = Den Namen des Spielers eingeben
sheet-form-due = Termin
sheet-form-due-needed = Den Tag eingeben, an dem der Satz fällig ist
sheet-form-hand = Hand
sheet-form-note = Notiz
sheet-form-note-hint = Was die Werkbank sonst noch wissen soll
sheet-form-written = Das Blatt
sheet-form-written-hint = Zum Beispiel: 5-PW, +1/2, 2 up, D3, 2 wraps. Erst die Schläger, dann die Werte; was vor dem ersten Schläger steht, gilt für alle.
sheet-form-written-needed = Das Blatt schreiben, zum Beispiel 5-PW, +1/2, 2 up, D3
sheet-form-understands = Was verstanden wird
sheet-form-rule = Was den Satz verbindet
sheet-form-look = Schläger anzeigen
sheet-form-save = Speichern
sheet-form-meaning = Die Schläger, wie gelesen
sheet-form-not-saved = Noch ist nichts gespeichert. Auch ein Blatt mit Befunden lässt sich speichern und später berichtigen; nur der Auftrag wartet darauf.
sheet-form-no-model = Noch kein Modell: { $kind }.
sheet-form-needs-models = Ein Blatt braucht die Modelle, aus denen gebaut wird. Legen Sie zuerst je ein Modell für Kopf, Schaft und Griff an.
sheet-form-new-model = Neues Modell: { $kind }
sheet-form-load-models = Modelle aus einer Datei laden

# Phrases of a short sheet, by what they set. The phrases are what the program reads: they stay as they are.
sheet-form-say-clubs = Schläger
sheet-form-phrases-clubs = 5-PW · 5 to P · 5, 7, 9 · 3w · 7-iron · driver · wedges · all
sheet-form-say-length = Länge
sheet-form-phrases-length = +1/2 · -1/4 in · +12 mm · 1/2 over · std · 36 3/4 in · to the cap · to the shaft end
sheet-form-say-lie = Lie
sheet-form-phrases-lie = 2 up · 1° flat · lie 62 · lie +1
sheet-form-say-loft = Loft
sheet-form-phrases-loft = 1 strong · 1 weak · loft 34 · loft -1
sheet-form-say-swing-weight = Schwunggewicht
sheet-form-phrases-swing-weight = D3 · D2.5 · D2 +0.5 a club · wedges +2 points
sheet-form-say-tape = Griffband
sheet-form-phrases-tape = 2 wraps (zusätzlich zur Grundlage) · 2 wraps + 1 lower hand · no wraps
sheet-form-say-labels = Aufdruck
sheet-form-phrases-labels = grip down · logo away · shaft up
sheet-form-say-frequency = Frequenz
sheet-form-phrases-frequency = 300 cpm · 300 cpm +4 a club
sheet-form-say-total-mass = Gesamtmasse
sheet-form-phrases-total-mass = total 428 g · total 428 g +7 a club
sheet-form-say-soft-side = weiche Seite
sheet-form-phrases-soft-side = soft side heel · toe · target · away
sheet-form-phrases-adapter = adapter +1 · adapter at flat
sheet-form-say-tolerance = Toleranz
sheet-form-phrases-tolerance = ±0.3 (Punkte) · ±1.5 mm · ±0.5° · ±2 cpm

# The models of the set.
sheet-form-heads = Köpfe
sheet-form-head-needed = Mindestens ein Kopfmodell ankreuzen
sheet-form-head-choice =
    { $hand ->
        [left] { $head } ({ $kind }, Linkshand)
       *[right] { $head } ({ $kind })
    }
sheet-form-head = Kopf
sheet-form-shaft = Schaft
sheet-form-shaft-needed = Einen Schaft wählen
sheet-form-grip = Griff
sheet-form-grip-needed = Einen Griff wählen
sheet-form-ferrule = Ferrule
sheet-form-adhesive = Kleber
sheet-form-tape = Griffband
sheet-form-choose = wählen
sheet-form-none = ohne
sheet-form-shops-own = wie in der Werkstatt üblich
sheet-form-as-above = wie oben
sheet-form-others = Andere für Hölzer, Hybride, Wedges oder Putter
sheet-form-own =
    { $part ->
        [shaft] { $club ->
            [wood] Schaft für Hölzer
            [hybrid] Schaft für Hybride
            [wedge] Schaft für Wedges
           *[putter] Schaft für Putter
        }
        [grip] { $club ->
            [wood] Griff für Hölzer
            [hybrid] Griff für Hybride
            [wedge] Griff für Wedges
           *[putter] Griff für Putter
        }
       *[ferrule] { $club ->
            [wood] Ferrule für Hölzer
            [hybrid] Ferrule für Hybride
            [wedge] Ferrule für Wedges
           *[putter] Ferrule für Putter
        }
    }

# The reference club.
sheet-form-reference = Referenzschläger, falls einer gemessen wurde
sheet-form-reference-hint = Die Messwerte des Schlägers, für den sich das Fitting entschieden hat. Was auf dem Blatt fehlt, kommt von ihm.
sheet-form-reference-number = Nummer
sheet-form-reference-number-hint = 7, PW; 1 für den Driver
sheet-form-reference-number-needed = Die Nummer des gemessenen Schlägers eingeben, zum Beispiel 7
sheet-form-reference-length-in = 37 1/4 oder 94.6 cm
sheet-form-reference-length-mm = 946 oder 37 1/4 in
sheet-form-reference-swing-weight-hint = D2.1
sheet-form-reference-mass = Gesamtmasse
sheet-form-reference-balance = Balancepunkt von der Griffkappe
sheet-form-reference-balance-in = 28 3/8 oder 720 mm
sheet-form-reference-balance-mm = 720 oder 28 3/8 in
sheet-form-reference-clamp = Einspannlänge
sheet-form-reference-clamp-in = 5
sheet-form-reference-clamp-mm = 127
sheet-form-reference-scale = Waage für das Schwunggewicht
sheet-form-reference-scale-hint = balance für die eigene Waage, sonst ihr Name
sheet-form-reference-sd = Wahres Schwunggewicht, bekannt auf ±
sheet-form-reference-sd-hint = Nur von einer kalibrierten Waage: 0 heißt genau. Leer: was die Waage an dem Tag zeigte
sheet-form-also-read = Noch einmal gemessen
sheet-form-also-read-hint = An einem anderen Tag oder auf einer anderen Waage, je Zeile ein Messwert unter den Überschriften, zum Beispiel D2.1, balance, 2026-03-02
sheet-form-also-read-swing-weight = Schwunggewicht
sheet-form-also-read-scale = Waage
sheet-form-also-read-on = gemessen am
sheet-form-reference-grip = Sein Griff
sheet-form-reference-cap = Dicke seiner Griffkappe
sheet-form-reference-coupler = Kupplung eines Fitting-Schlägers
sheet-form-reference-read-on = Gemessen am

# One club, changed by hand.
sheet-club-length = Länge
sheet-club-length-in = 36 3/4 oder 93.3 cm
sheet-club-length-mm = 933 oder 36 3/4 in
sheet-club-length-needed = Die Länge eingeben, zum Beispiel 36 3/4
sheet-club-measured = Gemessen
sheet-club-measured-from = Ab dem Punkt, an dem die Schaftachse den Boden trifft
sheet-club-swing-weight = Schwunggewicht
sheet-club-swing-weight-putter = Leer lassen, wenn keines verlangt ist
sheet-club-swing-weight-hint = D2, D2.5 oder 213.5 oz in
sheet-club-swing-weight-needed = Das Schwunggewicht eingeben, zum Beispiel D2
sheet-club-loft = Loft
sheet-club-loft-needed = Den Loft eingeben, zum Beispiel 31
sheet-club-lie = Lie
sheet-club-lie-needed = Den Lie eingeben, zum Beispiel 62
sheet-club-frequency = Frequenz
sheet-club-not-asked = Leer lassen, wenn nicht verlangt
sheet-club-total-mass = Gesamtmasse
sheet-club-mass-g = 428 g oder 15.1 oz; leer lassen, wenn nicht verlangt
sheet-club-mass-oz = 15.1 oz oder 428 g; leer lassen, wenn nicht verlangt
sheet-club-grip-and-shaft = Griff und Schaft
sheet-club-layers = Lagen
sheet-club-too-many-layers = So viele Lagen passen nicht unter einen Griff. Geben Sie 0 bis 20 Lagen ein
sheet-club-tape-base = Griffband, Grundlage
sheet-club-tape-full = Griffband, volle Länge
sheet-club-tape-lower = Griffband, untere Hand
sheet-club-grip-label = Griffaufdruck
sheet-club-shaft-label = Schaftaufdruck
sheet-club-adapter-setting = Einstellung des Adapters
sheet-club-adapter-usual = wie im Modell
sheet-club-soft-side = Weiche Seite
sheet-club-tip-weight = Gewicht im Tip
sheet-club-tip-weight-usual = in jedem Schläger außer dem Driver
sheet-club-tip-weight-yes = erlaubt
sheet-club-tip-weight-no = nicht erlaubt
sheet-club-not-given = nicht angegeben
sheet-club-tolerances = Toleranzen
sheet-club-points = Punkte
sheet-club-swing-weight-tolerance = Schwunggewicht ±
sheet-club-length-tolerance = Länge ±
sheet-club-loft-tolerance = Loft ±
sheet-club-lie-tolerance = Lie ±
sheet-club-frequency-tolerance = Frequenz ±
sheet-club-tolerance-needed = Die Toleranz eingeben
sheet-club-tolerance-zero = Die Toleranz muss größer als 0 sein
sheet-club-models = Modelle
sheet-club-change = Diesen Schläger ändern
sheet-club-remove = Vom Blatt streichen
sheet-club-back = Zurück zum Blatt
