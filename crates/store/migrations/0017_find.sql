-- What the one field finds: a line of words for each thing, and the words that names are written with, for slips of the
-- hand. All of it is made from the other tables and can be made again. The database notes what was touched, so that no
-- program can forget to; whoever commits writes the lines of what is noted.
CREATE TABLE find_entry (
    id BIGINT PRIMARY KEY,
    kind TEXT NOT NULL,
    thing TEXT NOT NULL,
    text TEXT NOT NULL,
    UNIQUE (kind, thing)
);
CREATE TABLE find_word (
    word TEXT PRIMARY KEY,
    letters BIGINT NOT NULL
);
CREATE INDEX find_word_by_letters ON find_word (letters, word);
CREATE TABLE find_dirty (
    kind TEXT NOT NULL,
    thing TEXT NOT NULL
);

-- All that is there already.
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'customer', CAST(number AS TEXT) FROM customer;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'sheet', CAST(id AS TEXT) FROM sheet;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'job', CAST(number AS TEXT) FROM job;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'club', CAST(code AS TEXT) FROM club;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'model', CAST(code AS TEXT) FROM model;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'part', CAST(code AS TEXT) FROM part;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'lot', CAST(lot AS TEXT) FROM part WHERE lot <> '';
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'order', CAST(number AS TEXT) FROM part_order;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'batch', CAST(number AS TEXT) FROM batch;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'lot', CAST(lot AS TEXT) FROM batch WHERE lot <> '';
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'event', CAST(id AS TEXT) FROM event;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'taken_back', CAST(reading AS TEXT) FROM reading_taken_back;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'insisted', CAST(reading AS TEXT) FROM reading_insisted;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'mark', CAST(id AS TEXT) FROM club_mark;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'cleared', CAST(mark AS TEXT) FROM club_mark_cleared;
INSERT INTO find_dirty (kind, thing) SELECT DISTINCT 'club_event', CAST(id AS TEXT) FROM club_event;
