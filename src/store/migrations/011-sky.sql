-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 11: what the sky was like when a flight took off, and how the limits stood then, kept as a
-- copy with the flight: sheets change, and what was measured later was not known. And how far the
-- crew lets thin air shorten what it plans with: one row.

ALTER TABLE flight ADD COLUMN conditions TEXT NOT NULL DEFAULT '';
ALTER TABLE flight ADD COLUMN limits TEXT NOT NULL DEFAULT '';

CREATE TABLE air_rules (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  thin_air REAL NOT NULL CHECK (thin_air BETWEEN 0 AND 3)
) STRICT;
