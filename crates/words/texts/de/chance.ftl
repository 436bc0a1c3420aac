### Chances, as people say them

# How likely something is. One sense of “n in 10” everywhere: so often of ten times.
odds-sure = 99 von 100
odds-nearly-sure = 19 von 20
odds-in-ten = { $n } von 10
odds-seldom = 1 von 20
odds-hardly-ever = unter 1 von 20

# How likely a club finishes in tolerance.
chance-inside = { $odds } in der Toleranz
chance-miss = liegt daneben
