### Steps of a job

# The row of steps over a page of the bench.
step-row = Steps
step-done = done
step-left-out = left out
step-doubted = doubted
