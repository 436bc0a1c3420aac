### Glue: what to weigh out, the batch, its clocks

# What is refused of a batch of adhesive.
glue-fault-no-clubs = a batch for no club
    .next = Choose the clubs to glue from it
glue-fault-beyond-calendar = the cure time ends after the year 9999
    .next = Check the times of the adhesive
glue-fault-room-too-cold = the room is { FIGURE($room_c) } °C, and the coldest cure is at { FIGURE($sheet_c) } °C on the sheet of “{ $adhesive }”: so cold, many adhesives never cure fully, so no cure clock is started
    .next = Warm the room to { FIGURE($warm_to_c) } °C or more, or ask the maker and give the reason

glue-fault-pot-life-beyond-calendar = the pot life ends after the year 9999
    .next = Check the pot life of the adhesive

# What is refused of gluing clubs.
batch-fault-lot-missing = the lot of the adhesive is missing
    .next = Type the lot from the tins: a search for it finds every club of a bad lot
batch-fault-no-strength = no strength is named
    .next = Name “handling” or “full”
batch-fault-taken-back = batch { $batch } is taken back
    .next = No club counts as glued from it: look under Glue for the batch that holds
batch-fault-started-before = this form started batch { $batch } already, with other clubs or other figures
    .next = Look at it under Glue; if it is wrong, take it back and start another
batch-fault-not-glued = nothing is glued on the { $number }: no step of its kind of job has gluing
    .next = Leave it out of this batch
batch-fault-no-gluing = the steps of job { $job } have no gluing
    .next = Nothing is glued in this job
batch-fault-no-parts = the { $number } has no parts yet
    .next = Plan it first, or leave it out of this batch
batch-fault-club-twice = club { $slot } is in this batch twice
    .next = Name each club once
batch-fault-glued-already = this club was glued from batch { $batch }, whose clocks run
    .next = Take the batch back under Glue. Clubs that were glued from it all the same go into a new batch, with the time when it was mixed
batch-fault-read-since = the { $number } was read at “{ $step }” after it was glued from batch { $batch }
    .next = Take that reading back first, if it is wrong as well
batch-fault-no-adhesive = no adhesive is named, and the shop has none of its own
    .next = Name one, or set the shop's own under Shop

glue-title = Glue
glue-batches = Batches
glue-none = No recent batches.
glue-none-next = A batch starts the pot life and the cure of its clubs.
glue-none-curing = No batch is curing.
glue-cured = Cured
glue-taken-back = Taken back
glue-new-for-job = New batch for job { $job }
glue-batch-of = Batch { $batch } · { $adhesive }
glue-batch-taken-back = Batch { $batch }, { $clubs }, lot { $lot }: { $reason }

# The clubs of a batch, job by job.
glue-clubs-of-job =
    { $n ->
        [one] job { $job }, club { $clubs }
       *[other] job { $job }, clubs { $clubs }
    }
glue-more-jobs = { $a }; { $b }

glue-batch-said = <b>{ CAPITAL($clubs) }.</b> Lot { $lot }, { $resin_g } resin, { $hardener_g } hardener, { $beads_g } spacers, at { PLAIN($room_c, digits: 0) } °C. Mixed { $mixed_at } by { $by }.
glue-batch-line = Batch { $batch }, { $clubs }: handle from { $handling_at }, swing from { $full_at }
glue-batch-cold = Started in the cold: { $reason }.

# Its clocks.
glue-clocks = Clocks of batch { $batch }
glue-what = what
glue-left = left
glue-until = until
glue-pot-life = pot life
glue-handle = handle, grip, read
glue-swing = bend, hand over, swing
glue-over = over
glue-now = now

glue-entered-wrongly = Entered wrongly
glue-take-back-means = Its clocks stop and no club counts as glued from it. That is refused once a club was read on its joint.
glue-take-back-why = Why? The record keeps it.
glue-take-back = Take the batch back

# A new batch.
glue-new = New batch
glue-new-crumb = Job { $job } · { $player }
glue-weigh-out =
    { $n ->
        [one] Weigh out for { $n } joint
       *[other] Weigh out for { $n } joints
    }
glue-resin = resin
glue-hardener = hardener
glue-spacers = spacers, stirred in
glue-handle-after = handle after
glue-swing-after = swing after
glue-ml = { PLAIN($volume_ml, digits: 1) } ml
glue-min = { PLAIN($time_min, digits: 0) } min
glue-h = { PLAIN($time_h, digits: 0) } h
glue-tenths-h = { PLAIN($time_h, digits: 1) } h
glue-by-sheet = From the figures entered from the product's own sheet, at { PLAIN($room_c, digits: 0) } °C. The sheet itself wins.
glue-clubs-from-cup = Clubs glued from this cup
glue-club = { $club } · tip { $tip_g } · finish { LETTER($finish_points) }
glue-club-turned = { $club } · { $turned }
glue-mixed-now = until { $until_at }
glue-none-clear = No club of this job is clear to glue.
glue-open =
    { $n ->
        [one] Something is open on { $n } club
       *[other] Something is open on { $n } clubs
    }
glue-why-open = Why glue one of these all the same? The record keeps it.
glue-lot = Lot on the tins
glue-lot-why = Later it finds every club of a bad lot
glue-lot-last = Scan or type it; Enter alone: { $lot }, as the last cup
glue-cold-why = Why it cures in this room
glue-cold-hint = What the maker says at this temperature. The record keeps it. Leave it empty and warm the room instead
glue-start = Mixed: start the clock
glue-adhesive = Adhesive
glue-mixed-at = Mixed at
glue-mixed-at-hint = Leave it empty for a cup that is mixed now
glue-room = Room
glue-beads = Spacers
glue-beads-unit = % by mass

# Clubs by the lot of their adhesive or of a part.
glue-find-lot = Find the clubs of a lot

# Before the cup is filled: what its room and its pot life mean.
mix-colder-than-sheet = the room is { PLAIN($room_c, digits: 0) } °C, and the coldest cure on the product's sheet is at { PLAIN($sheet_c, digits: 0) } °C; many adhesives never cure fully in such a room
mix-warmer-than-sheet = the room is { PLAIN($room_c, digits: 0) } °C, and the warmest cure on the product's sheet is at { PLAIN($sheet_c, digits: 0) } °C
mix-several-cups = gluing from one cup takes about { PLAIN($work_min, digits: 0) } min, and the cup is good for { PLAIN($pot_life_min, digits: 0) } min
mix-too-fast = this adhesive is good for { PLAIN($pot_life_min, digits: 0) } min here, less than one joint takes with its mixing

mix-next-warm-room = warm the room to { PLAIN($to_c, digits: 0) } °C or more, or ask the maker and give the reason
mix-next-wait-as-for = wait as long as the sheet says for { PLAIN($sheet_c, digits: 0) } °C
mix-next-mix-cups = mix { $cups } cups one after the other, { $joints_a_cup } joints each: { $resin_g } resin, { $hardener_g } hardener, { $beads_g } spacers a cup
mix-next-change-adhesive = take a slower adhesive, or mix in a cooler room
