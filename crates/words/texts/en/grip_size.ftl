### Grip size, and the tape that brings a grip to it

grip-place-upper = upper hand
grip-place-lower = lower hand

grip-size-says-unknown = No forecast: the model of the grip does not say how thick it is. Measure one of it and enter it in Models.
grip-size-says-not-asked = The sheet asks no size.
grip-size-says-no-tape = Off the size, and no tape is known: name one on the sheet, or the shop’s in Shop.
grip-size-says-as-asked = The tape as planned gives the size.
grip-size-says-wraps =
    { $full ->
        [0] No full layer
        [one] One full layer
       *[other] { $full } full layers
    } over the base{ $lower ->
        [0] {""}
        [one] , and one under the lower hand
       *[other] , and { $lower } under the lower hand
    }: swing weight { POINTS($by_points, signed: 1) }.
grip-size-says-wraps-cost =
    { $full ->
        [0] No full layer
        [one] One full layer
       *[other] { $full } full layers
    } over the base{ $lower ->
        [0] {""}
        [one] , and one under the lower hand
       *[other] , and { $lower } under the lower hand
    }: swing weight { POINTS($by_points, signed: 1) }, which takes it off its target. A thicker grip of the same mass, or another weight at the head, gives both.
grip-size-says-too-thick = { LENGTH($by_mm, digits: 3) } too thick without any layer over the base: take a smaller grip, or one with a wider core.
grip-size-says-too-thin = { LENGTH($by_mm, digits: 3) } too thin with all the layers that are worth it: take a larger grip.
grip-size-says-on-and-off =
    { $by_mm ->
       *[other] The grip is on, { LENGTH($by_mm, digits: 3) } from its size. Only a new grip changes that.
    }

wrap-fault-nothing = no other tape is advised for job { $job } now
    .next = Ask a grip size on the sheet, or name the clubs and their layers
wrap-fault-twice = club { $slot } is named twice
    .next = Name each club once
wrap-fault-too-many = club { $slot } would get more than { $most } layers of a sort
    .next = Enter fewer, or take a larger grip
wrap-fault-on = the grip of the { $number } is on, or it has no plan
    .next = Leave it out, or plan the club first

grip-size-page = Grip size
grip-size-open = Grip size and wraps
grip-size-about = How thick each grip will be where the hands hold it: 2 in and 6 in below the cap. One reading by caliper tells of all grips of the same model. The maker’s sheet says how far a grip may be stretched.
grip-size-at = { $place } { LENGTH($diameter_mm, digits: 3) } ± { LENGTH($band_mm, digits: 3) }
grip-size-at-asked = asked { LENGTH($asked_mm, digits: 3) }
grip-size-line = { $slot }  { $club }: { $places }. { $to_do }
grip-size-stands = Grip: { $places }
grip-size-measure = Measure with a caliper that just touches, across the grip: pressed rubber reads too thin.
grip-size-asked-upper = Grip size, upper hand
grip-size-asked-hint = 2 in below the cap; blank: as the grip is
grip-size-asked-lower = Grip size, lower hand
grip-size-asked-lower-hint = 6 in below the cap, where it is to be built up
grip-size-asked-needs-upper = The lower hand’s size needs the upper hand’s, too.
grip-size-column-club = Club
grip-size-column-upper = Upper hand
grip-size-column-lower = Lower hand
grip-size-column-wraps = Tape
grip-size-column-to-do = What to do
grip-size-doubted = doubted
grip-size-read = read { LENGTH($read_mm, digits: 3) }
grip-size-take = Lay these layers
