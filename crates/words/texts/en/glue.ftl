### Glue

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
batch-fault-started-before = this form started batch { $batch } already, with other clubs or other figures
    .next = Look at it under Glue; if it is wrong, take it back and start another
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
