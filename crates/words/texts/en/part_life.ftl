### Part life

# What is refused of what is done with a part.
deed-fault-stale = { $code } was changed on another screen in the meantime
    .next = Nothing was changed. Look at it as it is now, then do it again
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
