
CREATE TRIGGER part_counts_insert AFTER INSERT ON part
BEGIN
    UPDATE stock_change SET number = number + 1;
END;

CREATE TRIGGER part_counts_update AFTER UPDATE ON part
BEGIN
    UPDATE stock_change SET number = number + 1;
END;

CREATE TRIGGER part_counts_delete AFTER DELETE ON part
BEGIN
    UPDATE stock_change SET number = number + 1;
END;
