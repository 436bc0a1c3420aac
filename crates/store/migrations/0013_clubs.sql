-- A club that lives on: its code, whose it is, and what it is made of as a document.
CREATE TABLE club (
    code TEXT PRIMARY KEY,
    code_key TEXT NOT NULL UNIQUE,
    number BIGINT NOT NULL UNIQUE,
    search TEXT NOT NULL,
    owner BIGINT,
    body TEXT NOT NULL,
    version BIGINT NOT NULL,
    saved_at TEXT NOT NULL
);
CREATE INDEX club_by_owner ON club (owner);

-- Its life: appended to, never changed.
CREATE TABLE club_event (
    seq BIGINT PRIMARY KEY,
    id TEXT NOT NULL UNIQUE,
    club TEXT NOT NULL REFERENCES club (code),
    happened_at TEXT NOT NULL,
    body TEXT NOT NULL
);
CREATE INDEX club_event_by_club ON club_event (club, seq);

-- Kinds of job of the shop's own.
CREATE TABLE job_kind (
    key TEXT PRIMARY KEY,
    body TEXT NOT NULL
);

-- The club that a club of a job was before, and the one that it became.
ALTER TABLE job_club ADD COLUMN work_body TEXT;
ALTER TABLE job_club ADD COLUMN made_of TEXT;
CREATE INDEX job_club_by_made_of ON job_club (made_of);
