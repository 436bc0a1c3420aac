### Where a club finishes, line by line

outlook-title = Wo er am Ende liegt
outlook-stands = Stand jetzt
outlook-if-read =
    { $n ->
        [one] nach einem weiteren gemessenen Schritt
       *[other] nach { $n } weiteren gemessenen Schritten
    }
outlook-advised = damit
# More likely out than in; what to do stands below.
outlook-rather-out = Eher daneben als in der Toleranz.
outlook-finish = { LETTER($finish_points) } ± { PLAIN($band_points) }
outlook-how = Wie die Vorhersage enger wurde
