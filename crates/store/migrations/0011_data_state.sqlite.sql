-- Numbers the states of the whole database: each transaction that changes anything counts up. Who has read a job at one
-- number need not read it again at the same. It begins with the time of its making, in microseconds since 1970, so that a
-- database that was emptied and made again never shows a number that the one before it had.
CREATE TABLE data_state (
    id BIGINT PRIMARY KEY CHECK (id = 1),
    number BIGINT NOT NULL
);
INSERT INTO data_state (id, number) VALUES (1, CAST((julianday('now') - 2440587.5) * 86400000000 AS BIGINT));
