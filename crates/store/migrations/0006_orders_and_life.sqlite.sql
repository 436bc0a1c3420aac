-- Parts on order, and the life of every part. An order is one line; what happens to it is appended, and where it stands
-- follows from that. `given` keeps the masses as they came in, beside the SI columns.

CREATE TABLE part_order (
    id TEXT PRIMARY KEY,
    number BIGINT NOT NULL UNIQUE,
    supplier TEXT NOT NULL,
    kind TEXT NOT NULL,
    model TEXT NOT NULL REFERENCES model (code),
    part_number TEXT,
    count BIGINT NOT NULL CHECK (count > 0),
    from_kg DOUBLE PRECISION,
    to_kg DOUBLE PRECISION,
    given TEXT NOT NULL,
    note TEXT NOT NULL,
    ordered_on TEXT NOT NULL,
    expected_on TEXT,
    ordered_by TEXT NOT NULL,
    saved_at TEXT NOT NULL
);
CREATE INDEX part_order_by_model ON part_order (model);

CREATE TABLE part_order_job (
    part_order TEXT NOT NULL REFERENCES part_order (id),
    place BIGINT NOT NULL,
    job TEXT NOT NULL REFERENCES job (id),
    count BIGINT NOT NULL CHECK (count > 0),
    PRIMARY KEY (part_order, place)
);
CREATE INDEX part_order_job_by_job ON part_order_job (job);

CREATE TABLE part_order_event (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    part_order TEXT NOT NULL REFERENCES part_order (id),
    step TEXT NOT NULL,
    count BIGINT NOT NULL CHECK (count >= 0),
    model TEXT REFERENCES model (code),
    part_number TEXT,
    supplier TEXT,
    expected_on TEXT,
    note TEXT NOT NULL,
    done_by TEXT NOT NULL,
    happened_at TEXT NOT NULL,
    CHECK ((step = 'received') = (count > 0))
);
CREATE INDEX part_order_event_by_order ON part_order_event (part_order, seq);

CREATE TABLE part_life (
    seq BIGINT PRIMARY KEY,
    part TEXT NOT NULL REFERENCES part (id),
    step TEXT NOT NULL,
    job TEXT REFERENCES job (id),
    club TEXT REFERENCES job_club (id),
    figures TEXT NOT NULL,
    reason TEXT NOT NULL,
    done_by TEXT NOT NULL,
    happened_at TEXT NOT NULL
);
CREATE INDEX part_life_by_part ON part_life (part, seq);

-- Orders, what happened to them and the lives of parts are appended to, never changed.

CREATE TRIGGER part_order_no_update BEFORE UPDATE ON part_order
BEGIN
    SELECT RAISE(ABORT, 'part_order is append-only');
END;

CREATE TRIGGER part_order_no_delete BEFORE DELETE ON part_order
BEGIN
    SELECT RAISE(ABORT, 'part_order is append-only');
END;

CREATE TRIGGER part_order_job_no_update BEFORE UPDATE ON part_order_job
BEGIN
    SELECT RAISE(ABORT, 'part_order_job is append-only');
END;

CREATE TRIGGER part_order_job_no_delete BEFORE DELETE ON part_order_job
BEGIN
    SELECT RAISE(ABORT, 'part_order_job is append-only');
END;

CREATE TRIGGER part_order_event_no_update BEFORE UPDATE ON part_order_event
BEGIN
    SELECT RAISE(ABORT, 'part_order_event is append-only');
END;

CREATE TRIGGER part_order_event_no_delete BEFORE DELETE ON part_order_event
BEGIN
    SELECT RAISE(ABORT, 'part_order_event is append-only');
END;

CREATE TRIGGER part_life_no_update BEFORE UPDATE ON part_life
BEGIN
    SELECT RAISE(ABORT, 'part_life is append-only');
END;

CREATE TRIGGER part_life_no_delete BEFORE DELETE ON part_life
BEGIN
    SELECT RAISE(ABORT, 'part_life is append-only');
END;
