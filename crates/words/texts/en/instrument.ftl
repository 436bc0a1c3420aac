### Instrument

