### Backups

# What is wrong with them.
backup-wrong-none = there is no backup of this shop yet in { $folder }
    .next = Make one: setwright backup. Copy the folder to another disk now and then
backup-wrong-old = the last backup in { $folder } is of { $made_at }
    .next = Leave the bench running, or make one: setwright backup
backup-wrong-failed = the backup of { $tried_at } failed: { $why }
backup-wrong-no-folder = this program keeps no backups
    .next = Start it with --backups FOLDER
backup-wrong-damaged = the file of this shop is damaged: { $log }
    .next = Stop entering. Stop the program, then put the last backup in its place: setwright restore FILE

# On a page.
backup-title = Backup
backup-not-safe = not safe

# On the command line.
backup-made = { $path } holds { $held }; it was opened and found whole
backup-held =
    “{ $shop }” with { $jobs ->
        [one] 1 job
       *[other] { $jobs } jobs
    }, { $parts ->
        [one] 1 part
       *[other] { $parts } parts
    }, { $readings ->
        [one] 1 reading
       *[other] { $readings } readings
    }{ $last_at ->
        [none] {""}
       *[other] {""}, the last of { $last_at }
    }
backup-whole = { $path } is whole: { $held }
backup-restored = { $path } is now { $held }
backup-before = The shop that was there is kept as { $path }.
backup-would = { $backup } holds { $held }
backup-would-lose = { $path } holds { $held } now. All that was entered after the backup will not be in the shop any more
backup-would-unread = { $path } cannot be read now: { $what }
backup-would-empty = There is no shop at { $path } now.

# An archive: the whole shop as a text.
archive-made =
    { $path } holds { $held }: { $rows ->
        [one] 1 row
       *[other] { $rows } rows
    }, sum { $sum }
archive-unpacked = { $place } is now { $held }, as it was on { $at }. Its keys are those of that day: look at setwright key list
