### Model form

