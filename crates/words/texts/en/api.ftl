### Api

