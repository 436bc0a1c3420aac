-- The forecast that stood when a reading came, in the reading's own unit: its middle, half width of its 95 % band, and
-- the version of the belief that made it.
ALTER TABLE reading ADD COLUMN forecast_value DOUBLE PRECISION;
ALTER TABLE reading ADD COLUMN forecast_band DOUBLE PRECISION;
ALTER TABLE reading ADD COLUMN forecast_version BIGINT;

-- The last word on the clock is looked up with every reading.
CREATE INDEX event_by_kind ON event (kind, seq);

-- A batch that is sent twice is kept once.
ALTER TABLE batch ADD COLUMN request_key TEXT;
CREATE UNIQUE INDEX batch_by_request_key ON batch (request_key);

-- "This batch was entered wrongly": said beside it, never on it.
CREATE TABLE batch_taken_back (
    batch TEXT PRIMARY KEY REFERENCES batch (id),
    why TEXT NOT NULL,
    said_by TEXT NOT NULL,
    said_at TEXT NOT NULL
);
CREATE TRIGGER batch_taken_back_no_update BEFORE UPDATE ON batch_taken_back
BEGIN
    SELECT RAISE(ABORT, 'batch_taken_back is append-only');
END;
CREATE TRIGGER batch_taken_back_no_delete BEFORE DELETE ON batch_taken_back
BEGIN
    SELECT RAISE(ABORT, 'batch_taken_back is append-only');
END;
