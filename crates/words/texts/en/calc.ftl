### Calc

