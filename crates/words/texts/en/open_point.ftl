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

# The nearest setting of an adapter does not bring it in.
open-point-set-weak = loft { $by_deg } weak even with the adapter at “{ $setting }”
open-point-set-strong = loft { $by_deg } strong even with the adapter at “{ $setting }”
open-point-set-flat = lie { $by_deg } flat even with the adapter at “{ $setting }”
open-point-set-upright = lie { $by_deg } upright even with the adapter at “{ $setting }”

# The club will more likely finish outside of its tolerance, and no choice still to come changes that.
open-point-light = finishes { $by_points } light, and no free grip brings it in
open-point-heavy = finishes { $by_points } heavy, and no free grip brings it in

# The shaft cannot be cut longer.
open-point-cut-short = shaft { LENGTH($by_mm, digits: 2) } shorter than planned

open-point-glued = glued in batch { $batch } already
open-point-not-cured = waits for { $strength } until { $until_at }
open-point-not-glued = not glued yet

open-fault-nothing = nothing is open on the { $number } before “{ $step }”
    .next = Leave it out of the list: it needs no reason

# The list on the page: one touch for each, one reason for all.
open-of = { $n } of { $clubs }
open-read-again = Read again
open-read = Read it
open-look = Look
open-choose = Choose
open-glue = To the glue
open-why-all =
    { $n ->
        [one] Why go on with it?
       *[other] Why go on with all { $n }?
    }
open-why-hint = One reason for all of them. The record keeps it with your name
open-go-on =
    { $n ->
        [one] Go on
       *[other] Go on with all { $n }
    }
open-passed = passed
open-passed-by = { $reason } ({ $by }, { $at_at })

# An override of a cure belongs to its batch.
open-override-batch = Override the cure of batch { $batch }
open-override-means = It holds for all clubs of batch { $batch }: { $clubs }. The clock runs on.
open-override-strength = How strong the joints are now
open-override-kept = Cure overridden, { $strength }: { $reason } ({ $by }, { $at_at })

# On the command line.
open-nothing = Nothing is open before { $done }.
open-none-left = Nothing is open: no club waits for a step that cannot be undone.
open-line = { $number }: { $points }
open-line-passed = { $number }: { $points }; passed: { $reason } ({ $by })
open-before = Before { $done }:

# A step that is only done, for the whole set.
done-fault-asks-more = “{ $step }” asks for more than that it is done
    .next = Enter what it asks, club by club
done-for-set =
    { $n ->
        [one] Done for { $n } club: { $numbers }
       *[other] Done for all { $n }: { $numbers }
    }
done-for-none = No club is left to do it.
done-waiting = { $numbers } wait for the joint.
