### The figure of a reading, in the unit of what was read

reading-figure-swing-weight = { LETTER($value_points) }
reading-figure-points = { PLAIN($by_points) }
reading-figure-mass = { $value_g }
reading-figure-length = { LENGTH($value_mm, digits: 2) }
reading-figure-angle = { $value_deg }
reading-figure-frequency = { CPM($value_cpm) }
reading-figure-time = { PLAIN($value_s, digits: 3) } s
reading-figure-inertia = { PLAIN($value_kg_cm2, digits: 0) } kg·cm²
reading-figure-done = erledigt
