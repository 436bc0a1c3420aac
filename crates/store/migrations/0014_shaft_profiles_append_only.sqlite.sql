CREATE TRIGGER shaft_profile_no_update BEFORE UPDATE ON shaft_profile
BEGIN
    SELECT RAISE(ABORT, 'shaft_profile is append-only');
END;
CREATE TRIGGER shaft_profile_no_delete BEFORE DELETE ON shaft_profile
BEGIN
    SELECT RAISE(ABORT, 'shaft_profile is append-only');
END;
