### Model

