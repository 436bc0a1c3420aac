### What a step says of one club beside its own sentence

# Roughening the tip and cleaning the hosel: how deep, what to watch, and why.
says-tip = Tip: vom Ende her <b>{ LENGTH($depth_mm, digits: 2) }</b> rundum anrauen, nicht weiter; dann sauber wischen.
says-tip-steel = Durch die Verchromung, bis er rundum matt ist: Auf einem blanken Ring hält kein Kleber.
says-tip-composite = Nur bis der Glanz weg ist. Aufhören, sobald eine Faser zu sehen ist oder absteht: Ein dünn geschliffener Tip bricht dort.
says-hosel = Hosel: <b>{ LENGTH($depth_mm, digits: 2) }</b> tief bis aufs blanke Metall reinigen, mit dem Reiniger laut Kleberblatt auswischen, trocknen lassen.
says-hosel-why = Ein weißes Tuch muss weiß herauskommen: Alter Kleber oder Fett hält den neuen Kleber von der Wand fern. Trocken bis auf den Grund probestecken.

# Cutting.
says-cut = Am Tip <b>{ LENGTH($tip_mm) }</b> ab, dann am Butt <b>{ LENGTH($butt_mm) }</b>: Es bleiben <b>{ LENGTH($left_mm) }</b>.
says-cut-butt = Am Tip nichts, am Butt <b>{ LENGTH($butt_mm) }</b> ab: Es bleiben <b>{ LENGTH($left_mm) }</b>.
says-cut-weight = Er sollte dann { $mass_g } wiegen.

# The soft side.
says-soft-side = Am Tip anzeichnen: Laut Blatt zeigt sie <b>{ $side }</b>.
says-soft-side-free = Am Tip anzeichnen, an jedem Schaft des Satzes gleich: Das Blatt lässt die Richtung offen.
says-soft-side-why = Beim Kleben steht sie für jeden Schläger noch einmal da.
says-turn-to = weiche Seite { ANGLE($at_deg, digits: 0) }{ $band_deg ->
        [none] {""}
       *[other] {" "}± { ANGLE($band_deg, digits: 0) }
    } ab Etikett: { $side } drehen
says-turn-mark = weiche Seite { ANGLE($at_deg, digits: 0) }{ $band_deg ->
        [none] {""}
       *[other] {" "}± { ANGLE($band_deg, digits: 0) }
    } ab Etikett
says-turn-asked = weiche Seite { $side }, nicht gemessen
says-turn-label = Etikett { $facing }

# Gripping.
says-strips =
    { $n ->
        [0] Kein Griffband auf ganzer Länge.
        [one] <b>1 Streifen von { LENGTH($strip_mm) }</b>
       *[other] <b>{ $n } Streifen von { LENGTH($strip_mm) }</b>
    }
says-strips-are = Grundlage { $base }, Lagen { $full }; ab Butt-Ende.
says-strips-lower =
    { $n ->
        [one] Untere Hand: <b>noch 1 Streifen von { LENGTH($strip_mm) }</b>
       *[other] Untere Hand: <b>noch { $n } Streifen von { LENGTH($strip_mm) }</b>
    }
says-grip = Griff <b>{ $code }</b>: { $name }, für einen Butt von { LENGTH($core_mm, digits: 2) }.
says-logo = Logo: { $facing }.

# Bending.
says-bend = { CAPITAL($what) } soll <b>{ $asked_deg }</b>, ist { $read_deg }: <b>{ ANGLE($by_deg, digits: 1) } { $way }</b> biegen.
says-bend-beyond = { CAPITAL($what) } soll <b>{ $asked_deg }</b>, ist { $read_deg }: <b>nicht biegen</b>, der Hersteller erlaubt insgesamt { ANGLE($limit_deg, digits: 1) }.
says-bend-none = { CAPITAL($what) } soll <b>{ $asked_deg }</b>, ist { $read_deg }: nichts zu biegen.
says-bend-unread = { CAPITAL($what) } soll <b>{ $asked_deg }</b>: erst messen.
says-strong = stärker
says-weak = schwächer
says-flat = flacher
says-upright = aufrechter
says-came-back = Beim letzten Biegen federten { ANGLE($back_deg, digits: 1) } zurück: so viel weiter biegen.
angle-effect-left = Lie { ANGLE($off_deg, signed: 1) }: Der Ball startet { ANGLE($aim_deg, digits: 1) } nach links, { PLAIN($by_m, digits: 1) } m auf { $at_m } m.
angle-effect-right = Lie { ANGLE($off_deg, signed: 1) }: Der Ball startet { ANGLE($aim_deg, digits: 1) } nach rechts, { PLAIN($by_m, digits: 1) } m auf { $at_m } m.
angle-effect-farther = { ANGLE($off_deg, digits: 1) } zu stark: Der Ball fliegt etwa { PLAIN($from_m, digits: 1) } bis { PLAIN($to_m, digits: 1) } m weiter.
angle-effect-shorter = { ANGLE($off_deg, digits: 1) } zu schwach: Der Ball fliegt etwa { PLAIN($from_m, digits: 1) } bis { PLAIN($to_m, digits: 1) } m kürzer.
angle-effect-bounce = Bounce jetzt { ANGLE($now_deg, digits: 1) }, mit richtigem Loft { ANGLE($then_deg, digits: 1) }.
says-set-adapter = { CAPITAL($what) } soll <b>{ $asked_deg }</b>, ist { $read_deg }: <b>Adapter auf „{ $setting }“ stellen</b>.
says-adapter = Adapter auf „{ $setting }“: Loft { ANGLE($loft_deg, signed: 1) }, Lie { ANGLE($lie_deg, signed: 1) }, Face { ANGLE($face_deg, signed: 1) } offen
says-adapter-only = Adapter auf „{ $setting }“
says-adapter-not-bent = Einstellen; einen Kopf mit Adapter nicht biegen. Schraube mit dem Drehmoment des Herstellers anziehen.
says-bend-limit = Der Hersteller erlaubt insgesamt { ANGLE($limit_deg, digits: 1) }. In kleinen Schritten biegen und nach jedem messen.

# Handing over.
says-built = { CAPITAL($what) } <b>{ $read }</b>
