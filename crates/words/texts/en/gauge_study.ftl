### Gauge study

