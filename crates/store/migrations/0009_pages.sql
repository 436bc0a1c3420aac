-- What the pages of every day ask for, found without a look through the parts, readings and checks of all years.
CREATE INDEX part_by_state ON part (state, seq);
CREATE INDEX part_hold_by_used ON part_hold (used, part);
CREATE INDEX reading_by_read_at ON reading (read_at);
CREATE INDEX scale_event_by_kind ON scale_event (kind, happened_at);
CREATE INDEX sheet_by_job ON sheet (approved_job);

-- Counts the changes of the stock: who has read the parts at one count need not read them again at the same. The
-- database counts, so that no program can forget to.
CREATE TABLE stock_change (
    id BIGINT PRIMARY KEY CHECK (id = 1),
    number BIGINT NOT NULL
);
INSERT INTO stock_change (id, number) VALUES (1, 1);
