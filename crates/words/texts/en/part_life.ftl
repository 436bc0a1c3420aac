### Part life

# What is refused of what is done with a part.
deed-fault-stale = { $code } was changed on another screen in the meantime
    .next = Nothing was changed. Look at it as it is now, then do it again
deed-fault-not-of-deed = { $field } does not go with “{ $deed }”
    .next = Leave it out, or choose what it belongs to
deed-fault-no-club = no club given for the reservation
    .next = Give the job and the place in its tray
deed-fault-in-no-job = { $code } is { $state } and in no job
    .next = Nothing needs to be done
deed-fault-not-aside = { $code } is { $state } and was not put aside
    .next = Nothing needs to be done
deed-fault-mass-changed = { $code } was pulled out of a club, and its mass has changed
    .next = Take the adhesive off, weigh it, and give the mass
deed-fault-same-figures = { $code } has these figures already
    .next = Give what is right instead
deed-fault-in-no-club = { $code } is { $state } and in no club
    .next = Scan the part that was pulled, or correct its mass
deed-fault-not-glued = { $code } is held for { $club } and not glued yet
    .next = Give it back to the shelf instead
deed-fault-only-reserved = { $code } is only reserved
    .next = Give it back to the shelf instead
deed-fault-no-mass = { $code } goes back to the shelf, and no current weight is given for it
    .next = Weigh it without its old adhesive, and give the mass
deed-fault-box = { $code } is a box
    .next = Count it again where its count is wrong
deed-fault-cut-already = { $code } is cut for { $club } already
    .next = Enter it as cut wrong, with its length and mass as they are now
deed-fault-used = { $code } is used and in no job
    .next = It is in a club: pull it out of there first
deed-fault-gripped = { $code } is on { $club } for good: it is gripped
    .next = Pull it out of the club: that takes the club apart
deed-fault-glued = { $code } is on { $club } for good: it is glued
    .next = Pull it out of the club: that takes the club apart
deed-fault-not-free =
    { $club ->
        [none] { $code } is { $state }
       *[other] { $code } is { $state } for { $club }
    }
deed-fault-in-club = { $code } is used in { $club }
    .next = Pull it out of the club first
deed-fault-club-of = the { $number } of job { $job }
deed-fault-would-take-apart = { $code } is { $state } for { $club }
    .next = Put another in its place at the bench, or confirm that the { $number } is to be taken apart
deed-fault-would-replan = { $code } is { $state } for { $club }
    .next = Put another in its place at the bench, or confirm that the { $number } is to be given another plan
deed-fault-pull-first = Pull it out of the club first
deed-fault-give-back-first = Give it back to the shelf first
deed-fault-aside-already = It is put aside already
deed-fault-clean-first = Clean and weigh it, and take it back into stock first
deed-fault-book-in-first = Book it in first
deed-fault-box-empty = The box is empty: count it again
deed-fault-job-not-under-way = job { $job } is { $state }
    .next = Choose a job under way
deed-fault-planned = the { $number } of job { $job } has its plan already
    .next = Put the part in the place of a planned one at the bench
deed-fault-misfit =
    { $number ->
        [none] { $code } is a { $kind } { $model }, and the { $club } of job { $job } asks for another
       *[other] { $code } is a { $kind } { $model } { $number }, and the { $club } of job { $job } asks for another
    }
    .next = Choose a part of the club's own model and number
deed-fault-reserved-already = { $code } is reserved for the { $club } of job { $job } already
    .next = Give that one back to the shelf first
deed-fault-box-reserved = { $code } is a box: its pieces are taken when a plan is accepted
    .next = Reserve single parts only
deed-fault-not-cut = { $code } is a { $kind } and is not cut
    .next = Scan the shaft
deed-fault-no-length = no current length given for { $code }
    .next = Measure it, and give the length
deed-fault-not-a-cut = { $code } was { $before_mm } long; { $length_mm } with { $tip_mm } off the tip cannot be cut from it
    .next = Measure it again: the length as it is now, and how much of the cut went off the tip
deed-fault-no-weight = no current weight given for { $code }
    .next = Weigh it, and give the mass

# An entry of a part's life. $figures are the figures that changed, or none.
life-came-in =
    { $figures ->
        [none] came in
       *[other] came in: { $figures }
    }
life-restored =
    { $figures ->
        [none] back in stock
       *[other] back in stock: { $figures }
    }
life-corrected =
    { $figures ->
        [none] corrected
       *[other] corrected: { $figures }
    }
life-cut =
    { $figures ->
        [none] cut
       *[other] cut: { $figures }
    }
life-changed =
    { $figures ->
        [none] changed
       *[other] changed: { $figures }
    }
life-held =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] held
                       *[other] held for job { $job }
                    }
               *[other] held for the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] held: { $figures }
                       *[other] held for job { $job }: { $figures }
                    }
               *[other] held for the { $club } of job { $job }: { $figures }
            }
    }
life-freed =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] free again
                       *[other] free again from job { $job }
                    }
               *[other] free again from the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] free again: { $figures }
                       *[other] free again from job { $job }: { $figures }
                    }
               *[other] free again from the { $club } of job { $job }: { $figures }
            }
    }
life-used =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] used
                       *[other] used in job { $job }
                    }
               *[other] used in the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] used: { $figures }
                       *[other] used in job { $job }: { $figures }
                    }
               *[other] used in the { $club } of job { $job }: { $figures }
            }
    }
life-returned =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] returned to the shelf
                       *[other] returned to the shelf from job { $job }
                    }
               *[other] returned to the shelf from the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] returned to the shelf: { $figures }
                       *[other] returned to the shelf from job { $job }: { $figures }
                    }
               *[other] returned to the shelf from the { $club } of job { $job }: { $figures }
            }
    }
life-pulled =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] pulled out of its club
                       *[other] pulled out of job { $job }
                    }
               *[other] pulled out of the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] pulled out of its club: { $figures }
                       *[other] pulled out of job { $job }: { $figures }
                    }
               *[other] pulled out of the { $club } of job { $job }: { $figures }
            }
    }
life-scrapped =
    { $figures ->
        [none]
            { $club ->
                [none]
                    { $job ->
                        [none] scrapped
                       *[other] scrapped from job { $job }
                    }
               *[other] scrapped from the { $club } of job { $job }
            }
       *[other]
            { $club ->
                [none]
                    { $job ->
                        [none] scrapped: { $figures }
                       *[other] scrapped from job { $job }: { $figures }
                    }
               *[other] scrapped from the { $club } of job { $job }: { $figures }
            }
    }

# A figure of a part before and after: a new one, a changed one, one that is no longer known.
life-figure-mass =
    { $from_g ->
        [none] { $name } { $to_g }
       *[other]
            { $to_g ->
                [none] { $name } { $from_g }, no longer known
               *[other] { $name } { $from_g }, now { $to_g }
            }
    }
life-figure-length =
    { $from_mm ->
        [none] { $name } { $to_mm }
       *[other]
            { $to_mm ->
                [none] { $name } { $from_mm }, no longer known
               *[other] { $name } { $from_mm }, now { $to_mm }
            }
    }
life-figure-frequency =
    { $from_cpm ->
        [none] { $name } { $to_cpm }
       *[other]
            { $to_cpm ->
                [none] { $name } { $from_cpm }, no longer known
               *[other] { $name } { $from_cpm }, now { $to_cpm }
            }
    }
life-figure-angle =
    { $from_deg ->
        [none] { $name } { $to_deg }
       *[other]
            { $to_deg ->
                [none] { $name } { $from_deg }, no longer known
               *[other] { $name } { $from_deg }, now { $to_deg }
            }
    }
life-figure-plain =
    { $from ->
        [none] { $name } { $to }
       *[other]
            { $to ->
                [none] { $name } { $from }, no longer known
               *[other] { $name } { $from }, now { $to }
            }
    }

# The page: who has the part, and what can be done with it.
part-life-title = Its life
part-life-csv = CSV
part-life-nothing = Nothing is recorded yet.
part-life-in-club = It is in the <strong>{ $club }</strong> of <a>job { $job }</a>.
part-life-for-club =
    { $slot ->
        [none] for the { $club } of <a>job { $job }</a>
       *[other] for the { $club } of <a>job { $job }</a>, place { $slot } of the tray
    }
part-life-reserve = Reserve it for a club
part-life-do-reserve = Reserve
part-life-return = Give it back to the shelf
part-life-do-return = Return to shelf
part-life-restore = Take it into stock
part-life-do-restore = Take into stock
part-life-pull = Pulled out of its club
part-life-do-pull = Record the pull
part-life-miscut = Wrong cut
part-life-do-miscut = Record the cut
part-life-use = Used in a club without a job
part-life-do-use = Record the use
part-life-scrap = Scrap it
part-life-do-scrap = Scrap
part-life-mass = Mass now
part-life-length = Length now
part-life-place = Place now
part-life-why = Reason
part-life-why-required = Reason (required)
part-life-off-tip = Of the cut, off the tip
part-life-off-tip-hint = Empty: all off the butt
part-life-clean = Free of adhesive, weighed and good: back into stock
part-life-lose-plan = Its club loses its plan and waits for a new one; give the reason
part-life-take-apart = The club is taken apart and waits for a new plan; give the reason
part-life-for = For
part-life-for-hint = The plan then uses this part
part-life-club = Job { $job }, the { $number } (place { $slot })
part-life-no-deed = No action was chosen
part-life-not-changed = Nothing was changed. Go back and enter it again
part-life-see = See the part

# What the command prints over the life.
part-life-line =
    { $number ->
        [none] { $code }: { $kind } { $model }
       *[other] { $code }: { $kind } { $model } { $number }
    }, { $mass_g ->
        [none] not weighed
       *[other] { $mass_g }
    }, { $club ->
        [none] { $state }
       *[other] { $state }, the { $club } of job { $job }
    }
