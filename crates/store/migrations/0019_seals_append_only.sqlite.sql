-- Seals are appended to, never changed.
CREATE TRIGGER record_seal_no_update BEFORE UPDATE ON record_seal
BEGIN
    SELECT RAISE(ABORT, 'record_seal is append-only');
END;
CREATE TRIGGER record_seal_no_delete BEFORE DELETE ON record_seal
BEGIN
    SELECT RAISE(ABORT, 'record_seal is append-only');
END;
CREATE TRIGGER record_seal_begun_no_update BEFORE UPDATE ON record_seal_begun
BEGIN
    SELECT RAISE(ABORT, 'record_seal_begun is append-only');
END;
CREATE TRIGGER record_seal_begun_no_delete BEFORE DELETE ON record_seal_begun
BEGIN
    SELECT RAISE(ABORT, 'record_seal_begun is append-only');
END;
