### Readings: what was read, forecast and asked

reading-cpm = { CPM($figure_cpm) }

# Beside the largest figure of a step: half of the band, or of the sheet's tolerance.
reading-band-expected = ± { $band } expected
reading-band-asked = ± { $band } asked

# A forecast with half of its band: “D9.7 ± 0.6”.
reading-with-band = { $value } ± { $band }
# What the sheet asks: “asked 21.0° ± 0.5°”.
reading-asked = asked { $value } ± { $band }

# The unit beside an entry.
reading-unit-degrees = degrees
