-- What happened to a scale, a study and its readings are appended to, never changed.

CREATE TRIGGER scale_event_no_update BEFORE UPDATE ON scale_event
BEGIN
    SELECT RAISE(ABORT, 'scale_event is append-only');
END;

CREATE TRIGGER scale_event_no_delete BEFORE DELETE ON scale_event
BEGIN
    SELECT RAISE(ABORT, 'scale_event is append-only');
END;

CREATE TRIGGER gauge_study_no_update BEFORE UPDATE ON gauge_study
BEGIN
    SELECT RAISE(ABORT, 'gauge_study is append-only');
END;

CREATE TRIGGER gauge_study_no_delete BEFORE DELETE ON gauge_study
BEGIN
    SELECT RAISE(ABORT, 'gauge_study is append-only');
END;

CREATE TRIGGER gauge_study_reading_no_update BEFORE UPDATE ON gauge_study_reading
BEGIN
    SELECT RAISE(ABORT, 'gauge_study_reading is append-only');
END;

CREATE TRIGGER gauge_study_reading_no_delete BEFORE DELETE ON gauge_study_reading
BEGIN
    SELECT RAISE(ABORT, 'gauge_study_reading is append-only');
END;
