### Part

