### Command


# `setwright record`.
command-record-job = Job { $job }, { $player }, { $state }
command-record-due = { $shop }, { $hand }, due { $due_on }
command-record-club = { CAPITAL($club) }, card { $card }: { $parts }
command-record-part = { $kind } { $code }
command-record-unplanned = not planned yet
command-record-sheet = sheet
command-record-built = built
command-record-off-by = off by
