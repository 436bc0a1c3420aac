-- Readings and the log are appended to, never changed: the database itself refuses anything else.

CREATE FUNCTION append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION '% is append-only', TG_TABLE_NAME;
END;
$$;

CREATE TRIGGER reading_no_update BEFORE UPDATE ON reading
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_no_delete BEFORE DELETE ON reading
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_no_truncate BEFORE TRUNCATE ON reading
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_taken_back_no_update BEFORE UPDATE ON reading_taken_back
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_taken_back_no_delete BEFORE DELETE ON reading_taken_back
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_taken_back_no_truncate BEFORE TRUNCATE ON reading_taken_back
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_insisted_no_update BEFORE UPDATE ON reading_insisted
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_insisted_no_delete BEFORE DELETE ON reading_insisted
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER reading_insisted_no_truncate BEFORE TRUNCATE ON reading_insisted
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER event_no_update BEFORE UPDATE ON event
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER event_no_delete BEFORE DELETE ON event
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER event_no_truncate BEFORE TRUNCATE ON event
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
