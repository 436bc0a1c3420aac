### Calc form

