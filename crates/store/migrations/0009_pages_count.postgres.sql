
CREATE FUNCTION count_stock_change() RETURNS TRIGGER LANGUAGE plpgsql AS $$
BEGIN
    UPDATE stock_change SET number = number + 1;
    RETURN NULL;
END
$$;

CREATE TRIGGER part_counts_insert AFTER INSERT ON part
    FOR EACH STATEMENT EXECUTE FUNCTION count_stock_change();

CREATE TRIGGER part_counts_update AFTER UPDATE ON part
    FOR EACH STATEMENT EXECUTE FUNCTION count_stock_change();

CREATE TRIGGER part_counts_delete AFTER DELETE ON part
    FOR EACH STATEMENT EXECUTE FUNCTION count_stock_change();
