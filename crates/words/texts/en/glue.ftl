### Glue

# What is refused of a batch of adhesive.
glue-fault-no-clubs = a batch for no club
    .next = Choose the clubs to glue from it
glue-fault-beyond-calendar = the cure time ends after the year 9999
    .next = Check the times of the adhesive
glue-fault-room-too-cold = { FIGURE($room_c) } °C is colder than { FIGURE($sheet_c) } °C, which the sheet of “{ $adhesive }” asks for, so no cure clock is started
    .next = Warm the room to { FIGURE($warm_to_c) } °C, or give the reason why it cures all the same

glue-fault-pot-life-beyond-calendar = the pot life ends after the year 9999
    .next = Check the pot life of the adhesive
