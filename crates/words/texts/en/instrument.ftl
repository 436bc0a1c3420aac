### Instrument

# Why a recording is refused.
recording-empty = the recording is empty
    .next = Record again, or choose another file
recording-not-wav = this is not a WAV file that can be read ({ $reason })
    .next = Save it as uncompressed PCM or float
recording-axes = the recording has { $count } axes, but 1 to { $limit } are read
    .next = Leave out the others
recording-too-short = the recording has { $count } samples, but needs at least { $limit }
    .next = Record for longer
recording-too-long = the recording has more than { $limit } samples
    .next = Cut out the swing, a minute at most
recording-rate = the file gives a sample rate of { FIGURE($value_hz) } Hz
    .next = Save it again with the rate it was recorded at
recording-not-a-number = row { $row }, column { $column }: “{ $text }” is not a number
    .next = Write plain figures, one row for each instant
recording-ragged = row { $row } has { $count } columns, but the first has { $expected }
    .next = Write time and one or two axes in every row
recording-time-unit = the time column is headed “{ $heading }”
    .next = Head it time_s, time_ms or time_us
recording-time-backwards = row { $row }: time { FIGURE($value_s) } s does not come after { FIGURE($limit_s) } s
    .next = Sort the rows by time
recording-uneven = row { $row }: time is { FIGURE($off_s) } s off an even spacing, but at most { FIGURE($limit_s) } s is taken
    .next = Record at a fixed rate, or look for missing rows
recording-not-a-table = the table cannot be read ({ $reason })
    .next = Save it as CSV in UTF-8
