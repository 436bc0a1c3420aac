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
