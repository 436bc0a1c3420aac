### Scale health

