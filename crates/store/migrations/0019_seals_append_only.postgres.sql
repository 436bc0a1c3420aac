-- Seals are appended to, never changed.
CREATE TRIGGER record_seal_no_update BEFORE UPDATE ON record_seal
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER record_seal_no_delete BEFORE DELETE ON record_seal
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER record_seal_no_truncate BEFORE TRUNCATE ON record_seal
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
CREATE TRIGGER record_seal_begun_no_update BEFORE UPDATE ON record_seal_begun
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER record_seal_begun_no_delete BEFORE DELETE ON record_seal_begun
    FOR EACH ROW EXECUTE FUNCTION append_only();
CREATE TRIGGER record_seal_begun_no_truncate BEFORE TRUNCATE ON record_seal_begun
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
