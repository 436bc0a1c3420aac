-- Customers, and whose a sheet, a job and a part are. The row of a customer who was deleted stays with its number alone, so
-- that the number is never given to somebody else and what was built says that it had an owner.
CREATE TABLE customer (
    number BIGINT PRIMARY KEY,
    name TEXT NOT NULL,
    name_key TEXT NOT NULL,
    search TEXT NOT NULL,
    body TEXT NOT NULL,
    deleted_at TEXT,
    version BIGINT NOT NULL,
    saved_at TEXT NOT NULL
);
CREATE INDEX customer_by_name ON customer (name_key);

-- Sheets of before belong to nobody: their names are offered on the page of customers, since two people may have one name.
ALTER TABLE sheet ADD COLUMN customer BIGINT REFERENCES customer (number);
CREATE INDEX sheet_by_customer ON sheet (customer);
ALTER TABLE job ADD COLUMN customer BIGINT REFERENCES customer (number);
CREATE INDEX job_by_customer ON job (customer);

-- None: the part is the shop's own.
ALTER TABLE part ADD COLUMN owner BIGINT REFERENCES customer (number);
CREATE INDEX part_by_owner ON part (owner);
