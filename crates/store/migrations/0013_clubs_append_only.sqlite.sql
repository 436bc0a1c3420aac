CREATE TRIGGER club_event_no_update BEFORE UPDATE ON club_event
BEGIN
    SELECT RAISE(ABORT, 'club_event is append-only');
END;
CREATE TRIGGER club_event_no_delete BEFORE DELETE ON club_event
BEGIN
    SELECT RAISE(ABORT, 'club_event is append-only');
END;
