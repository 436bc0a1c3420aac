### The sheet that a player keeps

player-title = Player’s sheet
player-of = { $player }, by { $shop }
player-for-print = Print it on A4 or Letter; it fits one sheet of either.
player-full-record = The whole record
player-draft = not handed over yet
player-set = a set of { $n ->
    [one] one club
   *[other] { $n } clubs
 }, { $hand }
player-set-finished = { $set }, finished { $at }
player-drawing = The { $n } clubs of the set, drawn to one scale, each at its lie
player-drawing-scale = to one scale, each at its lie
player-table = What was asked and what was built
player-club = club
player-asked = asked
player-built = built
player-felt = felt
player-felt-means = Felt: the { $club } that the fitting settled on.
player-felt-means-read = Felt: the { $club } that the fitting settled on, as it was measured on { $read_on }.
player-nothing = –
player-asked-built = { $asked } → { $built }
player-column = { $what ->
    [finished_length] length, { $sign }
    [swing_weight] swing weight
    [cpm] flex, cpm
    [loft] loft, °
    [lie] lie, °
   *[total_mass] total mass, { $sign }
 }
player-made-of = { $kind ->
    [head] Heads
    [shaft] Shafts
   *[grip] Grips
 } { $models }
player-soft-side = soft side { $soft_side }
player-wraps = { $n ->
    [one] one layer of tape over its full length
   *[other] { $n } layers of tape over its full length
 }
player-with = { $a }, { $b }
player-lengths = Lengths are to the outside of the grip’s cap.
player-promised = Every club is within { POINTS($swing_weight_points) } of the swing weight asked, { LENGTH($length_mm, digits: 2) } of the length, and { ANGLE($loft_deg) } of loft and lie: this we promise.
player-promised-cpm = Every club is within { POINTS($swing_weight_points) } of the swing weight asked, { LENGTH($length_mm, digits: 2) } of the length, { ANGLE($loft_deg) } of loft and lie, and { CPM($tolerance_cpm, digits: 0) }: this we promise.
player-builder = { $builder }, builder
player-job = job { $job }
