### Frame

