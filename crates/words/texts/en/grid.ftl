### Set grid: one step across all clubs of a job

grid-title = Set grid
grid-crumb = Job { $job } · { $step } · { $what } · all clubs
grid-of-step = { $step } of every club
grid-against-target = where each club will finish, against { LETTER($target_points) }
grid-against-targets = where each club will finish, against its target

# What is left at this step.
grid-all-read = Every club is read at this step.
grid-what-read = { CAPITAL($what) } of every club is read.
grid-next = Next: { $next }

# A row.
grid-look-again = doubted: look again
grid-off = { $by } against what is asked
grid-waits-for-cure = waits for its cure
grid-mix = Mix a batch
grid-enter = enter
grid-done = Done
grid-kept = { $club }: { $said }

# A step that is only done, for the whole set.
grid-set-left = Left to do: { $clubs }.
grid-set-do = Done for all { $n }
grid-set-done = “{ $step }” is done for the whole set.

# What is open on the clubs before a step that cannot be undone.
grid-open-before = Open before “{ $step }”

# The last reading.
grid-wrong = { $club }: that was wrong
grid-read-again = Read it again

# What the keys do.
grid-key-keep = Enter, pedal or scan
grid-keep-next = keep, next club
