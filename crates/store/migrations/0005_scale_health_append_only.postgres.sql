-- What happened to a scale, a study and its readings are appended to, never changed.

CREATE TRIGGER scale_event_no_update BEFORE UPDATE ON scale_event
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER scale_event_no_delete BEFORE DELETE ON scale_event
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER scale_event_no_truncate BEFORE TRUNCATE ON scale_event
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_no_update BEFORE UPDATE ON gauge_study
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_no_delete BEFORE DELETE ON gauge_study
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_no_truncate BEFORE TRUNCATE ON gauge_study
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_reading_no_update BEFORE UPDATE ON gauge_study_reading
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_reading_no_delete BEFORE DELETE ON gauge_study_reading
    FOR EACH ROW EXECUTE FUNCTION append_only();

CREATE TRIGGER gauge_study_reading_no_truncate BEFORE TRUNCATE ON gauge_study_reading
    FOR EACH STATEMENT EXECUTE FUNCTION append_only();
