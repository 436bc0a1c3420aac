### The closed lists of the trade

# How far a step of a club has come.
step-status-done = erledigt
step-status-begun = begonnen
step-status-open = offen
step-status-left-out = ausgelassen

# How a club looks in the row.
look-inside = in der Toleranz
look-open = offen
look-off = daneben
look-doubted = noch einmal nachsehen
look-unplanned = kein Plan

# What may be behind a doubted reading.
cause-kind-nothing-wrong = alles in Ordnung
cause-kind-something-else = etwas anderes
cause-kind-neighbour-head = Kopf der Nachbarnummer
cause-kind-wrong-part = anderes Teil als geplant
cause-kind-tip-left-out = Tip-Gewicht vergessen
cause-kind-tip-swapped = anderes Tip-Gewicht
cause-kind-tip-not-seated = Tip-Gewicht sitzt nicht ganz unten
cause-kind-head-not-seated = Kopf nicht ganz aufgeschoben
cause-kind-ferrule-missing = Ferrule fehlt
cause-kind-film-on = Folie oder Etikett noch drauf
cause-kind-solvent-in = noch Lösemittel im Griff
cause-kind-butt-off-stop = Butt-Ende nicht am Anschlag
cause-kind-grip-on = Griff ist schon drauf
cause-kind-grip-off = Griff fehlt
cause-kind-cap-missing = Griffkappe fehlt
cause-kind-grip-not-home = Griff nicht ganz aufgeschoben
cause-kind-grip-or-tape = anderer Griff oder anderes Band als geplant
cause-kind-cut-off = Schaft nicht auf Länge
cause-kind-scale-not-zeroed = Waage nicht auf null
cause-kind-heads-exchanged = zwei Köpfe vertauscht
cause-kind-grips-exchanged = zwei Griffe vertauscht
cause-kind-tips-exchanged = zwei Tip-Gewichte vertauscht
cause-kind-swings-miscounted = Schwingungen falsch gezählt
cause-kind-mass-noted = Masse falsch notiert
cause-kind-all-joints = alle Klebestellen zu schwer oder zu leicht
cause-kind-digits-swapped = Ziffern vertauscht
cause-kind-misread = um eins verlesen
cause-kind-wrong-unit = andere Einheit
cause-kind-screw-swapped = andere Schraube im Kopf
cause-kind-clamped-off = zu kurz oder zu tief eingespannt
cause-kind-tip-trim-off = am Tip wie für eine andere Nummer gekürzt
cause-kind-other-shaft = Schaft eines anderen Schlägers
cause-kind-wrong-flex = Schaft mit anderem Flex
cause-kind-raw-noted = Rohschaft falsch notiert
cause-kind-head-loose = Kopf lose

# What a connected scale shows.
shows-mass = Masse
shows-swing-weight = Schwunggewicht

# What a mark in a line says.
mark-means-settled = ruhig
mark-means-moving = bewegt sich

# Parity bit of a serial line.
parity-none = keine
parity-even = gerade
parity-odd = ungerade

# What an instrument measures. Its figures are in that unit everywhere.
measures-mass = Masse
measures-swing-weight = Schwunggewicht
measures-frequency = Frequenz
measures-angle = Loft und Lie
measures-length = Länge
measures-diameter = Durchmesser eines Griffs

# What takes a scale's trust away.
trust-cause-tolerance = außerhalb der Toleranz
trust-cause-beyond = weiter daneben, als die eigene Streuung erklärt
trust-cause-two-of-three = zwei der letzten drei Prüfungen weit daneben, auf derselben Seite
trust-cause-four-of-five = vier der letzten fünf Prüfungen deutlich auf derselben Seite
trust-cause-eight-on-one-side = acht Prüfungen nacheinander auf derselben Seite des Üblichen
trust-cause-overdue = Kalibrierung überfällig
trust-cause-word = jemand hat es so angegeben

# Where a job stands.
job-state-open = noch zu planen
job-state-planned = an der Werkbank
job-state-finished = fertig
job-state-dropped = aufgegeben

# What sort of club.
club-kind-wood = Holz
club-kind-hybrid = Hybrid
club-kind-iron = Eisen
club-kind-wedge = Wedge
club-kind-putter = Putter

# Which hand the club is for.
hand-right = Rechtshand
hand-left = Linkshand

# Where a club's length ends at the butt. It starts where the shaft axis meets the ground.
length-to-shaft-end = bis zum Schaftende
length-to-cap = bis zur Griffkappe

# Which way a label faces when the club is soled.
facing-up = nach oben
facing-down = nach unten
facing-away = vom Ziel weg

# Where the soft side of the shaft is turned.
soft-side-target = zum Ziel
soft-side-away-from-target = vom Ziel weg
soft-side-heel = zum Heel
soft-side-toe = zur Toe

# Why what the shop knows has changed.
learned-cause-job = ein fertiger Auftrag
learned-cause-reset = zurückgesetzt
learned-cause-pin = gesperrt
learned-cause-unpin = entsperrt
learned-cause-told = von einem Schlägerbauer angegeben
learned-cause-withdrawn = zurückgezogen
learned-cause-not-asked = nicht mehr fragen

# What a builder can say a figure of, and how sure he is.
told-of-joint = eine Klebestelle
told-of-grip = ein Griff
told-of-wrap = eine Lage Griffband
told-of-ferrule = eine Ferrule
sureness-sure = sicher
sureness-figure = üblicher Wert
sureness-about = ungefähr

# What can happen to a part.
life-step-came-in = eingegangen
life-step-held = reserviert
life-step-freed = wieder frei
life-step-used = verbaut
life-step-returned = zurück ins Regal
life-step-pulled = aus dem Schläger ausgebaut
life-step-scrapped = ausgemustert
life-step-restored = wieder im Lager
life-step-corrected = berichtigt
life-step-cut = gekürzt
life-step-changed = geändert

# What scatters from one piece to the next, or from one job to the next.
scattered-adhesive-piece = Kleber, von Klebestelle zu Klebestelle
scattered-adhesive-job = Kleber, vom Ansatz eines Auftrags zum nächsten
scattered-tape-piece = Griffband, von Schläger zu Schläger, je Lage
scattered-tape-job = Griffband, von Auftrag zu Auftrag
scattered-solvent-piece = Lösemittel, von Griff zu Griff
scattered-solvent-job = Lösemittel, von Auftrag zu Auftrag
scattered-cap-piece = Griffkappen, von Griff zu Griff
scattered-grip-centre-piece = Schwerpunkte der Griffe, von Griff zu Griff
scattered-shaft-centre-piece = Balancepunkte der Schäfte, von Schaft zu Schaft
scattered-stiffness-piece = Biegesteifigkeit der Schäfte, von Schaft zu Schaft

# An extra measurement.
measure-check-weight = Prüfgewicht auf der Waage
measure-reference = Referenzschläger auf dieser Waage
measure-tape = Griffband gewogen
measure-grip-centre = Griff auf einer Kante ausbalanciert
measure-cap = Griffkappe gemessen
measure-shaft-centre = Schaft auf einer Kante ausbalanciert
measure-weighed = Schläger vor und nach dem Kleben gewogen
measure-total = geklebten Schläger gewogen
measure-again = Schwunggewicht noch einmal gemessen
measure-pilot = andere Arbeitsfolge

# The order of work.
work-order-batch = alle in einem Ansatz
work-order-one-cured-first = ein Schläger zuerst geklebt und ausgehärtet
work-order-one-finished-first = ein Schläger zuerst fertig
work-order-one-one-rest = einer fertig, dann noch einer, dann der Rest
work-order-one-by-one = jeder fertig, bevor der nächste geklebt wird
grip-order-at-once = alle auf einmal
grip-order-one-first = einer zuerst, gemessen, bevor die anderen gewählt werden
grip-order-in-turn = jeder gemessen, bevor der nächste gewählt wird

# What a model, or a part of it, is.
part-kind-head = Kopf
part-kind-adapter = Adapter
part-kind-shaft = Schaft
part-kind-grip = Griff
part-kind-tip-weight = Tip-Gewicht
part-kind-ferrule = Ferrule
part-kind-adhesive = Kleber
part-kind-tape = Griffband

# What a shaft is made of.
stiffness-from-profile = Messwerte am Schaft selbst
stiffness-from-table = Steifigkeitstabelle des Schaftmodells
stiffness-from-tube = Masse, Durchmesser und Material des Schaftmodells
shaft-material-steel = Stahl
shaft-material-composite = Faserverbund

# Shape of the tip.
tip-shape-parallel = Parallel-Tip
tip-shape-taper = Taper-Tip

# Outside shape of a grip.
grip-shape-round = rund
grip-shape-ribbed = mit Rippe
grip-shape-flat-sided = mit flacher Seite

# What can happen to an order.
order-step-received = eingegangen
order-step-short = der Rest kommt nicht
order-step-cancelled = storniert
order-step-told = geändert

# Where an order stands.
order-state-ordered = bestellt
order-state-partly-here = teilweise da
order-state-here = vollständig da
order-state-short = mit Fehlmenge abgeschlossen
order-state-cancelled = storniert

# Where a part is in its life.
part-state-ordered = bestellt
part-state-free = frei
part-state-held = reserviert
part-state-used = verbaut
part-state-pulled = ausgebaut
part-state-rejected = ausgemustert

# What the clubs of a set have in common.
law-swing-weight = Schwunggewicht des Blatts
law-inertia = gleiches Trägheitsmoment

# What can be read.
what-head-mass = Kopfmasse
what-adapter-mass = Adaptermasse
what-shaft-mass = Schaftmasse
what-ferrule-mass = Masse der Ferrule
what-tip-weight-mass = Masse des Tip-Gewichts
what-tape-mass = Masse des Griffbands
what-grip-mass = Griffmasse
what-total-mass = Gesamtmasse
what-swing-weight = Schwunggewicht
what-balance-point = Balancepunkt
what-shaft-length = Schaftlänge
what-finished-length = Länge bis zur Griffkappe
what-grip-size = Griff an der oberen Hand
what-grip-size-lower = Griff an der unteren Hand
what-loft = Loft
what-lie = Lie
what-grip-centre = Schwerpunkt des Griffs
what-cap-thickness = Griffkappe
what-shaft-balance-point = Balancepunkt des Schafts
what-check-weight = Prüfgewicht
what-reference-swing-weight = Referenzschläger
what-cpm = Frequenz
what-swing-period = Schwingungsdauer
what-swing-inertia = Trägheitsmoment
what-soft-side = weiche Seite
what-empty-scale = leere Waage auf null
what-ferrule-on = Ferrule sitzt
what-head-number = Nummer auf der Sohle stimmt
what-done = erledigt

# Unit of a reading's value.
unit-g = g
unit-mm = mm
unit-points = Punkte
unit-deg = °
unit-cpm = cpm
unit-s = s
unit-kg-cm2 = kg·cm²
unit-none = { "" }

# What may be said of a value against its tolerance, by the rules of JCGM 106.
verdict-in = in der Toleranz
verdict-out = außerhalb
verdict-too-close = zu knapp für ein Urteil
verdict-not-read = nicht gemessen

# What is done.
action-tip-weight = Tip-Gewicht
action-grip = Griff
action-ferrule = Ferrule
action-head = Kopf
action-adapter = Adapter
action-screw = Schraube im Kopf
action-lead-tape = Bleiband
action-powder = Pulver im Schaft
action-counterweight = Gegengewicht
action-lower-hand-tape = Griffband untere Hand
action-cut = Schnitt
action-butt-extension = Butt-Verlängerung
action-re-grip = anderer Griff
action-pull-head = Kopf abgezogen

# How much a finding weighs.
severity-stop = muss behoben werden
severity-warn = ansehen
severity-note = Hinweis

# The law that ties the clubs of a set together.
set-rule-as-written = jeder Schläger wie geschrieben
set-rule-constant-swing-weight = einheitliches Schwunggewicht
set-rule-stepped-swing-weight = gestuftes Schwunggewicht
set-rule-equal-inertia = gleiches Trägheitsmoment

# How strong the joint must be before a step.
strength-none = keine
strength-handling = Handfestigkeit
strength-full = Endfestigkeit

# What cannot be undone.
final-cut = der Schnitt
final-glue = das Kleben
final-bend = das Biegen
final-hand-over = die Übergabe

# Which caution stands beside a step. The words are in [`crate::caution`].
caution-cutting = Sägen und Schneiden
caution-epoxy = Epoxidkleber
caution-solvent = Lösemittel
caution-bending = Biegen
caution-swing = Schwingen
caution-turning = Abdrehen
caution-preparing = Vorbereiten
caution-stripping = Griff abschneiden
caution-pulling = Kopf abziehen
caution-lead = Blei
caution-damage = womöglich beschädigter Schläger

# How a reading lies against what the sheet asks.
fit-inside = in der Toleranz
fit-off = daneben

# What a weighed part may be.
looks-as-said = wie angegeben
looks-neighbour = die Nummer daneben
looks-other-number = eine andere Nummer
looks-other-model = ein anderes Modell
looks-wrapped = noch verpackt
looks-slip = falsch gewogen oder vertippt

# What a piece is on its club.
role-head = Kopf
role-adapter = Adapter
role-screw = Schraube
role-shaft = Schaft
role-ferrule = Ferrule
role-turnings = Abdrehspäne der Ferrule
role-tip-weight = Tip-Gewicht
role-adhesive = Kleber
role-tape = Griffband
role-grip = Griff
role-solvent = Lösemittel
role-extra = Zusatz

# What is done with a part by hand.
part-deed-reserve = reservieren
part-deed-return = zurückgeben
part-deed-use = ohne Auftrag verbauen
part-deed-scrap = ausmustern
part-deed-restore = wieder ins Lager nehmen
part-deed-correct = berichtigen
part-deed-pull = ausbauen
part-deed-miscut = falsch gekürzt

# What is still to be fitted in a club.
fit-stage-tip = das Gewicht im Tip
fit-stage-grip = der Griff
fit-stage-added = was dazukommt
fit-stage-waits = noch nichts

# What a head is made of.
head-material-unknown = nicht bekannt
head-material-forged = geschmiedeter Kohlenstoffstahl
head-material-cast = gegossener Edelstahl
head-material-brittle = Titan, Zink oder anderes

# What happened to a club.
club-deed-built = gebaut
club-deed-arrived = eingegangen
club-deed-measured = gemessen
club-deed-worked = bearbeitet
club-deed-changed = geändert
club-deed-retired = ausgemustert

# What the sheet of a kind of job asks.
asked-grip-model = Griffmodell
asked-wraps = Lagen
asked-grip-size = Griffstärke
asked-grip-graphics = Richtung des Griffaufdrucks
asked-shaft-model = Schaftmodell
asked-ferrule-model = Ferrulenmodell
asked-adhesive = Kleber
asked-length = Länge
asked-extension-mass = Masse der Verlängerung
asked-swing-weight = Schwunggewicht
asked-swing-inertia = Trägheitsmoment
asked-loft = Loft
asked-lie = Lie
