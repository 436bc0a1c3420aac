### Steps of a job

# The row of steps over a page of the bench.
step-row = Schritte
step-done = erledigt
step-left-out = ausgelassen
step-doubted = angezweifelt
step-of = { $at } von { $n }

# The steps of a new shop, which it may rename: what the builder calls them and what to do.
step-new-received = Eingang
step-new-received-say = Loft und Lie des losen Kopfs: Lässt er sich vor dem Kleben auf die Werte des Blatts biegen?
step-new-weighed = Gewogen
step-new-weighed-say = Alles, was im Fach liegt, noch einmal wiegen.
step-new-cut = Abgelängt
step-new-cut-say = Erst den Tip, dann den Butt. Länge und Masse des gekürzten Schafts.
step-new-soft-side = Weiche Seite
step-new-soft-side-say = Weiche Seite suchen und anzeichnen; Grad ab Etikett, im Uhrzeigersinn, vom Butt aus gesehen.
step-new-cpm = Frequenz
step-new-cpm-say = Butt einspannen, anzupfen, ablesen.
step-new-prepared = Vorbereitet
step-new-prepared-say = Tips angeraut, Hosel sauber und trocken.
step-new-dry = Gesteckt
step-new-dry-say = Kopf und Ferrule aufgesteckt, kein Griff, nichts geklebt. Schwunggewicht messen.
step-new-tip = Tip-Gewicht
step-new-tip-say = Das Gewicht steckt im Tip, noch ohne Kleber. Schwunggewicht messen.
step-new-glue = Geklebt
step-new-glue-say = Gewicht, Ferrule und Kopf eingeklebt, Schaft auf seine Marke gedreht, abgewischt.
step-new-turned = Ferrule abgedreht
step-new-turned-say = Ferrule bündig zum Hosel abdrehen.
step-new-cured = Ausgehärtet
step-new-cured-say = Ferrule abgedreht, kein Griff. Schwunggewicht messen: Danach wird der Griff ausgesucht.
step-new-gripped = Griff drauf
step-new-gripped-say = Griffband und Griff sitzen, das Lösemittel ist noch drin. Schwunggewicht messen.
step-new-finish = Endmessung
step-new-finish-say = Lösemittel trocken. Schwunggewicht, Gesamtmasse und Länge des fertigen Schlägers.
step-new-bend = Biegen
step-new-bend-say = Nach dem Blatt biegen, dann beides messen.
step-new-hand-over = Übergabe
step-new-hand-over-say = Geprüft, abgewischt, mit seiner Akte in der Tasche.

# Steps of work on a club that was there before.
step-new-arrived = Angekommen
step-new-arrived-say = Den Schläger messen, wie er kam, bevor etwas daran gemacht wird.
step-new-stripped = Griff ab
step-new-stripped-say = Alter Griff und altes Griffband ab. Beides einzeln wiegen, dann den nackten Schläger messen: Das sagt am meisten.
step-new-shortened = Gekürzt
step-new-shortened-say = Butt gekürzt. Schaftlänge ab Boden, dann das Schwunggewicht ohne Griff.
step-new-extended = Verlängert
step-new-extended-say = Schaftlänge, dann das Schwunggewicht ohne Griff.
step-new-extension = Verlängerung
step-new-extension-say = Butt innen angeraut und sauber, Verlängerung bis zur Marke eingeklebt, abgewischt. Sie härtet aus wie jede Klebestelle.
step-new-looked-joint = Angesehen
step-new-looked-joint-say = Den Kopf von Hand drehen und ziehen: Bewegt er sich, ist die Ferrule gewandert, sitzt Rost oder weißer Staub am Hosel? Hosel und Tip mit der Lupe auf Risse absuchen. Ein gerissenes Hosel und ein gespaltener, weicher oder geknickter Tip werden nicht wieder verwendet.
step-new-looked-rattle = Gesucht
step-new-looked-rattle-say = Am Ohr schütteln, erst Kopf nach oben, dann Kopf nach unten. Im Schaft: ein loses Tip-Gewicht oder Kleberkrümel, heraus durch das Loch im Griff oder nach dem Öffnen der Klebestelle. Im hohlen Kopf: siehe Herstellerblatt. Klickt die Klebestelle, ist der Kopf lose.
step-new-looked-broken = Angesehen
step-new-looked-broken-say = Wo und wie ist er gebrochen? Am Hosel: nach einer scharfen Kante, einer Bohrung ohne Konus und nach Rost sehen. Hosel mit der Lupe auf Risse absuchen. Der Kopf geht wieder, wenn sein Hosel rund und heil ist, der Griff, wenn er heil abgeht; Schaft, Ferrule und Tip-Gewicht kommen neu.
step-new-weighted = Gewicht dran
step-new-weighted-say = Notieren, was Sie wo angebracht haben, dann Schwunggewicht messen.
step-new-pulled = Kopf ab
step-new-pulled-say = Kopf abgezogen, Bohrung gereinigt. Kopf wiegen: Jetzt zeigt sich, was in der alten Klebestelle steckte.
