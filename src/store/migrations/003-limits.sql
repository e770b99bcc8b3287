-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Limits grow: more comparisons, what a row counts from, when it applies, who gave it. And what is
-- held against them: things measured, weather reports, and the calls that people made on them. What
-- was measured, reported and decided is only ever added to.

CREATE TABLE limit_row_grown (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  sheet TEXT NOT NULL CHECK (sheet <> ''),
  position INTEGER NOT NULL CHECK (position >= 0),
  kind TEXT NOT NULL CHECK (kind <> ''),
  text TEXT NOT NULL,
  compare TEXT NOT NULL CHECK (compare IN ('at-most', 'at-least', 'required', 'prohibited',
    'by-time', 'below', 'above', 'between', 'window', 'information')),
  value REAL,
  value_to REAL,
  unit TEXT NOT NULL,
  datum TEXT NOT NULL DEFAULT '',
  only_if TEXT NOT NULL DEFAULT 'always' CHECK (only_if IN ('always', 'daylight', 'twilight',
    'night', 'near-people', 'over-water', 'controlled-airspace', 'observer-used')),
  anchor_from TEXT NOT NULL DEFAULT 'clock' CHECK (anchor_from IN ('clock', 'civil-dawn',
    'sunrise', 'sunset', 'civil-dusk')),
  anchor_to TEXT NOT NULL DEFAULT 'clock' CHECK (anchor_to IN ('clock', 'civil-dawn', 'sunrise',
    'sunset', 'civil-dusk')),
  rule TEXT NOT NULL CHECK (rule IN ('own', 'law', 'permit', 'maker', 'insurer')),
  authority TEXT NOT NULL DEFAULT '',
  source TEXT NOT NULL,
  permit TEXT NOT NULL DEFAULT '',
  checked_on TEXT NOT NULL,
  checked_by TEXT NOT NULL,
  expires_on TEXT NOT NULL,
  note TEXT NOT NULL DEFAULT '',
  example INTEGER NOT NULL CHECK (example IN (0, 1))
) STRICT;

INSERT INTO limit_row_grown (id, sheet, position, kind, text, compare, value, unit, rule, source,
  checked_on, checked_by, expires_on, example)
SELECT id, sheet, position, kind, text, compare, value, unit, rule, source, checked_on, checked_by,
  expires_on, example FROM limit_row;
DROP TABLE limit_row;
ALTER TABLE limit_row_grown RENAME TO limit_row;

-- A job may name the sheets that bind it; none named means all of them.
CREATE TABLE job_limit_sheet (
  job_id TEXT NOT NULL REFERENCES job (id),
  sheet TEXT NOT NULL CHECK (sheet <> ''),
  PRIMARY KEY (job_id, sheet)
) STRICT, WITHOUT ROWID;

CREATE TABLE measurement (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  at INTEGER NOT NULL,
  kind TEXT NOT NULL CHECK (kind <> ''),
  value REAL,
  unit TEXT NOT NULL,
  height_m REAL CHECK (height_m >= 0),
  note TEXT NOT NULL,
  entered_by TEXT NOT NULL
) STRICT;

CREATE INDEX measurement_by_job ON measurement (job_id, kind, at);

CREATE TABLE weather_report (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  at INTEGER NOT NULL,
  text TEXT NOT NULL CHECK (text <> ''),
  distance_m REAL CHECK (distance_m >= 0),
  elevation_m REAL,
  entered_by TEXT NOT NULL
) STRICT;

CREATE INDEX weather_report_by_job ON weather_report (job_id, at);

CREATE TABLE weather_call (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  at INTEGER NOT NULL,
  decision TEXT NOT NULL CHECK (decision IN ('go', 'stand-by', 'no-go')),
  why TEXT NOT NULL CHECK (why <> ''),
  until INTEGER NOT NULL,
  entered_by TEXT NOT NULL CHECK (entered_by <> '')
) STRICT;

CREATE INDEX weather_call_by_job ON weather_call (job_id, at);

CREATE TRIGGER measurement_keep_update BEFORE UPDATE ON measurement
BEGIN SELECT RAISE (ABORT, 'measurements are only added to'); END;
CREATE TRIGGER measurement_keep_delete BEFORE DELETE ON measurement
BEGIN SELECT RAISE (ABORT, 'measurements are only added to'); END;
CREATE TRIGGER weather_report_keep_update BEFORE UPDATE ON weather_report
BEGIN SELECT RAISE (ABORT, 'weather reports are only added to'); END;
CREATE TRIGGER weather_report_keep_delete BEFORE DELETE ON weather_report
BEGIN SELECT RAISE (ABORT, 'weather reports are only added to'); END;
CREATE TRIGGER weather_call_keep_update BEFORE UPDATE ON weather_call
BEGIN SELECT RAISE (ABORT, 'weather calls are only added to'); END;
CREATE TRIGGER weather_call_keep_delete BEFORE DELETE ON weather_call
BEGIN SELECT RAISE (ABORT, 'weather calls are only added to'); END;
