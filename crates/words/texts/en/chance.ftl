### Chances, as people say them

# How likely something is. One sense of “n in 10” everywhere: so often of ten times.
odds-sure = 99 in 100
odds-nearly-sure = 19 in 20
odds-in-ten = { $n } in 10
odds-seldom = 1 in 20
odds-hardly-ever = under 1 in 20

# How likely a club finishes in tolerance.
chance-inside = { $odds } inside
chance-miss = will miss
