-- What the columns of a supplier's list are, remembered under the shop's own name for it.
CREATE TABLE list_layout (
    name_key TEXT PRIMARY KEY,
    name TEXT NOT NULL,
    body TEXT NOT NULL,
    saved_at TEXT NOT NULL
);
