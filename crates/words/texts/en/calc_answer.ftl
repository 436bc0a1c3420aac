### Calc answer

