### Glue

