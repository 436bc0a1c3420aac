### Sheet form

