-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 5: what goes in the van. What was counted out and in, when somebody is at the charger,
-- how many spares the crew takes, and the rules of carriers as the crew has read them.

-- An item counted at a stage: out of the store, in on the ground, in at base. The last of a stage
-- is what holds.
CREATE TABLE pack_event (
  sequence INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  item_id TEXT NOT NULL REFERENCES item (id),
  at INTEGER NOT NULL,
  stage TEXT NOT NULL CHECK (stage IN ('out', 'ground', 'base')),
  mark TEXT NOT NULL CHECK (mark IN ('open', 'done', 'not-taken', 'missing')),
  case_label TEXT NOT NULL,
  condition TEXT NOT NULL,
  entered_by TEXT NOT NULL,
  CHECK (mark <> 'not-taken' OR (stage = 'out' AND condition <> '')),
  CHECK (mark <> 'missing' OR stage <> 'out')
) STRICT;

CREATE INDEX pack_event_by_job ON pack_event (job_id, sequence);
CREATE INDEX pack_event_by_item ON pack_event (item_id, sequence);

CREATE TRIGGER pack_event_keep_update BEFORE UPDATE ON pack_event
BEGIN SELECT RAISE (ABORT, 'what was counted is only added to'); END;
CREATE TRIGGER pack_event_keep_delete BEFORE DELETE ON pack_event
BEGIN SELECT RAISE (ABORT, 'what was counted is only added to'); END;

-- When somebody is at the charger before a job.
CREATE TABLE charge_watch (
  job_id TEXT NOT NULL REFERENCES job (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  date TEXT NOT NULL CHECK (date <> ''),
  from_clock INTEGER NOT NULL CHECK (from_clock >= 0),
  to_clock INTEGER NOT NULL CHECK (to_clock > from_clock),
  member_id TEXT NOT NULL REFERENCES crew_member (id),
  PRIMARY KEY (job_id, position)
) STRICT, WITHOUT ROWID;

-- The crew's rule of spares, where it is another than one of each.
CREATE TABLE spare_rule (
  kind TEXT PRIMARY KEY CHECK (kind IN ('battery', 'propellers', 'card')),
  count INTEGER NOT NULL CHECK (count BETWEEN 0 AND 99)
) STRICT, WITHOUT ROWID;

-- A carrier's rule for batteries in the cabin: whose words they are, and when they were read.
-- spares -1: the carrier states no limit.
CREATE TABLE carrier (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  name TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (name <> ''),
  source TEXT NOT NULL CHECK (source <> ''),
  read_on TEXT NOT NULL CHECK (read_on <> ''),
  spares_in_all INTEGER NOT NULL CHECK (spares_in_all >= -1),
  cabin_kg REAL CHECK (cabin_kg > 0),
  charge_percent REAL CHECK (charge_percent BETWEEN 1 AND 100),
  note TEXT NOT NULL,
  example INTEGER NOT NULL CHECK (example IN (0, 1))
) STRICT;

CREATE TABLE carrier_band (
  carrier_id TEXT NOT NULL REFERENCES carrier (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  up_to_wh REAL CHECK (up_to_wh > 0),
  spares_each INTEGER NOT NULL CHECK (spares_each >= -1),
  approval INTEGER NOT NULL CHECK (approval IN (0, 1)),
  PRIMARY KEY (carrier_id, position)
) STRICT, WITHOUT ROWID;
