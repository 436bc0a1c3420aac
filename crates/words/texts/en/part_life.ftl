### Part life

