-- What the shop has learned: one row each time it changed, the latest counts. `body` is the whole of it. And where each
-- finished club came out, as its record says, for the capability of the shop.

CREATE TABLE learned (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    cause TEXT NOT NULL,
    job TEXT UNIQUE REFERENCES job (id),
    about TEXT NOT NULL,
    reason TEXT NOT NULL,
    done_by TEXT NOT NULL,
    happened_at TEXT NOT NULL,
    body TEXT NOT NULL,
    CHECK ((cause = 'job') = (job IS NOT NULL))
);

CREATE TABLE finished_club (
    club TEXT PRIMARY KEY REFERENCES job_club (id),
    seq BIGINT NOT NULL UNIQUE,
    job TEXT NOT NULL REFERENCES job (id),
    job_number BIGINT NOT NULL,
    number TEXT NOT NULL,
    head_model TEXT NOT NULL,
    finished_at TEXT NOT NULL,
    target_points DOUBLE PRECISION NOT NULL,
    deviation_points DOUBLE PRECISION NOT NULL,
    band_points DOUBLE PRECISION NOT NULL,
    tolerance_points DOUBLE PRECISION NOT NULL,
    verdict TEXT NOT NULL
);
CREATE INDEX finished_club_by_job ON finished_club (job);
