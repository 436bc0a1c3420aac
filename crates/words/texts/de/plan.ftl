### Plan: the pages of one job's plan, of plans to choose from, of a day; the job cards

# What is refused of the parts that were chosen for a club.
pick-fault-not-free = { $code } ist dafür nicht frei
    .next = Neu planen: Das Lager hat sich geändert
pick-fault-missing = Nummer { $number }: { $kind } fehlt
    .next = Den Code für { $kind } angeben oder den Schläger weglassen
pick-fault-tip-weight-too-wide = { $code } passt nicht in einen Tip von { LENGTH($tip_mm, digits: 3) }
    .next = Aus dem Sortierkasten ein Gewicht wählen, das in die Bohrung passt
pick-fault-shaft-too-short = Schaft { $code } ist zu kurz für Nummer { $number }, oder am Tip ist zu viel ab
    .next = Einen längeren Rohschaft wählen
pick-fault-other-hand = Kopf { $code } ist { $hand }, der Satz { $wanted }
    .next = Einen Kopf für die Hand des Satzes wählen
pick-fault-other-number =
    { $is ->
        [none] { $code } hat keine Nummer, dieser Schläger hat Nummer { $number }
       *[other] { $code } hat Nummer { $is }, dieser Schläger hat Nummer { $number }
    }
    .next = Einen Kopf dieser Nummer wählen
pick-fault-adapter-misfit = Adapter { $code } passt nicht zu { $head }
    .next = Einen Adapter wählen, der für diesen Kopf gemacht ist
pick-fault-adapter-missing = { $head } braucht einen Adapter, und für Nummer { $number } ist keiner da
    .next = Den Code eines passenden Adapters angeben
pick-fault-tip-misfit = der Tip von { $code } ({ LENGTH($tip_mm, digits: 3) }) passt nicht in die Bohrung von { LENGTH($bore_mm, digits: 3) }
    .next = Einen Schaft wählen, dessen Tip in die Bohrung passt
pick-fault-no-such-screw = keine Schraube für { $head } wiegt { MASS($more_g, signed: 1) } gegenüber der mitgelieferten
    .next = Eine der Schrauben wählen, die im Modell stehen
pick-fault-other-blank =
    { $blank ->
        [none] { $code } ist kein Rohschaft für diesen Schläger
       *[other] { $code } ist ein Rohschaft für Nummer { $blank }
    }
    .next = Den Rohschaft der eigenen Nummer wählen oder einen der Nachbarnummer, wo das Modell es erlaubt

# Why a part cannot be kept for a club.
lock-fault-no-club = { $code } lässt sich nicht auf Platz { $slot } festlegen: dort ist kein Schläger
    .next = Ein anderes Teil wählen oder die Festlegung aufheben
lock-fault-not-free = { $code } lässt sich nicht auf Platz { $slot } festlegen: kein freier Kopf, Schaft, Griff oder Adapter
    .next = Ein anderes Teil wählen oder die Festlegung aufheben
lock-fault-twice = { $code } ist auf zwei Plätze festgelegt: { $slot } und { $other }
    .next = Eine der beiden Festlegungen aufheben
lock-fault-no-adapter = { $code } lässt sich nicht auf Platz { $slot } festlegen: der Kopf dort braucht keinen Adapter
    .next = Ein anderes Teil wählen oder die Festlegung aufheben
lock-fault-misfit = { $code } lässt sich nicht auf Platz { $slot } festlegen: es passt dort nicht
    .next = Ein anderes Teil wählen oder die Festlegung aufheben

# What is refused of a plan for the day.
day-fault-no-job = kein Auftrag zu planen
    .next = Zuerst ein Blatt freigeben: Dann wartet sein Auftrag auf einen Plan

# What is refused of a job.
job-fault-already = Auftrag { $job } ist schon { $state }
    .next = Nichts zu tun

# What is refused of a plan.
plan-fault-stock-changed = das Lager hat sich geändert, seit dieser Plan vorgeschlagen wurde
    .next = Den neuen Plan ansehen und dann annehmen
plan-fault-lacking = keine Teile für Nummer { $clubs }
    .next = Das Fehlende bestellen oder den Plan nur für die anderen annehmen
plan-fault-no-plan = Schläger { $slot } von Auftrag { $job } hat keinen Plan
    .next = Zuerst den Auftrag planen
plan-fault-needs-part = für den Schläger fehlt: { $kind }
    .next = Den Code des Teils angeben, das genommen werden soll
plan-fault-too-many = { $code } ist mehr, als in einen Schläger passt
    .next = Einen Code angeben oder zwei Tip-Gewichte, verbunden mit +
plan-fault-not-free = { $code } ({ $kind }) ist { $state }
    .next = Ein freies Teil wählen: { $wanted }
plan-fault-on-another = dieses Teil ({ $kind }) ist schon an Nummer { $number }
    .next = Ein freies Teil wählen: { $kind }
plan-fault-missing = im Plan fehlt: { $kind }
    .next = Den Auftrag neu planen
plan-fault-at-bench = Auftrag { $job } ist schon { $state }
    .next = Einzelne Teile an der Werkbank tauschen, oder den Auftrag aufgeben und sein Blatt neu freigeben

# What an accepted plan should have and has not.
plan-lacks-part = im Plan für Nummer { $number } fehlt: { $kind }
    .next = Den Auftrag neu planen

plan-page = Plan
plan-job = Auftrag { $job } · { $player }
plan-job-line = Auftrag { $job } · { $player } · { $clubs }
plan-job-state = Auftrag { $job } · { $player } · { $state }

# The list of jobs.
plan-nothing = Nichts zu planen.
plan-nothing-next = Geben Sie ein Fittingblatt frei: Sein Auftrag steht dann hier.
plan-sheets = Blätter öffnen
plan-to-plan = Zu planen
plan-together = Diese zusammen planen
plan-planned = Geplant, Teile reserviert

# Giving a job up.
plan-drop = Diesen Auftrag aufgeben
plan-drop-why = Warum? Der Grund bleibt in der Akte.
plan-drop-button = Aufgeben und Teile freigeben

# The plan of a job.
plan-without-locks = Ohne Festlegungen planen
plan-missing = Fehlende Teile
plan-instead = Andere Teile, die passen würden
plan-see-job = Auftrag { $job } ansehen
plan-neighbour-why = Warum der Rohschaft einer Nachbarnummer? Der Grund bleibt beim Auftrag.
plan-partly = Die anderen Schläger planen; weglassen, was fehlt
plan-hold = Diese Teile reservieren
plan-other-plans = Aus anderen Plänen wählen
plan-lock-by-code = Ein Teil mit seinem Code auf einen Platz festlegen
plan-lock-field = Platz und Code, zum Beispiel 3:H-0412, 5:S-0031
plan-again-button = Neu planen
plan-none = Kein Schläger dieses Auftrags lässt sich aus dem Lager bauen.
plan-none-next = Die fehlenden Teile einwiegen, dann neu planen.
plan-stock = Lager öffnen
plan-frequency = Frequenz der Schäfte
plan-why = Warum diese Teile
plan-beams = Jeder Schläger am Waagebalken
plan-to-bench = Zur Werkbank
plan-cards = Laufkarten
plan-again = Neu planen

# What is proven of a plan.
plan-proven = Nachgewiesen: Keine andere Auswahl aus diesen Teilen ist besser, zuerst nach der Chance, am Ende in der Toleranz zu liegen, dann nach Gramm im Tip, dann nach gleichmäßigen Schäften.
plan-proven-with-line = Nachgewiesen: Keine andere Auswahl aus diesen Teilen ist besser, zuerst nach der Chance, am Ende in der Toleranz zu liegen, dann nach Gramm im Tip, dann nach Schäften auf ihrer Frequenzlinie, dann nach gleichmäßigen Schäften.
plan-best-so-far = Bisher die beste Auswahl; möglich ist höchstens eine, die um { PLAIN($clubs, digits: 3) } Schläger besser ist.

# A part in the table: a touch locks it to its club.
plan-kept = { $code } festgelegt
plan-kept-for = { $code }, auf Platz { $slot } festgelegt
plan-keep-for = { $code }, auf Platz { $slot } festlegen
plan-kept-title = Hier festgelegt; antippen hebt es auf
plan-keep-title = Antippen, um es hier festzulegen
plan-no-part = ohne
plan-part-stays = bleibt
plan-screw = Schraube { $screw }
plan-not-weighed = (nicht gewogen)
plan-on-line = auf seiner Linie
plan-stiff = { $by_cpm } zu steif
plan-soft = { $by_cpm } zu weich
plan-reading = { LETTER($expected_points) } ± { PLAIN($band_points) }

plan-parts = Teile
plan-parts-caption = Teile jedes Schlägers
plan-column-club = Schläger
plan-column-tip = im Tip
plan-column-target = Ziel
plan-column-planned = nach Plan

plan-cut-list = Schnittliste
plan-cut-list-caption = Schnitte jedes Schlägers
plan-bend-list = Biegen
plan-column-off-tip = am Tip ab
plan-column-off-butt = am Butt ab
plan-column-cut-shaft = Schaft abgelängt
plan-column-cut-weight = soll wiegen
plan-column-bend = Loft / Lie biegen
plan-no-trim = nichts
plan-cut-list-hint = Die Schnittlängen berücksichtigen die Bohrungstiefe jedes Kopfs. Oder so: am Tip kürzen, den Kopf bis zum Grund seiner Bohrung aufstecken, auf die Sohle stellen, die Länge vom Blatt am Butt anzeichnen, dann ablängen.

# The job card.
plan-cards-print = Diese Seite drucken: eine Karte für jeden Schläger; sie bleibt in seinem Fach. <a>Zurück zum Plan</a>
plan-cards-paper = Papier
plan-cards-four = Vier auf einem Bogen
plan-cards-one = Eine auf einer A6-Karte
plan-card-part = { $code } ({ $part_g })
plan-card-length = Länge
plan-card-length-to = { $length_mm }, { $end }
plan-card-wraps = Lagen
plan-card-wraps-are = { $base } Grundlage, { $full } volle Länge, { $lower } untere Hand
plan-card-labels = Aufdruck
plan-card-labels-are = Griff { $grip }, Schaft { $shaft }
plan-card-facing-any = beliebig
plan-card-soft-side = weiche Seite
plan-card-soft-side-any = nicht verlangt
plan-card-set = Winkel
plan-card-set-is = { $set }; verlangt: Loft { $loft_deg }, Lie { $lie_deg }
plan-card-bend = biegen
plan-card-bend-is = Loft { ANGLE($bend_loft_deg, signed: 1) } auf { $loft_deg }, Lie { ANGLE($bend_lie_deg, signed: 1) } auf { $lie_deg }
plan-card-caution = Nicht schwingen, bevor der Kleber nach Angabe des Herstellers seine Endfestigkeit hat.

# Plans to choose from.
plan-choice = Pläne zur Wahl
plan-choice-planned = Dieser Auftrag hat seinen Plan.
plan-choice-planned-next = Neu planen, um ihn zu ändern.
plan-choice-hint = Weniger Gewicht in den Tips oder näher am Ziel; dazu ein Plan nach der anderen Regel, bei dem alle Schläger das gleiche Trägheitsmoment haben.
plan-choice-across = Gewicht in allen Tips ({ $sign })
plan-choice-up = Punkte daneben beim schlechtesten Schläger
plan-choice-told = Plan { $plan }: { $tip_g } in allen Tips, schlechtester Schläger { POINTS($worst_points, digits: 2) } daneben
plan-option = { $plan }: { $tip_g } in den Tips, schlechtester { POINTS($worst_points, digits: 2) } daneben
plan-option-inertia = { $plan }: { $tip_g } in den Tips, schlechtester { POINTS($worst_points, digits: 2) } daneben, gleiches Trägheitsmoment
plan-option-inside = Voraussichtlich in der Toleranz: { PLAIN($inside) } von { $clubs } Schlägern.
plan-option-still-to-come = Die Messwerte und die Wahl der Griffe stehen noch aus.
plan-option-off-line = Schäfte höchstens { $worst_cpm } neben ihrer Linie.
plan-option-target = { $club } { LETTER($asked_points) }
plan-option-targets = Verlangte Schwunggewichte: { $asked }.
plan-option-why = Warum eine andere Regel als auf dem Blatt? Der Grund bleibt beim Auftrag.

# A plan made again around what is done.
plan-again-hint = Was gekürzt, geklebt oder mit Griff versehen ist, bleibt. Nichts ändert sich, bevor Sie annehmen.
plan-again-best = Besser geht es nicht
plan-again-best-next = Keine andere Auswahl aus den freien Teilen ist besser.
plan-again-doubt = Angezweifelt
plan-again-doubt-next = { $clubs }: Ein Messwert ist angezweifelt und zählt hier nicht. Klären Sie ihn zuerst <a>an der Werkbank</a>.
plan-again-changes = Änderungen
plan-again-inside = Voraussichtlich in der Toleranz: { PLAIN($now) } Schläger, wie es ist, { PLAIN($then) } mit den Änderungen.
plan-again-accept = Diese Änderungen annehmen
plan-back = Zurück zum Plan

# A day's jobs together.
plan-day = Den Tag planen
plan-day-none = Kein Auftrag wartet auf einen Plan.
plan-day-jobs =
    { $n ->
        [one] 1 Auftrag aus einem Lager
       *[other] { $n } Aufträge aus einem Lager
    }
plan-job-due = Auftrag { $job } · { $player } · fällig { $due_on }
plan-day-parts = Teile für { $clubs }
plan-day-enough = Den bisher besten nehmen
plan-day-look-again = Noch einmal nachsehen
plan-day-longer = Länger suchen:
plan-day-seconds = { $seconds } s
plan-day-searching = Suche läuft, { $now } von { $of } s.
plan-day-searching-within = Suche läuft, { $now } von { $of } s: noch höchstens { PERCENT($gap_share, digits: 1) } zu verbessern.
plan-day-proven = Nachgewiesen: Keine andere Auswahl aus diesen Teilen ist über alle Aufträge besser, die dringendsten zuerst.
plan-day-as-good = Keine andere Auswahl aus diesen Teilen ist über alle Aufträge auch nur um 0,1 % besser, die dringendsten zuerst.
plan-day-best = Der bisher beste Plan über alle Aufträge, die dringendsten zuerst.
plan-day-best-within = Der bisher beste Plan über alle Aufträge, die dringendsten zuerst; nachweislich höchstens noch um { PERCENT($gap_share, digits: 1) } zu verbessern.
plan-day-in-turn = Der einfache Plan: Ein Auftrag nach dem anderen, der früheste Termin zuerst, nimmt vom Rest, was ihm am besten passt.
plan-day-better-comes = Die Suche läuft weiter; ein besserer Plan erscheint hier.

# What planning together brings.
plan-worth = Was es bringt, zusammen zu planen
plan-worth-caption = Zusammen und nacheinander geplant
plan-worth-column-job = Auftrag
plan-worth-column-unbuilt = nicht gebaut
plan-worth-column-inside = in der Toleranz
plan-worth-column-tip = in den Tips
plan-worth-together = zusammen
plan-worth-in-turn = nacheinander
plan-worth-both = { $together } / { $in_turn }
plan-worth-inside = { PLAIN($together, digits: 1) } / { PLAIN($in_turn, digits: 1) }
plan-worth-all = alle Aufträge
plan-worth-hint = Zusammen / nacheinander, der früheste Termin zuerst. Schläger in der Toleranz sind geschätzt; die Messwerte und die Wahl der Griffe stehen noch aus.
plan-worth-take-plain = Den einfachen Plan zeigen
plan-worth-take-together = Den Plan für alle zusammen zeigen

# Which due dates hold.
plan-due = Termine
plan-due-all-here = Alle Schläger aller Aufträge lassen sich aus dem Bestand bauen.
plan-due-whole = Aus dem Bestand lassen sich alle Schläger { $n ->
        [one] des Auftrags
       *[other] der Aufträge
    } { $jobs } bauen: der früheste Termin zuerst, dann, was daneben noch geht.
plan-due-whole-none = Kein Auftrag lässt sich aus dem Bestand vollständig bauen.
plan-due-not-proven = Die Suche war kurz: Auch ein Auftrag, der nicht genannt ist, kann noch möglich sein.
plan-due-in-the-way = Käme Auftrag { $job } später dran, reichte der Bestand für alle Schläger von Auftrag { $builds }.
plan-due-mark-here = da
plan-due-mark-waits = wartet
plan-due-mark-order = bestellen
plan-due-mark-late = zu spät
plan-due-mark-cannot = geht nicht
plan-due-scarce = Zu wenig für alle
plan-due-to-order = Zu bestellen, damit die meisten Termine halten
plan-due-hint = Teile müssen am Tag vor dem Termin da sein. Bestelltes zählt mit den Werten seines Modells, bis es gewogen ist.
