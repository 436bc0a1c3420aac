-- What happens to the shop's scales: checks, calibrations, trust taken away and given back. `body` is the whole of an
-- event; the columns beside it are for searching and for other programs, figures in the unit of the scale. And gauge
-- studies: `body` is the plan, which never changes; each reading is a row of its own, the latest of a place counts.

CREATE TABLE scale_event (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    scale TEXT NOT NULL,
    kind TEXT NOT NULL,
    happened_at TEXT NOT NULL,
    kept_at TEXT NOT NULL,
    day TEXT NOT NULL,
    done_by TEXT NOT NULL,
    standard TEXT,
    typed TEXT,
    reading DOUBLE PRECISION,
    certified DOUBLE PRECISION,
    job TEXT REFERENCES job (id),
    request_key TEXT UNIQUE,
    body TEXT NOT NULL,
    CHECK ((kind = 'check') = (reading IS NOT NULL))
);
CREATE INDEX scale_event_by_scale ON scale_event (scale, seq);
CREATE INDEX scale_event_by_time ON scale_event (happened_at);

CREATE TABLE gauge_study (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    scale TEXT NOT NULL,
    begun_at TEXT NOT NULL,
    begun_by TEXT NOT NULL,
    request_key TEXT UNIQUE,
    body TEXT NOT NULL
);
CREATE INDEX gauge_study_by_scale ON gauge_study (scale, seq);

CREATE TABLE gauge_study_reading (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    study TEXT NOT NULL REFERENCES gauge_study (id),
    place BIGINT NOT NULL CHECK (place >= 0),
    typed TEXT NOT NULL,
    reading DOUBLE PRECISION NOT NULL,
    read_at TEXT NOT NULL,
    read_by TEXT NOT NULL,
    request_key TEXT UNIQUE
);
CREATE INDEX gauge_study_reading_by_study ON gauge_study_reading (study, seq);
