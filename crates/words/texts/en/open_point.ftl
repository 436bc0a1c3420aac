### What is open on a club before a step that cannot be undone

open-point-doubted = { $what } at “{ $step }” is doubted
open-point-unread = { $what } is not read

# A reading outside of what the sheet asks.
open-point-off-swing-weight = { $what } { LETTER($now_points) }, the sheet asks { LETTER($asked_points) } ± { PLAIN($tolerance_points) }
open-point-off-mass = { $what } { $now_g }, the sheet asks { $asked_g } ± { $tolerance_g }
open-point-off-length = { $what } { LENGTH($now_mm, digits: 2) }, the sheet asks { LENGTH($asked_mm, digits: 2) } ± { LENGTH($tolerance_mm, digits: 2) }
open-point-off-angle = { $what } { $now_deg }, the sheet asks { $asked_deg } ± { $tolerance_deg }
open-point-off-frequency = { $what } { CPM($now_cpm, digits: 0) }, the sheet asks { CPM($asked_cpm, digits: 0) } ± { CPM($tolerance_cpm, digits: 0) }

# The head needs more bending than its maker allows.
open-point-loft-weak = loft { $by_deg } weak; this head may be bent { $limit_deg } at most
open-point-loft-strong = loft { $by_deg } strong; this head may be bent { $limit_deg } at most
open-point-lie-flat = lie { $by_deg } flat; this head may be bent { $limit_deg } at most
open-point-lie-upright = lie { $by_deg } upright; this head may be bent { $limit_deg } at most

# The club will more likely finish outside of its tolerance, and no choice still to come changes that.
open-point-light = finishes { $by_points } light, and no free grip brings it in
open-point-heavy = finishes { $by_points } heavy, and no free grip brings it in

open-point-glued = glued in batch { $batch } already
