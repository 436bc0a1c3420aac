-- The swing of a club that hangs from a pivot, and its inertia; the pivot from the outside of the cap.
ALTER TABLE reading ADD COLUMN time_s DOUBLE PRECISION CHECK ((unit = 's') = (time_s IS NOT NULL));
ALTER TABLE reading ADD COLUMN inertia_kg_m2 DOUBLE PRECISION CHECK ((unit = 'kg_cm2') = (inertia_kg_m2 IS NOT NULL));
ALTER TABLE reading ADD COLUMN pivot_m DOUBLE PRECISION;
