CREATE TRIGGER club_event_no_update BEFORE UPDATE ON club_event
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_event_no_delete BEFORE DELETE ON club_event
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER club_event_no_truncate BEFORE TRUNCATE ON club_event
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
