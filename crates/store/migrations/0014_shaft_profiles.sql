-- Readings of one shaft at several clamp lengths, with the stiffness line that they told: appended to, never changed. The
-- latest of a shaft is the one that counts; one without readings takes those before it back.
CREATE TABLE shaft_profile (
    seq BIGINT PRIMARY KEY,
    part TEXT NOT NULL REFERENCES part (id),
    request_key TEXT UNIQUE,
    body TEXT NOT NULL
);
CREATE INDEX shaft_profile_by_part ON shaft_profile (part, seq);
