-- Every table of the store, in the SQL that SQLite and PostgreSQL share.
-- Columns hold SI units, named last; `given` keeps the figures exactly as they came in, so that no conversion can
-- shift a last digit. `body` is a document that is always read whole. Timestamps are RFC 3339 with nine decimals, so
-- that their order as text is their order in time. `seq` is the order of arrival.

CREATE TABLE shop (
    id BIGINT PRIMARY KEY CHECK (id = 1),
    name TEXT NOT NULL,
    body TEXT NOT NULL,
    saved_at TEXT NOT NULL
);

CREATE TABLE model (
    code TEXT PRIMARY KEY,
    code_key TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL,
    name TEXT NOT NULL,
    body TEXT NOT NULL,
    version BIGINT NOT NULL,
    saved_at TEXT NOT NULL
);

-- Which documents name a model, so that it cannot be removed under them.
CREATE TABLE model_use (
    model TEXT NOT NULL,
    used_by TEXT NOT NULL,
    user_id TEXT NOT NULL,
    PRIMARY KEY (model, used_by, user_id)
);
CREATE INDEX model_use_by_user ON model_use (used_by, user_id);

CREATE TABLE sheet (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    player TEXT NOT NULL,
    due TEXT NOT NULL,
    body TEXT NOT NULL,
    approved_job TEXT,
    version BIGINT NOT NULL,
    saved_at TEXT NOT NULL
);
CREATE INDEX sheet_by_saved_at ON sheet (saved_at);

CREATE TABLE job (
    id TEXT PRIMARY KEY,
    number BIGINT NOT NULL UNIQUE,
    sheet_id TEXT NOT NULL REFERENCES sheet (id),
    player TEXT NOT NULL,
    due TEXT NOT NULL,
    state TEXT NOT NULL,
    sheet_body TEXT NOT NULL,
    steps_body TEXT NOT NULL,
    made_at TEXT NOT NULL,
    version BIGINT NOT NULL
);
CREATE INDEX job_by_state ON job (state, number);
CREATE INDEX job_by_sheet ON job (sheet_id);

CREATE TABLE job_club (
    id TEXT PRIMARY KEY,
    job TEXT NOT NULL REFERENCES job (id),
    slot BIGINT NOT NULL,
    card TEXT NOT NULL,
    card_key TEXT NOT NULL UNIQUE,
    target_body TEXT NOT NULL,
    plan_body TEXT,
    version BIGINT NOT NULL,
    UNIQUE (job, slot)
);

CREATE TABLE part (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    code TEXT NOT NULL,
    code_key TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL,
    model TEXT NOT NULL REFERENCES model (code),
    number TEXT,
    mass_kg DOUBLE PRECISION,
    mass_typed TEXT NOT NULL,
    count BIGINT CHECK (count >= 0),
    length_m DOUBLE PRECISION,
    balance_point_m DOUBLE PRECISION,
    loft_rad DOUBLE PRECISION,
    lie_rad DOUBLE PRECISION,
    given TEXT NOT NULL,
    lot TEXT NOT NULL,
    place TEXT NOT NULL,
    state TEXT NOT NULL,
    job TEXT REFERENCES job (id),
    club TEXT REFERENCES job_club (id),
    search TEXT NOT NULL,
    version BIGINT NOT NULL,
    saved_at TEXT NOT NULL,
    CHECK (state <> 'held' OR (job IS NOT NULL AND club IS NOT NULL))
);
CREATE INDEX part_by_kind ON part (kind, state);
CREATE INDEX part_by_model ON part (model);
CREATE INDEX part_by_job ON part (job);
CREATE INDEX part_by_club ON part (club);

-- One row for each piece taken from a counted bulk. A single part carries its job and club itself.
CREATE TABLE part_hold (
    seq BIGINT PRIMARY KEY,
    part TEXT NOT NULL REFERENCES part (id),
    job TEXT NOT NULL REFERENCES job (id),
    club TEXT NOT NULL REFERENCES job_club (id),
    used BIGINT NOT NULL CHECK (used IN (0, 1)),
    held_at TEXT NOT NULL
);
CREATE INDEX part_hold_by_job ON part_hold (job);
CREATE INDEX part_hold_by_club ON part_hold (club);
CREATE INDEX part_hold_by_part ON part_hold (part);

CREATE TABLE reading (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    job TEXT NOT NULL REFERENCES job (id),
    club TEXT NOT NULL REFERENCES job_club (id),
    step TEXT NOT NULL,
    what TEXT NOT NULL,
    unit TEXT NOT NULL,
    value DOUBLE PRECISION NOT NULL,
    mass_kg DOUBLE PRECISION,
    length_m DOUBLE PRECISION,
    balance_points DOUBLE PRECISION,
    angle_rad DOUBLE PRECISION,
    frequency_hz DOUBLE PRECISION,
    typed TEXT NOT NULL,
    on_club TEXT NOT NULL,
    scale TEXT,
    display_step DOUBLE PRECISION NOT NULL,
    read_at TEXT NOT NULL,
    read_by TEXT NOT NULL,
    replaces TEXT REFERENCES reading (id),
    insisted BIGINT NOT NULL CHECK (insisted IN (0, 1)),
    request_key TEXT UNIQUE,
    CHECK ((unit = 'g') = (mass_kg IS NOT NULL)),
    CHECK ((unit = 'mm') = (length_m IS NOT NULL)),
    CHECK ((unit = 'points') = (balance_points IS NOT NULL)),
    CHECK ((unit = 'deg') = (angle_rad IS NOT NULL)),
    CHECK ((unit = 'cpm') = (frequency_hz IS NOT NULL))
);
CREATE INDEX reading_by_job ON reading (job, seq);
CREATE INDEX reading_by_club ON reading (club);

-- "That was wrong": said beside the reading, never on it.
CREATE TABLE reading_taken_back (
    reading TEXT PRIMARY KEY REFERENCES reading (id),
    why TEXT NOT NULL,
    said_by TEXT NOT NULL,
    said_at TEXT NOT NULL
);

-- "It is right though it is doubted."
CREATE TABLE reading_insisted (
    reading TEXT PRIMARY KEY REFERENCES reading (id),
    why TEXT NOT NULL,
    said_by TEXT NOT NULL,
    said_at TEXT NOT NULL
);

CREATE TABLE batch (
    id TEXT PRIMARY KEY,
    number BIGINT NOT NULL UNIQUE,
    adhesive TEXT NOT NULL REFERENCES model (code),
    lot TEXT NOT NULL,
    bead_mass_fraction DOUBLE PRECISION NOT NULL,
    room_k DOUBLE PRECISION NOT NULL,
    resin_kg DOUBLE PRECISION NOT NULL,
    hardener_kg DOUBLE PRECISION NOT NULL,
    beads_kg DOUBLE PRECISION NOT NULL,
    given TEXT NOT NULL,
    mixed_at TEXT NOT NULL,
    mixed_by TEXT NOT NULL
);
CREATE INDEX batch_by_mixed_at ON batch (mixed_at);
CREATE INDEX batch_by_adhesive ON batch (adhesive);

CREATE TABLE batch_club (
    batch TEXT NOT NULL REFERENCES batch (id),
    place BIGINT NOT NULL,
    club TEXT NOT NULL REFERENCES job_club (id),
    PRIMARY KEY (batch, place)
);
CREATE INDEX batch_club_by_club ON batch_club (club);

CREATE TABLE event (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    happened_at TEXT NOT NULL,
    done_by TEXT NOT NULL,
    job TEXT REFERENCES job (id),
    club TEXT REFERENCES job_club (id),
    kind TEXT NOT NULL,
    body TEXT NOT NULL
);
CREATE INDEX event_by_job ON event (job, seq);
