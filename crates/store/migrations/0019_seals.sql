-- The chain of seals of each job's record. `sha256` of an entry holds that of the entry before it; `late` says that the row was
-- there before the chain was kept. A column that is added to a sealed table has no value in the rows that are there: their
-- digests leave it out.
CREATE TABLE record_seal (
    job TEXT NOT NULL REFERENCES job (id),
    entry BIGINT NOT NULL CHECK (entry > 0),
    sealed_table TEXT NOT NULL,
    sealed_row TEXT NOT NULL,
    row_sha256 TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    late BIGINT NOT NULL CHECK (late IN (0, 1)),
    PRIMARY KEY (job, entry)
);

-- Since when the chain is kept; empty until the rows of before are sealed.
CREATE TABLE record_seal_begun (
    id BIGINT PRIMARY KEY CHECK (id = 1),
    begun_at TEXT NOT NULL
);
