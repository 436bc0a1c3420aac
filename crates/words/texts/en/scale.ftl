### Scales and gauges: their figures, their trust, their lines

# What is refused of the connection of a scale.
connection-fault-unnamed = a scale needs a key, a name and a port
    .next = Fill all three in, the port for example /dev/ttyUSB0
connection-fault-speed = { $name } has a speed of { $baud } bits a second
    .next = Take what its sheet says, usually 9600
connection-fault-frame = { $name } has { $data_bits } data bits and { $stop_bits } stop bits
    .next = Take 7 or 8 data bits and 1 or 2 stop bits
connection-fault-empty-mark = a mark of { $name } is empty
    .next = Leave out what the scale does not send

# Why a line of a scale is refused.
line-fault-too-long = a line of { $n } characters: no scale sends that
    .next = Check the speed
line-fault-characters = characters that no scale sends
    .next = Check speed, data bits and parity
line-fault-no-figure = “{ $text }” has no figure
line-fault-no-unit = “{ $text }” has no unit, and none is set for this scale
    .next = Choose its unit under Scales
line-fault-not-a-mass = “{ $text }” does not look like a mass
    .next = Does a settled line begin with these letters? Enter them as the settled mark, or as a word to ignore
line-fault-unreadable = { $what }
line-fault-not-a-swing-weight = “{ $text }” does not look like a swing weight
    .next = If it begins with a mark, enter the mark: what settled lines begin with

# A figure of an instrument; an amount by which one is off.
gauge-figure-mass = { MASS($figure_g, $digits) }
gauge-figure-reading = { LETTER($figure_points, $digits) }
gauge-figure-points = { POINTS($by_points, $digits) }
gauge-figure-frequency = { CPM($figure_cpm, $digits) }
gauge-figure-angle = { ANGLE($figure_deg, $digits) }
gauge-figure-length = { LENGTH($figure_mm, $digits) }

# Which way an instrument is off.
gauge-way-heavy = heavy
gauge-way-light = light
gauge-way-high = high
gauge-way-low = low
gauge-way-long = long
gauge-way-short = short

# What a check or the calendar says against a scale.
trust-finding-too-much = { $reading } for { $standard }: { $by } too much, where { $allowed } is allowed
trust-finding-too-little = { $reading } for { $standard }: { $by } too little, where { $allowed } is allowed
trust-finding-pattern = { $standard }: { $cause }
trust-finding-overdue = its calibration was due on { $due_on }
trust-finding-check-taken-back = the check that took its trust away was taken back: { $reason }
trust-finding-read-again = read again

# Since when, as one says it on a day.
since-today = today
since-yesterday = yesterday
since-weekday =
    { $weekday ->
        [1] Monday
        [2] Tuesday
        [3] Wednesday
        [4] Thursday
        [5] Friday
        [6] Saturday
       *[7] Sunday
    }
since-day = { $day_on }

# What is said of a scale that is not trusted. Whole sentences.
trust-passed = The { $scale } passed its last check; it has not been trusted since { $since }. Enter what was done, and trust it again.
trust-off = The { $scale } reads { $off_by } { $way } since { $since }: check it before you rely on it.
trust-overdue = The { $scale } is not trusted: its calibration was due on { $due_on }. Have it calibrated, and enter that.
trust-not-trusted = The { $scale } is not trusted since { $since }: { $reason }. Check it before you rely on it.

# What a connected scale sends.
scale-line-value = { $figure }
scale-line-settled = { $figure }, settled
scale-line-moving = { $figure }, moving
scale-line-overload = overload
scale-line-skipped = skipped
scale-line-refused = { $why }
scale-heard-connected = connected
scale-heard-silent = No data. Is it on and set to transmit?
scale-heard-flooding = It sends more lines than can be read; set it to send fewer.
scale-heard-too-much = Too much on the scale
scale-heard-unreadable = A line could not be read: { $why }
scale-heard-lost = { $why }. It is tried again; check plug and switch.

# The command that listens to a scale.
scale-command-line = { $raw } →  { $read }
scale-command-refused = refused: { $why }
scale-command-parity = “{ $parity }” is not a parity: give none, even or odd
scale-command-port-never = the port never opened: { $why }

# The page of scales on a serial line.
scales-title = Scales
scales-crumb = on a serial line
scales-about = A scale with a serial line (RS-232 or USB serial) fills in what it shows. Set the port, then look below whether its lines are read.
scales-add = Another scale
scales-change = Change the scale
scales-connected = connected
scales-not-connected = not connected
scales-lines = Its last lines, as they came and as they are read
scales-no-lines = None yet. Put something on it, or press its own key.
scales-newest = Load the page again to see the newest.
scales-refused = refused
scales-edit = Change
scales-remove = Remove
scales-name = Name
scales-name-hint = For example: parts scale
scales-it-shows = It shows
scales-port = Port
scales-port-hint = /dev/ttyUSB0, /dev/ttyACM0, COM3
scales-baud = Speed
scales-baud-hint = From its manual, usually 9600
scales-mark = Mark of a settled value
scales-mark-hint = As it is in the line; empty if it has none
scales-unit = Unit of lines without one
scales-unit-hint = g, oz, lb; for a swing weight: oz in. Empty: refuse them
scales-overload = Texts for overload
scales-commas = Separated by commas
scales-ignore = Texts to ignore
scales-ignore-hint = Separated by commas, for example GS
scales-skip = Lines to skip begin with
scales-ask = Sent once a second to ask it
scales-ask-hint = Empty for a scale that sends by itself; \r and \n are the end of a line
scales-data-bits = Data bits
scales-stop-bits = Stop bits
scales-means = A line with the mark is
scales-parity = Parity
scales-keep = Save and connect
scales-needs-whole = A whole number is needed
scales-needs-name = Give it a name
scales-needs-port = Say which port it is on

# What a job believes of today's balance scale.
scale-shift-low = this scale seems to show { $by_points } too little today
scale-shift-high = this scale seems to show { $by_points } too much today
scale-shift-steady = this scale reads right
scale-shift-counted = { CAPITAL($says) }. Expected readings and finish allow for it.
scale-shift-check = Check weight
