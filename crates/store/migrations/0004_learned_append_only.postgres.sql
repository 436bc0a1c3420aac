-- What was learned and where clubs came out is appended to, never changed.

CREATE TRIGGER learned_no_update BEFORE UPDATE ON learned
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER learned_no_delete BEFORE DELETE ON learned
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER learned_no_truncate BEFORE TRUNCATE ON learned
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER finished_club_no_update BEFORE UPDATE ON finished_club
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER finished_club_no_delete BEFORE DELETE ON finished_club
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER finished_club_no_truncate BEFORE TRUNCATE ON finished_club
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
