### What a reading means, and what to do now

off-by-less-points = { $by_points } leichter
off-by-more-points = { $by_points } schwerer
off-by-lighter = { $by_g } leichter
off-by-heavier = { $by_g } schwerer
off-by-shorter = { LENGTH($by_mm, digits: 2) } kürzer
off-by-longer = { LENGTH($by_mm, digits: 2) } länger
off-by-less = { $by } weniger
off-by-more = { $by } mehr

angle-loft-good = Loft { $read_deg } passt zum Blatt
angle-loft-weak = Loft { $read_deg } statt { $asked_deg }: { $by_deg } zu schwach
angle-loft-strong = Loft { $read_deg } statt { $asked_deg }: { $by_deg } zu stark
angle-lie-good = Lie { $read_deg } passt zum Blatt
angle-lie-upright = Lie { $read_deg } statt { $asked_deg }: { $by_deg } zu aufrecht
angle-lie-flat = Lie { $read_deg } statt { $asked_deg }: { $by_deg } zu flach

angle-to-do-read-loft = Als Nächstes den Loft messen.
angle-to-do-read-lie = Als Nächstes den Lie messen.
angle-to-do-bend-stronger = { $by_deg } stärker biegen; der Hersteller erlaubt { $limit_deg }.
angle-to-do-bend-weaker = { $by_deg } schwächer biegen; der Hersteller erlaubt { $limit_deg }.
angle-to-do-bend-upright = { $by_deg } aufrechter biegen; der Hersteller erlaubt { $limit_deg }.
angle-to-do-bend-flat = { $by_deg } flacher biegen; der Hersteller erlaubt { $limit_deg }.
angle-to-do-set-adapter = Nicht biegen: Adapter auf „{ $setting }“ stellen und noch einmal messen.
angle-to-do-other-head = Dieser Kopf darf höchstens { $limit_deg } gebogen werden: einen anderen Kopf nehmen.

meaning-kept = Gespeichert.
meaning-finish =
    { $ahead ->
        [none] Endwert { LETTER($finish_points) } ± { PLAIN($band_points) }, { $chance }.
       *[other] Endwert { LETTER($finish_points) } ± { PLAIN($band_points) }. Stand jetzt: { $chance }; mit dem Griff, der nach dem Aushärten ausgesucht wird: { $ahead }.
    }
meaning-off-sheet = { CAPITAL($off) }. Endwert { LETTER($finish_points) } ± { PLAIN($band_points) }, { $chance }.
meaning-angle = { $angle }.
meaning-angles = { $first }. { $second }.
meaning-cpm-good = { CPM($read_cpm, digits: 1) }, Soll { CPM($asked_cpm, digits: 1) }: getroffen.
meaning-cpm-expected = { CPM($read_cpm, digits: 1) }, erwartet { PLAIN($expected_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }.
meaning-doubted = { $off } als erwartet. Notiert, zählt noch nicht.
meaning-doubted-only = Dieser Messwert passt nicht zu den anderen. Notiert, zählt noch nicht.

next-step = Weiter: { $step }.
next-done = Dieser Schläger ist fertig.
next-in-tolerance = In der Toleranz. Weiter: { $step }.
next-in-tolerance-done = In der Toleranz. Dieser Schläger ist fertig.
next-settle = { $reach }.
next-put-right = In Ordnung bringen oder bei der Übergabe den Grund angeben.
next-remedy = { $remedy }.
next-rather-out = Eher daneben als in der Toleranz. { $remedy }.
next-heavier-grip-later = Wie geplant eher daneben als in der Toleranz. Mit schwererem Griff nach dem Aushärten: { $chance }.
next-lighter-grip-later = Wie geplant eher daneben als in der Toleranz. Mit leichterem Griff nach dem Aushärten: { $chance }.
next-too-light = { $by_points } zu leicht, und nichts von dem, was da ist, bringt ihn in die Toleranz. Noch einmal messen, bevor Sie ihn zerlegen.
next-too-heavy = { $by_points } zu schwer, und nichts von dem, was da ist, bringt ihn in die Toleranz. Noch einmal messen, bevor Sie ihn zerlegen.
next-wide-read-step = Die Vorhersage ist noch ungenau. Das Schwunggewicht bei „{ $step }“ macht sie enger.
next-wide-read-again = Die Vorhersage ist noch ungenau. Schläger neu auflegen und das Schwunggewicht noch einmal messen.
next-wide-read-check-weight = Die Vorhersage ist noch ungenau. Prüfgewicht messen.
next-wide = Die Vorhersage ist noch ungenau.
next-likely =
    { $telling ->
        [none] { $likely }
       *[other] { $likely } { $telling }
    }
next-still-doubted =
    { $telling ->
        [none] Noch angezweifelt: { $what } bei „{ $step }“. { $likely }
       *[other] Noch angezweifelt: { $what } bei „{ $step }“. { $likely } { $telling }
    }
next-read-again = Neu auflegen und noch einmal messen.
next-nothing-to-bend = Hier ist nichts zu biegen.
next-angle = { $to_do }
next-angles = { $first } { $second }
