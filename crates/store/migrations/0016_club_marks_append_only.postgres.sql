CREATE TRIGGER club_mark_no_update BEFORE UPDATE ON club_mark
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_mark_no_delete BEFORE DELETE ON club_mark
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_mark_no_truncate BEFORE TRUNCATE ON club_mark
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
CREATE TRIGGER club_mark_cleared_no_update BEFORE UPDATE ON club_mark_cleared
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_mark_cleared_no_delete BEFORE DELETE ON club_mark_cleared
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_mark_cleared_no_truncate BEFORE TRUNCATE ON club_mark_cleared
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
