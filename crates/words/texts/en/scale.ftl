### Scale

