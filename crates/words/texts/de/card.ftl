### Job card: printed, it rides in the tray with its club

card-slot = Fach { $slot }
card-expected-readings = Erwartete Messwerte
card-reading = Messwert
card-expected = erwartet
card-read = gemessen
