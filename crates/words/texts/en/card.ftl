### Job card: printed, it rides in the tray with its club

card-slot = Slot { $slot }
card-expected-readings = Expected readings
card-reading = reading
card-expected = expected
card-read = read
