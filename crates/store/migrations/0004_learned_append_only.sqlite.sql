-- What was learned and where clubs came out is appended to, never changed.

CREATE TRIGGER learned_no_update BEFORE UPDATE ON learned
BEGIN
    SELECT RAISE(ABORT, 'learned is append-only');
END;

CREATE TRIGGER learned_no_delete BEFORE DELETE ON learned
BEGIN
    SELECT RAISE(ABORT, 'learned is append-only');
END;

CREATE TRIGGER finished_club_no_update BEFORE UPDATE ON finished_club
BEGIN
    SELECT RAISE(ABORT, 'finished_club is append-only');
END;

CREATE TRIGGER finished_club_no_delete BEFORE DELETE ON finished_club
BEGIN
    SELECT RAISE(ABORT, 'finished_club is append-only');
END;
