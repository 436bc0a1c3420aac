### Bench

