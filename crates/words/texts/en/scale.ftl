### Scale

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
    .next = If it begins with a mark, enter the mark: what settled lines begin with
line-fault-not-a-swing-weight = “{ $text }” does not look like a swing weight
    .next = If it begins with a mark, enter the mark: what settled lines begin with
