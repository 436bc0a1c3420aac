### Shop


# The names of a new shop, which it may change.
shop-new = My shop
shop-new-balance-scale = balance scale
shop-new-gram-scale = gram scale
