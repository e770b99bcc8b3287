-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 4: the gear in full. Two more kinds of item, what goes with what, the texts that are
-- searched, what is measured at batteries and what happened to them. The table of items is made
-- anew, because SQLite can't widen a CHECK; a whole number of its own ties an item to the search.
--
-- Times, texts and absent facts are as in version 1.

CREATE TABLE item_new (
  number INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK (length (id) = 36),
  label TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (label <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('aircraft', 'camera', 'filter', 'battery', 'charger', 'card',
    'propellers', 'controller', 'tablet', 'cable', 'reader', 'radio', 'safety', 'document', 'case',
    'other')),
  title TEXT NOT NULL,
  case_label TEXT NOT NULL,
  serial TEXT NOT NULL,
  mass_kg REAL CHECK (mass_kg >= 0),
  due_at REAL CHECK (due_at >= 0),
  used REAL CHECK (used >= 0),
  used_as_of INTEGER NOT NULL CHECK (used_as_of >= 0),
  valid_until TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;

INSERT INTO item_new (id, label, kind, title, case_label, serial, mass_kg, due_at, used, used_as_of,
                      valid_until, note)
  SELECT id, label, kind, title, case_label, '', mass_kg, due_at, used, 0, valid_until, note
  FROM item ORDER BY kind, label;

-- What an item can't go without. Until now each thing named the one it belonged to.
CREATE TABLE goes_with (
  item_id TEXT NOT NULL REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
  position INTEGER NOT NULL CHECK (position >= 0),
  with_id TEXT NOT NULL REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
  PRIMARY KEY (item_id, position),
  UNIQUE (item_id, with_id),
  CHECK (item_id <> with_id)
) STRICT, WITHOUT ROWID;

INSERT INTO goes_with (item_id, position, with_id)
  SELECT belongs_to, row_number () OVER (PARTITION BY belongs_to ORDER BY kind, label) - 1, id
  FROM item WHERE belongs_to IS NOT NULL;
CREATE INDEX goes_with_by_with ON goes_with (with_id);

DROP TABLE item;
ALTER TABLE item_new RENAME TO item;

ALTER TABLE camera ADD COLUMN mount TEXT NOT NULL DEFAULT '';
ALTER TABLE filter ADD COLUMN mount TEXT NOT NULL DEFAULT '';
ALTER TABLE filter ADD COLUMN polariser INTEGER NOT NULL DEFAULT 0 CHECK (polariser IN (0, 1));
ALTER TABLE filter ADD COLUMN scratches TEXT NOT NULL DEFAULT '';
ALTER TABLE battery ADD COLUMN battery_use TEXT NOT NULL DEFAULT 'aircraft'
  CHECK (battery_use IN ('aircraft', 'controller', 'camera', 'van'));
ALTER TABLE battery ADD COLUMN new_milliohms REAL CHECK (new_milliohms > 0);
ALTER TABLE battery ADD COLUMN storage_percent REAL CHECK (storage_percent BETWEEN 0 AND 100);

-- What the battery said at take-off and landing, for the minutes it is good for.
ALTER TABLE flight ADD COLUMN percent_off REAL CHECK (percent_off BETWEEN 0 AND 100);
ALTER TABLE flight ADD COLUMN percent_down REAL CHECK (percent_down BETWEEN 0 AND 100);
ALTER TABLE flight ADD COLUMN battery_c REAL;
CREATE INDEX flight_by_battery ON flight (battery_id, "off");

CREATE TABLE document (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  holder TEXT NOT NULL,
  reference TEXT NOT NULL,
  valid_from TEXT NOT NULL,
  conditions TEXT NOT NULL
) STRICT, WITHOUT ROWID;

INSERT INTO document SELECT id, '', '', '', '' FROM item WHERE kind = 'document';

-- A small picture of an item; replaced or taken away as the crew likes.
CREATE TABLE item_photo (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  jpeg BLOB NOT NULL CHECK (length (jpeg) BETWEEN 1 AND 262144)
) STRICT;

-- On which aircraft a propeller set is (on_id NULL: taken off), so that hours follow the flights.
CREATE TABLE fitting (
  sequence INTEGER PRIMARY KEY,
  item_id TEXT NOT NULL REFERENCES item (id),
  on_id TEXT REFERENCES item (id),
  at INTEGER NOT NULL,
  entered_by TEXT NOT NULL
) STRICT;
CREATE INDEX fitting_by_item ON fitting (item_id, at);

CREATE TABLE resistance (
  sequence INTEGER PRIMARY KEY,
  battery_id TEXT NOT NULL REFERENCES battery (item_id),
  at INTEGER NOT NULL,
  temperature_c REAL,
  entered_by TEXT NOT NULL
) STRICT;
CREATE INDEX resistance_by_battery ON resistance (battery_id, at);

CREATE TABLE resistance_cell (
  resistance INTEGER NOT NULL REFERENCES resistance (sequence),
  cell INTEGER NOT NULL CHECK (cell > 0),
  milliohms REAL NOT NULL CHECK (milliohms > 0),
  PRIMARY KEY (resistance, cell)
) STRICT, WITHOUT ROWID;

-- The state of the day of a battery: how full, how warm, until when it charges.
CREATE TABLE battery_day (
  sequence INTEGER PRIMARY KEY,
  battery_id TEXT NOT NULL REFERENCES battery (item_id),
  at INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('full', 'part-used', 'hot', 'cold', 'charging', 'storage')),
  until INTEGER,
  percent REAL CHECK (percent BETWEEN 0 AND 100),
  temperature_c REAL,
  entered_by TEXT NOT NULL
) STRICT;
CREATE INDEX battery_day_by_battery ON battery_day (battery_id, sequence);

CREATE TABLE incident (
  sequence INTEGER PRIMARY KEY,
  battery_id TEXT NOT NULL REFERENCES battery (item_id),
  at INTEGER NOT NULL,
  sign TEXT NOT NULL CHECK (sign IN ('swelling', 'drop', 'wet')),
  decision TEXT NOT NULL CHECK (decision IN ('quarantine', 'retire', 'keep')),
  found TEXT NOT NULL CHECK (found <> ''),
  entered_by TEXT NOT NULL CHECK (entered_by <> ''),
  CHECK (NOT (sign = 'swelling' AND decision = 'keep'))
) STRICT;
CREATE INDEX incident_by_battery ON incident (battery_id, sequence);

CREATE TRIGGER fitting_keep_update BEFORE UPDATE ON fitting
BEGIN SELECT RAISE (ABORT, 'fittings are only added to'); END;
CREATE TRIGGER fitting_keep_delete BEFORE DELETE ON fitting
BEGIN SELECT RAISE (ABORT, 'fittings are only added to'); END;
CREATE TRIGGER resistance_keep_update BEFORE UPDATE ON resistance
BEGIN SELECT RAISE (ABORT, 'measured resistances are only added to'); END;
CREATE TRIGGER resistance_keep_delete BEFORE DELETE ON resistance
BEGIN SELECT RAISE (ABORT, 'measured resistances are only added to'); END;
CREATE TRIGGER resistance_cell_keep_update BEFORE UPDATE ON resistance_cell
BEGIN SELECT RAISE (ABORT, 'measured resistances are only added to'); END;
CREATE TRIGGER resistance_cell_keep_delete BEFORE DELETE ON resistance_cell
BEGIN SELECT RAISE (ABORT, 'measured resistances are only added to'); END;
CREATE TRIGGER battery_day_keep_update BEFORE UPDATE ON battery_day
BEGIN SELECT RAISE (ABORT, 'states of the day are only added to'); END;
CREATE TRIGGER battery_day_keep_delete BEFORE DELETE ON battery_day
BEGIN SELECT RAISE (ABORT, 'states of the day are only added to'); END;
CREATE TRIGGER incident_keep_update BEFORE UPDATE ON incident
BEGIN SELECT RAISE (ABORT, 'incidents are only added to'); END;
CREATE TRIGGER incident_keep_delete BEFORE DELETE ON incident
BEGIN SELECT RAISE (ABORT, 'incidents are only added to'); END;

-- The texts that are searched. Kept in step by whoever saves an item and not by triggers: a store
-- that does not trust its own schema lets no trigger touch a virtual table (before SQLite 3.42).
CREATE VIRTUAL TABLE item_search USING fts5 (label, title, rest,
  tokenize = 'unicode61 remove_diacritics 2', prefix = '1 2 3');

INSERT INTO item_search (rowid, label, title, rest)
  SELECT i.number, i.label, i.title,
         i.kind || ' ' || i.case_label || ' ' || i.note || ' '
         || coalesce (f.engraving || ' ' || f.set_name, b.chemistry, '')
  FROM item AS i LEFT JOIN filter AS f ON f.item_id = i.id LEFT JOIN battery AS b ON b.item_id = i.id;
