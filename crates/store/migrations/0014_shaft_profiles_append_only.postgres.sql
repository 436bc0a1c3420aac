CREATE TRIGGER shaft_profile_no_update BEFORE UPDATE ON shaft_profile
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER shaft_profile_no_delete BEFORE DELETE ON shaft_profile
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER shaft_profile_no_truncate BEFORE TRUNCATE ON shaft_profile
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
