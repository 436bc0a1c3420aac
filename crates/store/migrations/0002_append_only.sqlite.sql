-- Readings and the log are appended to, never changed: the database itself refuses anything else.

CREATE TRIGGER reading_no_update BEFORE UPDATE ON reading
BEGIN
    SELECT RAISE(ABORT, 'reading is append-only');
END;

CREATE TRIGGER reading_no_delete BEFORE DELETE ON reading
BEGIN
    SELECT RAISE(ABORT, 'reading is append-only');
END;

CREATE TRIGGER reading_taken_back_no_update BEFORE UPDATE ON reading_taken_back
BEGIN
    SELECT RAISE(ABORT, 'reading_taken_back is append-only');
END;

CREATE TRIGGER reading_taken_back_no_delete BEFORE DELETE ON reading_taken_back
BEGIN
    SELECT RAISE(ABORT, 'reading_taken_back is append-only');
END;

CREATE TRIGGER reading_insisted_no_update BEFORE UPDATE ON reading_insisted
BEGIN
    SELECT RAISE(ABORT, 'reading_insisted is append-only');
END;

CREATE TRIGGER reading_insisted_no_delete BEFORE DELETE ON reading_insisted
BEGIN
    SELECT RAISE(ABORT, 'reading_insisted is append-only');
END;

CREATE TRIGGER event_no_update BEFORE UPDATE ON event
BEGIN
    SELECT RAISE(ABORT, 'event is append-only');
END;

CREATE TRIGGER event_no_delete BEFORE DELETE ON event
BEGIN
    SELECT RAISE(ABORT, 'event is append-only');
END;
