### Part life

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
