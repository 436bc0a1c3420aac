CREATE TRIGGER find_customer_customer_insert AFTER INSERT ON customer
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('customer', NEW.number);
END;
CREATE TRIGGER find_customer_customer_update AFTER UPDATE ON customer
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('customer', OLD.number);
    INSERT INTO find_dirty (kind, thing) VALUES ('customer', NEW.number);
END;
CREATE TRIGGER find_customer_customer_delete AFTER DELETE ON customer
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('customer', OLD.number);
END;
CREATE TRIGGER find_sheet_sheet_insert AFTER INSERT ON sheet
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('sheet', NEW.id);
END;
CREATE TRIGGER find_sheet_sheet_update AFTER UPDATE ON sheet
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('sheet', OLD.id);
    INSERT INTO find_dirty (kind, thing) VALUES ('sheet', NEW.id);
END;
CREATE TRIGGER find_sheet_sheet_delete AFTER DELETE ON sheet
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('sheet', OLD.id);
END;
CREATE TRIGGER find_job_job_insert AFTER INSERT ON job
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('job', NEW.number);
END;
CREATE TRIGGER find_job_job_update AFTER UPDATE OF player, sheet_body ON job
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('job', OLD.number);
    INSERT INTO find_dirty (kind, thing) VALUES ('job', NEW.number);
END;
CREATE TRIGGER find_job_job_delete AFTER DELETE ON job
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('job', OLD.number);
END;
CREATE TRIGGER find_club_club_insert AFTER INSERT ON club
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('club', NEW.code);
END;
CREATE TRIGGER find_club_club_update AFTER UPDATE ON club
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('club', OLD.code);
    INSERT INTO find_dirty (kind, thing) VALUES ('club', NEW.code);
END;
CREATE TRIGGER find_club_club_delete AFTER DELETE ON club
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('club', OLD.code);
END;
CREATE TRIGGER find_model_model_insert AFTER INSERT ON model
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('model', NEW.code);
END;
CREATE TRIGGER find_model_model_update AFTER UPDATE ON model
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('model', OLD.code);
    INSERT INTO find_dirty (kind, thing) VALUES ('model', NEW.code);
END;
CREATE TRIGGER find_model_model_delete AFTER DELETE ON model
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('model', OLD.code);
END;
CREATE TRIGGER find_part_part_insert AFTER INSERT ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('part', NEW.code);
END;
CREATE TRIGGER find_part_part_update AFTER UPDATE OF search ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('part', OLD.code);
    INSERT INTO find_dirty (kind, thing) VALUES ('part', NEW.code);
END;
CREATE TRIGGER find_part_part_delete AFTER DELETE ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('part', OLD.code);
END;
CREATE TRIGGER find_part_lot_insert AFTER INSERT ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('lot', NEW.lot);
END;
CREATE TRIGGER find_part_lot_update AFTER UPDATE OF search ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('lot', OLD.lot);
    INSERT INTO find_dirty (kind, thing) VALUES ('lot', NEW.lot);
END;
CREATE TRIGGER find_part_lot_delete AFTER DELETE ON part
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('lot', OLD.lot);
END;
CREATE TRIGGER find_part_order_order_insert AFTER INSERT ON part_order
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('order', NEW.number);
END;
CREATE TRIGGER find_batch_batch_insert AFTER INSERT ON batch
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('batch', NEW.number);
END;
CREATE TRIGGER find_batch_lot_insert AFTER INSERT ON batch
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('lot', NEW.lot);
END;
CREATE TRIGGER find_event_event_insert AFTER INSERT ON event
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('event', NEW.id);
END;
CREATE TRIGGER find_reading_taken_back_taken_back_insert AFTER INSERT ON reading_taken_back
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('taken_back', NEW.reading);
END;
CREATE TRIGGER find_reading_insisted_insisted_insert AFTER INSERT ON reading_insisted
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('insisted', NEW.reading);
END;
CREATE TRIGGER find_club_mark_mark_insert AFTER INSERT ON club_mark
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('mark', NEW.id);
END;
CREATE TRIGGER find_club_mark_cleared_cleared_insert AFTER INSERT ON club_mark_cleared
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('cleared', NEW.mark);
END;
CREATE TRIGGER find_club_event_club_event_insert AFTER INSERT ON club_event
BEGIN
    INSERT INTO find_dirty (kind, thing) VALUES ('club_event', NEW.id);
END;
