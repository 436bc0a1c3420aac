CREATE FUNCTION note_find() RETURNS TRIGGER LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP <> 'INSERT' THEN
        INSERT INTO find_dirty (kind, thing) VALUES (TG_ARGV[0], to_jsonb(OLD) ->> TG_ARGV[1]);
    END IF;
    IF TG_OP <> 'DELETE' THEN
        INSERT INTO find_dirty (kind, thing) VALUES (TG_ARGV[0], to_jsonb(NEW) ->> TG_ARGV[1]);
    END IF;
    RETURN NULL;
END
$$;
CREATE TRIGGER find_customer_customer_insert AFTER INSERT ON customer
    FOR EACH ROW EXECUTE FUNCTION note_find('customer', 'number');
CREATE TRIGGER find_customer_customer_update AFTER UPDATE ON customer
    FOR EACH ROW EXECUTE FUNCTION note_find('customer', 'number');
CREATE TRIGGER find_customer_customer_delete AFTER DELETE ON customer
    FOR EACH ROW EXECUTE FUNCTION note_find('customer', 'number');
CREATE TRIGGER find_sheet_sheet_insert AFTER INSERT ON sheet
    FOR EACH ROW EXECUTE FUNCTION note_find('sheet', 'id');
CREATE TRIGGER find_sheet_sheet_update AFTER UPDATE ON sheet
    FOR EACH ROW EXECUTE FUNCTION note_find('sheet', 'id');
CREATE TRIGGER find_sheet_sheet_delete AFTER DELETE ON sheet
    FOR EACH ROW EXECUTE FUNCTION note_find('sheet', 'id');
CREATE TRIGGER find_job_job_insert AFTER INSERT ON job
    FOR EACH ROW EXECUTE FUNCTION note_find('job', 'number');
CREATE TRIGGER find_job_job_update AFTER UPDATE OF player, sheet_body ON job
    FOR EACH ROW EXECUTE FUNCTION note_find('job', 'number');
CREATE TRIGGER find_job_job_delete AFTER DELETE ON job
    FOR EACH ROW EXECUTE FUNCTION note_find('job', 'number');
CREATE TRIGGER find_club_club_insert AFTER INSERT ON club
    FOR EACH ROW EXECUTE FUNCTION note_find('club', 'code');
CREATE TRIGGER find_club_club_update AFTER UPDATE ON club
    FOR EACH ROW EXECUTE FUNCTION note_find('club', 'code');
CREATE TRIGGER find_club_club_delete AFTER DELETE ON club
    FOR EACH ROW EXECUTE FUNCTION note_find('club', 'code');
CREATE TRIGGER find_model_model_insert AFTER INSERT ON model
    FOR EACH ROW EXECUTE FUNCTION note_find('model', 'code');
CREATE TRIGGER find_model_model_update AFTER UPDATE ON model
    FOR EACH ROW EXECUTE FUNCTION note_find('model', 'code');
CREATE TRIGGER find_model_model_delete AFTER DELETE ON model
    FOR EACH ROW EXECUTE FUNCTION note_find('model', 'code');
CREATE TRIGGER find_part_part_insert AFTER INSERT ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('part', 'code');
CREATE TRIGGER find_part_part_update AFTER UPDATE OF search ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('part', 'code');
CREATE TRIGGER find_part_part_delete AFTER DELETE ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('part', 'code');
CREATE TRIGGER find_part_lot_insert AFTER INSERT ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('lot', 'lot');
CREATE TRIGGER find_part_lot_update AFTER UPDATE OF search ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('lot', 'lot');
CREATE TRIGGER find_part_lot_delete AFTER DELETE ON part
    FOR EACH ROW EXECUTE FUNCTION note_find('lot', 'lot');
CREATE TRIGGER find_part_order_order_insert AFTER INSERT ON part_order
    FOR EACH ROW EXECUTE FUNCTION note_find('order', 'number');
CREATE TRIGGER find_batch_batch_insert AFTER INSERT ON batch
    FOR EACH ROW EXECUTE FUNCTION note_find('batch', 'number');
CREATE TRIGGER find_batch_lot_insert AFTER INSERT ON batch
    FOR EACH ROW EXECUTE FUNCTION note_find('lot', 'lot');
CREATE TRIGGER find_event_event_insert AFTER INSERT ON event
    FOR EACH ROW EXECUTE FUNCTION note_find('event', 'id');
CREATE TRIGGER find_reading_taken_back_taken_back_insert AFTER INSERT ON reading_taken_back
    FOR EACH ROW EXECUTE FUNCTION note_find('taken_back', 'reading');
CREATE TRIGGER find_reading_insisted_insisted_insert AFTER INSERT ON reading_insisted
    FOR EACH ROW EXECUTE FUNCTION note_find('insisted', 'reading');
CREATE TRIGGER find_club_mark_mark_insert AFTER INSERT ON club_mark
    FOR EACH ROW EXECUTE FUNCTION note_find('mark', 'id');
CREATE TRIGGER find_club_mark_cleared_cleared_insert AFTER INSERT ON club_mark_cleared
    FOR EACH ROW EXECUTE FUNCTION note_find('cleared', 'mark');
CREATE TRIGGER find_club_event_club_event_insert AFTER INSERT ON club_event
    FOR EACH ROW EXECUTE FUNCTION note_find('club_event', 'id');
