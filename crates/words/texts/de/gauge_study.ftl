### Gauge studies

# What is refused of a gauge study.
study-fault-part-unnamed = ein Teil der Analyse hat keinen Namen
    .next = Jedem Teil einen eigenen Namen geben
study-fault-builder-unnamed = ein Schlägerbauer der Analyse hat keinen Namen
    .next = Jedem Schlägerbauer einen eigenen Namen geben
study-fault-part-twice = das Teil „{ $name }“ ist zweimal genannt
    .next = Jedem einen eigenen Namen geben
study-fault-builder-twice = der Schlägerbauer „{ $name }“ ist zweimal genannt
    .next = Jedem einen eigenen Namen geben
study-fault-too-few = { $parts } Teile, { $builders } Schlägerbauer und { $trials } Durchgänge sind zu wenig
    .next = Mindestens 5 Teile, 2 Schlägerbauer und 2 Durchgänge nehmen; empfohlen sind 10, 3 und 3
study-fault-too-many = { $parts } Teile, { $builders } Schlägerbauer und { $trials } Durchgänge sind mehr, als eine Analyse fasst
    .next = Höchstens 20 Teile, 5 Schlägerbauer und 5 Durchgänge nehmen
study-fault-not-finished =
    { $n ->
        [one] { $n } von { $of } Messwerten fehlt noch
       *[other] { $n } von { $of } Messwerten fehlen noch
    }
    .next = Mit der Analyse weitermachen

study-advice-more = Empfohlen sind { $parts } Teile, { $builders } Schlägerbauer und { $trials } Durchgänge; mit weniger sind die Anteile grob.
study-found-spread = Von der Streuung, die Sie sehen, kommen { PERCENT($gauge_share) } von Waage und Händen: Die Messwerte einer Hand streuen um { $scale }, die Hände unterscheiden sich um { $hands }.
study-question-far = „{ $typed }“ liegt weit von den bisherigen Messwerten ab ({ $part }). Nachsehen, was auf der Waage liegt und welche Einheit gilt, dann neu eingeben oder so lassen.
study-next-hands-differ =
    { $classes ->
        [0] Die Waage kann diese Teile überhaupt nicht unterscheiden. Die Hände unterscheiden sich stärker, als die Waage streut: Vereinbaren Sie, wie ein Teil aufgelegt und wann abgelesen wird, dann die Analyse wiederholen.
        [1] Die Waage kann diese Teile überhaupt nicht unterscheiden. Die Hände unterscheiden sich stärker, als die Waage streut: Vereinbaren Sie, wie ein Teil aufgelegt und wann abgelesen wird, dann die Analyse wiederholen.
       *[other] Die Waage kann diese Teile nur in { $classes } Klassen unterscheiden; { $wanted } sollen es sein. Die Hände unterscheiden sich stärker, als die Waage streut: Vereinbaren Sie, wie ein Teil aufgelegt und wann abgelesen wird, dann die Analyse wiederholen.
    }
study-next-repeat =
    { $classes ->
        [0] Die Waage kann diese Teile überhaupt nicht unterscheiden. Jedes Teil { $times }-mal neu auflegen und messen und den Mittelwert nehmen – oder eine feinere Waage.
        [1] Die Waage kann diese Teile überhaupt nicht unterscheiden. Jedes Teil { $times }-mal neu auflegen und messen und den Mittelwert nehmen – oder eine feinere Waage.
       *[other] Die Waage kann diese Teile nur in { $classes } Klassen unterscheiden; { $wanted } sollen es sein. Jedes Teil { $times }-mal neu auflegen und messen und den Mittelwert nehmen – oder eine feinere Waage.
    }
study-next-finer-scale =
    { $classes ->
        [0] Die Waage kann diese Teile überhaupt nicht unterscheiden: Sie liegen alle innerhalb von { $within }. Eine feinere Waage nehmen oder Teile, die sich so stark unterscheiden wie Ihr Lager.
        [1] Die Waage kann diese Teile überhaupt nicht unterscheiden: Sie liegen alle innerhalb von { $within }. Eine feinere Waage nehmen oder Teile, die sich so stark unterscheiden wie Ihr Lager.
       *[other] Die Waage kann diese Teile nur in { $classes } Klassen unterscheiden; { $wanted } sollen es sein: Sie liegen alle innerhalb von { $within }. Eine feinere Waage nehmen oder Teile, die sich so stark unterscheiden wie Ihr Lager.
    }

# A new study.
study-new-title = Neue Messsystemanalyse
study-crumb = Waagen
study-about = Mehrere Teile, jedes mehrmals von mehreren Schlägerbauern gemessen, in zufälliger Reihenfolge. Das zeigt, wie viel von der Streuung, die Sie sehen, von Waage und Händen kommt. Unterbrechen und weitermachen geht jederzeit.
study-scale = Waage
study-trials = Wie oft jeder jedes Teil misst
study-trials-hint = 2 bis 5; empfohlen sind 3
study-builders = Wer misst
study-builders-hint = Ein Name je Zeile, 2 bis 5; empfohlen sind 3. Allein? Dann Sie am Morgen und Sie am Abend
study-parts = Teile
study-parts-hint = Ein Code oder eine Nummer je Zeile, 5 bis 20; empfohlen sind 10, so verschieden wie Ihr Lager. So kennzeichnen, dass man den Messwert nicht sieht
study-begin = Starten
study-needs-whole = Hier muss eine ganze Zahl stehen

# A study at the bench.
study-title = Messsystemanalyse
study-progress = { $scale } · { $done } von { $of } gemessen
study-progress-bar = Wie viele gemessen sind
study-taken = Ab jetzt gilt diese Streuung als Angabe der Waage.
study-queued = Analyse, { $part }
study-turn = { $builder } misst <strong>{ $part }</strong>
study-as-it-is = „{ $typed }“ so lassen
study-keep = Speichern
study-place = Messwert { $place } von { $of }. Frühere Messwerte sind mit Absicht verdeckt. Aufhören geht jederzeit: Die Analyse wartet unter „Waagen“.
study-again = { $part } noch einmal: Das war falsch
study-stop = Hier aufhören

# What it found.
study-more-than = mehr als { $most }
study-good = gut: unter 10 %
study-usable = brauchbar: 10 bis 30 %
study-poor = schlecht: über 30 %
study-figure-share = Waage und Hände
study-figure-classes = unterscheidbare Klassen
study-figure-classes-note = 5 oder mehr sollen es sein
study-figure-noise = ein Messwert streut um
study-figure-noise-note = ohne den Anteil der Rundung
study-states = Angegebene Streuung, { $scale }: <strong>{ $noise }</strong>. Vorhersagen rechnen mit der Angabe.
study-take = Ab jetzt { $noise } angeben
study-figures = Zahlen
study-caption = Ergebnis der Analyse
study-column-what = was
study-column-variance = nach Varianzanalyse
study-column-ranges = nach Mittelwerten und Spannweiten
study-row-equipment = Wiederholungen einer Hand
study-row-appraiser = zwischen den Händen
study-row-interaction = Hände, die sich von Teil zu Teil anders unterscheiden
study-row-gauge = Waage und Hände zusammen
study-row-part = zwischen den Teilen
study-row-total = alles
study-row-share = Anteil von Waage und Händen
study-about-figures = Die Zahlen sind Standardabweichungen. Streuungen addieren sich wie die Seiten eines rechtwinkligen Dreiecks, darum ergeben die Anteile zusammen nicht 100 %. { $parts } Teile, { $builders }, je { $trials }-mal gemessen, begonnen { $begun_at }.
study-back = Waagen

# The command.
study-command-none = Noch keine Messsystemanalyse. Auf der Seite „Waagen“ eine starten.
study-command-one = { $id }  { $scale }, begonnen { $begun_at }: { $done } von { $of } gemessen
