### Order

