-- "Look at this club": what a recall marked, and what was found when somebody looked. Both are appended to, never changed.
CREATE TABLE club_mark (
    id TEXT PRIMARY KEY,
    seq BIGINT NOT NULL UNIQUE,
    club TEXT REFERENCES job_club (id),
    code TEXT REFERENCES club (code),
    word TEXT NOT NULL,
    recall TEXT NOT NULL,
    marked_by TEXT NOT NULL,
    marked_at TEXT NOT NULL,
    CHECK (club IS NOT NULL OR code IS NOT NULL)
);
CREATE INDEX club_mark_by_club ON club_mark (club);
CREATE INDEX club_mark_by_code ON club_mark (code);

CREATE TABLE club_mark_cleared (
    mark TEXT PRIMARY KEY REFERENCES club_mark (id),
    word TEXT NOT NULL,
    said_by TEXT NOT NULL,
    said_at TEXT NOT NULL
);

-- What a recall looks for.
CREATE INDEX part_by_lot ON part (LOWER(lot));
CREATE INDEX batch_by_lot ON batch (LOWER(lot));
CREATE INDEX part_life_by_club ON part_life (club);
