### What can still be done about a club

# What is refused of something that is added to a finished plan.
extra-fault-no-plan = the { $number } has no plan
    .next = Plan the job first
extra-fault-not-added = { $action } cannot be added to a finished plan
    .next = Add lead_tape, powder, counterweight or screw; put another part in for the rest

deed-tip = Tip { $tip_g } (now { $now_g })
deed-tip-first = Tip { $tip_g } (now empty)
deed-tip-empty = No tip weight (now { $now_g })
deed-tip-one-for-two = One weight of { $tip_g } in the tip in place of two
deed-ferrule = Ferrule { $part } ({ $mass_g })
deed-head = Head { $part } ({ $mass_g })
deed-adapter = Adapter { $part } ({ $mass_g })
deed-screw = Screw { $label } ({ $mass_g }) in the head
deed-grip = Grip { $part } ({ $mass_g })
deed-grip-of-other = Grip { $part } ({ $mass_g }), held for the { $club }: the two clubs change grips
deed-re-grip = Grip off, then { $part } ({ $mass_g }) on
deed-lead-tape = { $mass_g } of lead tape on the head
deed-powder = { $mass_g } of powder in the shaft, under a stopper
deed-counterweight = { $mass_g } plug in the butt
deed-lower-hand-tape = One more strip of tape under the lower hand ({ $mass_g }, if the player likes it thicker there)
deed-cut = Cut { LENGTH($by_mm, digits: 2) } more off the butt, still within the length
deed-butt-extension = Extend the butt by { LENGTH($by_mm, digits: 2) }, still within the length
deed-pull-head = Pull the head with heat, put { $tip_g } in the tip and glue it again (if the tip is damaged, keep the shaft for a shorter club)

remedy-finish = { $deed }: finish { LETTER($finish_points) }, { $chance }
remedy-then-heavier-grip = { $deed }, then a heavier grip: { $chance }
remedy-then-lighter-grip = { $deed }, then a lighter grip: { $chance }

# The bench's screen.
remedy-title = Remedies
remedy-list = Options, best first
# The first line of the list: the same conditions hold for all lines.
remedy-left = Left as it is: { $chance }
remedy-conditions = Each chance counts the readings still to come and the grip that they will choose.
remedy-take = Take it
remedy-done = Done

# The command line.
remedy-no-plan = Club { $slot } has no plan yet. Accept one with: setwright plan { $job } --accept
remedy-as-planned = Club { $slot }: as planned, { $chance }.
remedy-grip-for = Grip { $part } ({ $mass_g }) for club { $slot }.
