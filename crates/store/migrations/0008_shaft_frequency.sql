-- The frequency of a raw shaft as received, on the shop's own clamp with the shop's own weight at its tip.
ALTER TABLE part ADD COLUMN frequency_hz DOUBLE PRECISION;
