### Frequencies of a set, and trimming the tip to them

slope-sheet = as the sheet asks
slope-flat = flat, all the same
slope-step = rising each half inch
slope-reference = through the reference club

cpm-says-not-forecast = No forecast: plan the club, and choose a shaft from Stock.
cpm-says-no-aim = The sheet asks no frequency of this club.
cpm-says-as-planned = On target as planned.
cpm-says-trim-more = Tip { LENGTH($by_mm, digits: 2) } more: +{ CPM($gain_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }, swing weight { POINTS($by_points, signed: 1) }
cpm-says-trim-less = Tip { LENGTH($by_mm, digits: 2) } less: −{ CPM($loss_cpm, digits: 1) } ± { PLAIN($band_cpm, digits: 1) }, swing weight { POINTS($by_points, signed: 1) }
cpm-says-not-far-enough = The shaft is not long enough for the whole trim: { CPM($by_cpm, digits: 1) } are left. Take another shaft.
cpm-says-soft = { CPM($by_cpm, digits: 1) } softer than the aim. The tip is not trimmed any more: take a stiffer shaft, or keep it.
cpm-says-stiff = { CPM($by_cpm, digits: 1) } stiffer than the aim. A cut cannot make it softer: take a softer shaft, or keep it.

cpm-remedy-heavier-head = A head { MASS($by_g, digits: 1) } heavier: −{ PLAIN($loss_cpm, digits: 1) } cpm, swing weight { POINTS($by_points, signed: 1) }.
cpm-remedy-lighter-head = A head { MASS($by_g, digits: 1) } lighter: +{ PLAIN($gain_cpm, digits: 1) } cpm, swing weight { POINTS($by_points, signed: 1) }.
cpm-remedy-shorter-butt = { LENGTH($by_mm, digits: 2) } off the butt, still within the tolerance of length: +{ PLAIN($gain_cpm, digits: 1) } cpm, swing weight { POINTS($by_points, signed: 1) }.
cpm-remedy-other-shaft = { CPM($by_cpm, digits: 1) } are to be made up: look for another shaft.

trim-fault-nothing = no tip of job { $job } is to be trimmed now
    .next = Choose another slope, or name the clubs and their tip trims
trim-fault-twice = club { $slot } is named twice
    .next = Name each club once
trim-fault-fixed = the tip of the { $number } is not trimmed any more: its shaft is cut, or has a taper tip
    .next = Leave it out, or plan another shaft for it

cpm-take = Take these tip trims
cpm-page = Trim to frequency
cpm-about = What each club will read in your clamp, and the tip trim that brings it to the slope. What comes off the tip more comes off the butt less, so the club keeps its length. A tip that is cut stays cut, and the maker’s trim limits come first.
cpm-with-grip = Read with the grip in the clamp.
cpm-without-grip = Read without the grip.
cpm-slope = Slope
cpm-heading = Aim: { $slope }
cpm-heading-step = Aim: { CPM($step_cpm, digits: 1) } more each half inch
cpm-little = These trims bring next to nothing: what is not known of the shafts is far more. Read one club in the clamp first.
cpm-step = Rise each half inch
cpm-level = First club
cpm-level-hint = Leave empty: what suits the shafts of the set
cpm-show = Show
cpm-column-club = Club
cpm-column-forecast = Forecast
cpm-column-aim = Aim
cpm-column-tip = Tip cut
cpm-column-after = After
cpm-column-chance = In tolerance
cpm-column-to-do = What to do
cpm-inside = { $planned } of { $clubs } clubs are expected in tolerance as planned, { $trimmed } with these trims.
cpm-rests-on = Before a shaft is read, the forecast rests on { $from }.
cpm-open = Trim to frequency
cpm-line = { $slot }  { $club }: { $forecast }{ $aim ->
        [none] {""}
       *[other] {", "}aim { $aim }
    }. { $to_do }
