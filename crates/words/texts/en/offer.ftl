### Extra measurements that are worth their minutes

offer-time-seconds = Worth { $n } seconds
offer-time-minutes =
    { $n ->
        [one] Worth a minute
       *[other] Worth { $n } minutes
    }

offer-gain-half = It halves the band of the forecast.
offer-gain-third = It tightens the forecast by a third.
offer-gain-quarter = It tightens the forecast by a quarter.
offer-gain-sixth = It tightens the forecast by a sixth.
offer-gain-tenth = It tightens the forecast by a tenth.
offer-gain-twentieth = It tightens the forecast a little.
offer-gain-other-clubs = It tightens the forecasts of the other clubs.

offer-check-weight = { $time }: read the check weight. { $gain }
offer-reference = { $time }: read the reference club on this scale. { CAPITAL($last) }. { $gain }
offer-tape = { $time }: weigh the tape of the { $club } before it goes on. { $gain }
offer-grip-centre = { $time }: balance the grip of the { $club } on an edge and measure from the cap. { $gain }
offer-cap = { $time }: measure the cap of the grip of the { $club }. { $gain }
offer-shaft-centre = { $time }: balance the cut shaft of the { $club } on an edge and measure from the butt. { $gain }
offer-weighed = { $time }: weigh the { $club } before gluing and again after the cure. { $gain }
offer-total = { $time }: weigh the { $club } as it is, glued and without grip. { $gain }
offer-again = { $time }: seat the { $club } again and read its swing weight once more. { $gain }
offer-tape-scatter = { $time }: weigh the tape of the { $club } before it goes on. The shop is still learning how much one strip differs from the next.
offer-grip-centre-scatter = { $time }: balance the grip of the { $club } on an edge and measure from the cap. The shop is still learning how much one grip differs from the next.
offer-cap-scatter = { $time }: measure the cap of the grip of the { $club }. The shop is still learning how much one cap differs from the next.

# The command line and the screen.
offer-decline = Not again in this job

# Where and when the reference club was read last.
reference-read-here =
    { $n ->
        [one] it was read here once on a day of this job
       *[other] it was read here { $n } times on days of this job
    }
reference-read-other-day =
    { $read_on ->
        [none] it was read on this scale, but no day is noted, and a scale is off by a little more or less each day
       *[other] it was read on this scale on { $read_on }, and a scale is off by a little more or less each day
    }
reference-read-other-scale =
    { $read_on ->
        [none] it was read on the scale “{ $scale }”, which may be off by something else than this one
       *[other] it was read on { $read_on } on the scale “{ $scale }”, which may be off by something else than this one
    }
reference-read-known = its true swing weight is on the sheet, and shows what this scale is off by

# Several measurements together, and the order of work.
bundle-worth =
    { $minutes ->
        [one] One minute of measuring: from { PLAIN($before, digits: 1) } to { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside
       *[other] { $minutes } minutes of measuring: from { PLAIN($before, digits: 1) } to { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside
    }
order-worth-one-cured-first = Glue one club and read it after the cure before you glue the others: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch
order-worth-one-finished-first = Finish one club before you glue the others: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch
order-worth-one-one-rest = Finish one club, then a second, then glue the others: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch
order-worth-one-by-one = Finish each club before you glue the next: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch
order-assumes-usual-joint = These figures hold if your joints take what joints usually take, about { $joint_g }. No club of yours has shown it yet: tell the program what a joint of yours does, or glue and cure one club first.
told-aside-not-used = What { $by } said of { $of }, { POINTS($change_points, digits: 2, signed: 1) }, does not fit what this set shows. It is not used here.
order-worth-untried-cured-first =
    Glue one club and read it after its cure before you glue the others: no cured joint of { $adhesive } has been read in this shop yet. { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch if the joints take what is expected; more is at stake if they do not
order-worth-untried-finished-first =
    Finish one club before you glue the others: no cured joint of { $adhesive } has been read in this shop yet. { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } in one batch if the joints take what is expected; more is at stake if they do not
order-worth-after-bundle = After these measurements: { $says }
grip-turns-one-first = Put one grip on and read the club before you choose the other grips: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } if you choose all now
grip-turns-in-turn = Put each grip on and read the club before you choose the next: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } if you choose all now
grip-turns-wait-for-solvent = Read the club with the fresh grip dry, after { $dry_at }, before you choose the other grips: { PLAIN($after, digits: 1) } of { $clubs } clubs expected inside, { PLAIN($before, digits: 1) } if you choose them now
offer-bundle-part = One of { $n } measurements worth making together. { $worth }.
order-insisted = Settle this before you glue.
order-title = Before you glue
order-title-grips = Order of the grips
order-measure-first = Measure first
order-decline = Glue in one batch all the same
