### Notation

