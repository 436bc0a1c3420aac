### What is fitted across a set

# What is refused of fitting a set.
fit-fault-nothing = nothing is advised for job { $job } now
    .next = Read the clubs first, or name what goes into which club
fit-fault-kind = a { $kind } is not fitted across a set
    .next = Choose it on the club's own screen
fit-fault-twice = club { $slot } is named twice
    .next = Name each club once
fit-fault-two-clubs = an exchange needs two different clubs
    .next = Name two places of the tray, for example 4 and 5
fit-fault-no-parts = the { $number } has no parts yet
    .next = Plan it first
fit-fault-not-read = neither the { $first } nor the { $second } was read with its { $kind } on
    .next = Nothing to put right: read both clubs
fit-fault-read-since = the { $number } was read since the exchange
    .next = Take that reading back first, if it is wrong

# The grid: what goes into the tip, which grip to hang out, what is added.
fit-stays = { $now_g } stays
fit-empty-stays = tip stays empty
fit-tip = <i>{ $now_g } →</i> <b>{ $mass_g }</b>
fit-tip-first = <i>empty →</i> <b>{ $mass_g }</b>
fit-tip-empty = <i>{ $now_g } →</i> <b>empty</b>
fit-grip = grip <b>{ $code }</b>, { $mass_g }
fit-grip-stays = grip { $code } stays
fit-grip-later = grip { $code }, once the first is read
fit-added = <b>{ $mass_g }</b> { $action }
fit-finishes = finish { LETTER($finish_points) } ± { PLAIN($band_points) }
fit-becomes = { LETTER($now_points) } becomes { LETTER($finish_points) }
fit-take = Take
fit-all =
    { $n ->
        [one] { $what }.
       *[other] { $what }: { $inside } of { $n } finish inside.
    }
fit-group = { $what } into { $clubs }
fit-group-empty = nothing into { $clubs }
fit-group-grip = { $what } onto { $clubs }
fit-take-all =
    { $n ->
        [one] Take it
       *[other] Take all { $n }
    }
fit-taken = Taken for { $clubs }.
fit-undo = Undo
fit-fetch = To fetch
fit-fetch-what = what
fit-fetch-place = place
fit-fetch-count = pieces
fit-fetch-clubs = for
fit-no-place = no place noted

# Two clubs with each other's piece.
fit-exchanged = Exchanged
fit-exchange-done = { $first } and { $second } exchanged: read both again.

# On the command line.
fit-line = { $number }: { $what }; { LETTER($now_points) } becomes { LETTER($finish_points) }
fit-none = Nothing to fit: no club of the job has parts yet.
fit-line-stays = { $number }: finish { LETTER($now_points) }
fit-tip-line = tip { $mass_g } (now { $now_g })
fit-grip-line = grip { $code }, { $mass_g }
fit-added-line = { $mass_g } { $action }
fit-exchange-line = Clubs { $first } and { $second }: { $kind } exchanged. Read both again.
fit-exchange-undone-line = Clubs { $first } and { $second }: the exchange is taken back, their readings count again.
fit-fetch-line = { $place }: { $count } × { $code }, { $mass_g }, for { $clubs }
