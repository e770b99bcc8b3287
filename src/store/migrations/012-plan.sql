-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 12: how a day is planned. What a shot asks of the plan, how far the crew's own rules let
-- the plan go on a job, and the prices that the crew has changed; a price without a row is the
-- kit's.

ALTER TABLE shot ADD COLUMN must_fly INTEGER NOT NULL DEFAULT 0 CHECK (must_fly IN (0, 1));
ALTER TABLE shot ADD COLUMN sun_leaves INTEGER NOT NULL DEFAULT -1 CHECK (sun_leaves >= -1);
ALTER TABLE shot ADD COLUMN auto_iso INTEGER NOT NULL DEFAULT 0 CHECK (auto_iso IN (0, 1));

ALTER TABLE job ADD COLUMN any_order INTEGER NOT NULL DEFAULT 0 CHECK (any_order IN (0, 1));
ALTER TABLE job ADD COLUMN legs_per_battery INTEGER NOT NULL DEFAULT 1
  CHECK (legs_per_battery BETWEEN 1 AND 5);
ALTER TABLE job ADD COLUMN filters_at_once INTEGER NOT NULL DEFAULT 1
  CHECK (filters_at_once BETWEEN 1 AND 2);
ALTER TABLE job ADD COLUMN stay_margin REAL CHECK (stay_margin >= 0);

CREATE TABLE price (
  name TEXT PRIMARY KEY CHECK (name <> ''),
  value REAL NOT NULL CHECK (value >= 0)
) STRICT, WITHOUT ROWID;
