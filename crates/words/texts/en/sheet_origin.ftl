### Where the values of an expanded sheet come from

sheet-origin-head = { $club } of { $head }
sheet-origin-written = written “{ $text }”
sheet-origin-customers-wraps = as the customer likes them
sheet-origin-written-wraps = written “{ $text }”, beside { $n } of base
sheet-origin-written-length = written “{ $text }”, { $to }
sheet-origin-chart-length = chart { $chart_mm }, { $to }
sheet-origin-chart-and-written-length = chart { $chart_mm } and written “{ $text }”, { $to }
sheet-origin-chart-and-fitted-length = chart { $chart_mm } and { LENGTH($by_mm, signed: 1) } as the fitted { $club }, { $to }
sheet-origin-chart-angle = chart { $chart_deg }
sheet-origin-chart-and-written-angle = chart { $chart_deg } and written “{ $text }”
sheet-origin-chart-and-fitted-angle = chart { $chart_deg } and { ANGLE($by_deg, signed: 1) } as the fitted { $club }

sheet-swing-weight-chart = chart { LETTER($chart_points) }
sheet-swing-weight-chart-of-other-kind = chart { LETTER($chart_points) }; equal inertia holds for the fitted club's kind only
sheet-swing-weight-written = written “{ $text }”
sheet-swing-weight-written-from-fitted = written “{ $text }”, from { LETTER($fitted_points) } of the fitted { $club }
sheet-swing-weight-fitted = { LETTER($fitted_points) } as the fitted { $club }
sheet-swing-weight-equal-inertia = { LETTER($swing_weight_points) } from equal inertia, { PLAIN($inertia_kg_cm2, digits: 0) } kg·cm² about the butt as the fitted { $club }: head and tip weight about { $head_g }
sheet-wedge-offset = { $what }; written “{ $text }” for wedges
