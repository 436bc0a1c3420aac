### Store

# What the database refuses.
store-address = the database address “{ $url }” cannot be used: { $log }
    .next = Give sqlite:///path/to/file.db or postgres://user@host/name
store-no-shop = there is no shop yet at { $place }
    .next = `setwright serve` makes one; if yours is elsewhere, name it with --database
store-newer = the database { $place } has schema { $found }, and this version knows schemas up to { $known }
    .next = Start the newer version that wrote it; nothing was changed
store-not-a-database = { $place } is not a database file, or its beginning is damaged
    .next = Check the path; if it is the right one, keep this file and put the last copy of it in its place. Nothing was changed
store-not-ours = the database { $place } already holds the table “{ $table }” of another program
    .next = Nothing was changed: give this program a database of its own
store-schema-damaged = the database { $place } was changed by hand: { $log }
    .next = Restore the last backup, or put back what is missing; until then nothing is written to it
store-read-only = the database { $place } cannot be written
    .next = Give this user write permission on the file and on its folder
store-disk-full = the disk of the database { $place } is full, so the entry was NOT saved
    .next = Free some space, then enter it again; everything acknowledged before is safe
store-cannot-open = the database { $place } cannot be opened: { $log }
    .next = Check that the folder exists and that this user may write in it
store-server = the database server { $place } cannot be used: { $log }
    .next = Check that it runs, the address, user and password, and that the database exists
store-disk = the disk of the database { $place } fails: { $log }. The entry was NOT saved
    .next = Check the disk and its free space, and restore the last backup if this comes again
store-in-use-elsewhere = another program has { $place } open, so it was left as it is
    .next = Stop that program first
store-on-server = the shop at { $place } lies on a server, which makes its own copies
    .next = Run `pg_dump --format=custom --file=shop.dump NAME` there each night, and try out that `pg_restore` brings it back
store-copy-differs = the copy { $place } did not hold what the shop holds, so it was removed
    .next = Make it again; if this comes again, check the disk
store-torn = the copy { $place } is damaged: { $log }
    .next = Use an older copy; this one was left as it is
store-busy = the database is busy with another entry, so this one was not saved
    .next = Enter it again
store-stale = { $what } was changed on another screen in the meantime (it is at version { $version } now), so nothing was overwritten
    .next = Load it again, look at what changed, and enter it again
store-code-taken = “{ $code }” is taken already
    .next = Choose another, or look up what carries it
store-box-empty = no { $code } is left in the box
    .next = Count the box again, or choose another
store-part-ordered = { $code } is ordered and not here yet
    .next = Book it in first, or choose another part
store-part-aside = { $code } is { $state }
    .next = Put it back into stock first if it is good, or choose another part
store-part-taken =
    { $job ->
        [none] { $code } is { $state } already
       *[other] { $code } is { $state } already by job { $job }
    }
    .next = Choose another part
store-in-use = the model “{ $code }” is still used by { $users }
    .next = Take it out there first; a model that a job was built with stays for the record
store-missing = there is no { $what } “{ $name }”
    .next = Check the code, or make it first
store-already-taken-back = this reading was taken back already (“{ $why }”)
    .next = Nothing was changed: load the club again
store-key-reused = this form was sent before with another entry ({ $saved }), so the new one was not saved
    .next = Load the club again and enter it again
store-not-storable = { $what } cannot be saved: { $problem }
    .next = Check the entry
store-damaged = { $place } in the database cannot be read: { $log }
    .next = It was changed by hand or the disk failed: restore the last backup
store-not-writing = a change was tried in a transaction for reading
    .next = This is a fault of the program: please report it
store-database = the database { $place } refused the entry, so it was not saved
    .next = Try again; if it comes again, report it with the log

# What is kept, in a sentence about it.
store-part-of-customer = { $code } belongs to { $owner } and goes into that customer’s clubs only
    .next = Take another part, or say under Stock that this one is the shop’s now
stored-part = the part { $code }
stored-club = the club { $card }
stored-job = job { $job }
stored-order = order { $order }
stored-sheet = the sheet of { $player }
stored-customer = customer { $customer }
model-user-shop = the shop's own settings
model-user-batches =
    { $n ->
        [one] 1 batch
       *[other] { $n } batches
    }
model-user-parts =
    { $n ->
        [one] 1 part
       *[other] { $n } parts
    }
model-user-jobs =
    { $n ->
        [one] 1 job
       *[other] { $n } jobs
    }
model-user-sheets =
    { $n ->
        [one] 1 sheet
       *[other] { $n } sheets
    }
model-user-orders =
    { $n ->
        [one] 1 order
       *[other] { $n } orders
    }
model-user-models =
    { $n ->
        [one] 1 model
       *[other] { $n } models
    }
model-user-other = { $n } { $name }
saved-reading = { $what } “{ $typed }”
saved-study-reading = “{ $typed }”
saved-study = a study of { $scale }
saved-scale-event = { $text }

# An archive and its unpacking.
store-not-empty = there is a shop already at { $place }
    .next = Name a place where there is none with --database; an archive is never unpacked over a shop
store-not-an-archive = line { $line } of the archive: { $fault }
    .next = Nothing was made. Take another copy of the archive
archive-fault-not-begun = it does not begin as an archive of this program does
archive-fault-newer-form = a newer version of this program wrote it
archive-fault-cut-short = it ends here before its end
archive-fault-other-table = a table or column that its schema does not have
archive-fault-no-table = a row before its table
archive-fault-values = a row with too few or too many values
archive-fault-kind = a text where a figure belongs, or the reverse
archive-fault-changed = it was changed after it was made: the sum of its bytes is another
archive-fault-incomplete = rows are missing, or there are more than it says
archive-fault-system = it cannot be read: { $log }
