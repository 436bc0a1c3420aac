-- Keys of tablets and programs: of a secret only its hash is kept.
CREATE TABLE access_key (
    number BIGINT PRIMARY KEY,
    secret_hash TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    holder TEXT NOT NULL,
    role TEXT NOT NULL,
    given_at TEXT NOT NULL,
    given_by TEXT NOT NULL,
    ends_at TEXT,
    used_at TEXT,
    used_from TEXT,
    withdrawn_at TEXT,
    withdrawn_by TEXT
);

-- Six digits that are shown to let a tablet in; once used they have the number of the key that was given.
CREATE TABLE door_code (
    number BIGINT PRIMARY KEY,
    code_hash TEXT NOT NULL,
    name TEXT NOT NULL,
    role TEXT NOT NULL,
    shown_by TEXT NOT NULL,
    ends_at TEXT NOT NULL,
    given_key BIGINT REFERENCES access_key (number)
);
