CREATE TRIGGER club_mark_no_update BEFORE UPDATE ON club_mark
BEGIN
    SELECT RAISE(ABORT, 'club_mark is append-only');
END;
CREATE TRIGGER club_mark_no_delete BEFORE DELETE ON club_mark
BEGIN
    SELECT RAISE(ABORT, 'club_mark is append-only');
END;
CREATE TRIGGER club_mark_cleared_no_update BEFORE UPDATE ON club_mark_cleared
BEGIN
    SELECT RAISE(ABORT, 'club_mark_cleared is append-only');
END;
CREATE TRIGGER club_mark_cleared_no_delete BEFORE DELETE ON club_mark_cleared
BEGIN
    SELECT RAISE(ABORT, 'club_mark_cleared is append-only');
END;
