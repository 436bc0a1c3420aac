### Where the values of an expanded sheet come from

sheet-origin-head = { $club } von { $head }
sheet-origin-written = geschrieben „{ $text }“
sheet-origin-customers-wraps = wie der Kunde es mag
sheet-origin-written-wraps = geschrieben „{ $text }“, dazu { $n } als Grundlage
sheet-origin-written-length = geschrieben „{ $text }“, { $to }
sheet-origin-chart-length = Tabelle { $chart_mm }, { $to }
sheet-origin-chart-and-written-length = Tabelle { $chart_mm } und geschrieben „{ $text }“, { $to }
sheet-origin-chart-and-fitted-length = Tabelle { $chart_mm } und { LENGTH($by_mm, signed: 1) } wie der Referenzschläger { $club }, { $to }
sheet-origin-chart-angle = Tabelle { $chart_deg }
sheet-origin-chart-and-written-angle = Tabelle { $chart_deg } und geschrieben „{ $text }“
sheet-origin-chart-and-fitted-angle = Tabelle { $chart_deg } und { ANGLE($by_deg, signed: 1) } wie der Referenzschläger { $club }

sheet-swing-weight-chart = Tabelle { LETTER($chart_points) }
sheet-swing-weight-chart-of-other-kind = Tabelle { LETTER($chart_points) }; gleiches Trägheitsmoment gilt nur für die Schlägerart des Referenzschlägers
sheet-swing-weight-written = geschrieben „{ $text }“
sheet-swing-weight-written-from-fitted = geschrieben „{ $text }“, ab { LETTER($fitted_points) } des Referenzschlägers { $club }
sheet-swing-weight-fitted = { LETTER($fitted_points) } wie der Referenzschläger { $club }
sheet-swing-weight-equal-inertia = { LETTER($swing_weight_points) } bei gleichem Trägheitsmoment, { PLAIN($inertia_kg_cm2, digits: 0) } kg·cm² um das Butt-Ende wie der Referenzschläger { $club }: Kopf und Tip-Gewicht zusammen etwa { $head_g }
sheet-wedge-offset = { $what }; für Wedges geschrieben „{ $text }“
