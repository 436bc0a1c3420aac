### Remedy

