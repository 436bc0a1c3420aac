### Picture

