-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 1: the ground floor.
--
-- Ids are UUIDs as text. Instants are UTC seconds; clocks are minutes after local midnight; dates
-- are YYYY-MM-DD. A text that was not given is '', a number or a reference NULL. Words such as
-- 'overcast' are the tokens of the tables of names. What happened is only ever added to: item
-- events, readings and their withdrawal, plan versions, amendments, flights.

CREATE TABLE crew_member (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  name TEXT NOT NULL CHECK (name <> ''),
  initials TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (initials <> ''),
  role TEXT NOT NULL CHECK (role IN ('lead', 'pilot', 'camera', 'observer')),
  phone TEXT NOT NULL,
  certificate TEXT NOT NULL,
  certificate_expiry TEXT NOT NULL
) STRICT;

CREATE TABLE place (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  name TEXT NOT NULL CHECK (name <> ''),
  latitude_deg REAL NOT NULL CHECK (latitude_deg BETWEEN -90 AND 90),
  longitude_deg REAL NOT NULL CHECK (longitude_deg BETWEEN -180 AND 180),
  elevation_m REAL NOT NULL,
  zone TEXT NOT NULL CHECK (zone <> ''),
  takeoff_spot TEXT NOT NULL,
  second_spot TEXT NOT NULL,
  observer_post TEXT NOT NULL,
  second_post TEXT NOT NULL,
  emergency_location TEXT NOT NULL,
  emergency_phone TEXT NOT NULL
) STRICT;

CREATE TABLE hazard (
  place_id TEXT NOT NULL REFERENCES place (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  what TEXT NOT NULL CHECK (what <> ''),
  measure TEXT NOT NULL,
  PRIMARY KEY (place_id, position)
) STRICT, WITHOUT ROWID;

-- What the crew owns. What only one kind has stands in the table of that kind; its state is what
-- its last event says.
CREATE TABLE item (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  label TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (label <> ''),
  kind TEXT NOT NULL CHECK (kind IN ('aircraft', 'camera', 'filter', 'battery', 'charger', 'card',
    'propellers', 'controller', 'tablet', 'cable', 'radio', 'safety', 'document', 'other')),
  title TEXT NOT NULL,
  case_label TEXT NOT NULL,
  belongs_to TEXT REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED,
  mass_kg REAL CHECK (mass_kg >= 0),
  due_at REAL CHECK (due_at >= 0),
  used REAL CHECK (used >= 0),
  valid_until TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;

CREATE TABLE aircraft (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  size_m REAL CHECK (size_m > 0),
  wind_limit_ms REAL CHECK (wind_limit_ms > 0),
  temperature_low_c REAL,
  temperature_high_c REAL,
  return_height_m REAL CHECK (return_height_m > 0),
  light_fitted INTEGER NOT NULL CHECK (light_fitted IN (0, 1)),
  camera_id TEXT REFERENCES item (id) DEFERRABLE INITIALLY DEFERRED
) STRICT, WITHOUT ROWID;

CREATE TABLE camera (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  apertures TEXT NOT NULL CHECK (apertures <> ''),
  base_iso TEXT NOT NULL,
  iso_low INTEGER NOT NULL CHECK (iso_low > 0),
  iso_high INTEGER NOT NULL CHECK (iso_high >= iso_low),
  shutter_fast TEXT NOT NULL CHECK (shutter_fast <> ''),
  shutter_slow TEXT NOT NULL CHECK (shutter_slow <> ''),
  pitch_um REAL CHECK (pitch_um > 0),
  focal_mm REAL CHECK (focal_mm > 0),
  width_px INTEGER NOT NULL CHECK (width_px >= 0),
  height_px INTEGER NOT NULL CHECK (height_px >= 0),
  bitrate_mbits REAL CHECK (bitrate_mbits > 0)
) STRICT, WITHOUT ROWID;

CREATE TABLE filter (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  stops REAL NOT NULL CHECK (stops >= 0),
  stops_to REAL NOT NULL CHECK (stops_to >= stops),
  measured_stops REAL CHECK (measured_stops >= 0),
  engraving TEXT NOT NULL,
  set_name TEXT NOT NULL,
  slot TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE battery (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  chemistry TEXT NOT NULL,
  cells INTEGER NOT NULL CHECK (cells >= 0),
  volts REAL CHECK (volts > 0),
  milliamp_hours REAL CHECK (milliamp_hours > 0),
  printed_wh REAL CHECK (printed_wh > 0),
  usable_minutes INTEGER NOT NULL CHECK (usable_minutes > 0),
  usable_at_c REAL
) STRICT, WITHOUT ROWID;

CREATE TABLE charger (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  slots INTEGER NOT NULL CHECK (slots > 0),
  cool_minutes INTEGER NOT NULL CHECK (cool_minutes >= 0),
  charge_minutes INTEGER NOT NULL CHECK (charge_minutes > 0),
  attended_by TEXT REFERENCES crew_member (id)
) STRICT, WITHOUT ROWID;

CREATE TABLE card (
  item_id TEXT PRIMARY KEY REFERENCES item (id),
  capacity_gb REAL NOT NULL CHECK (capacity_gb > 0),
  speed_class TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE item_event (
  sequence INTEGER PRIMARY KEY,
  item_id TEXT NOT NULL REFERENCES item (id),
  at INTEGER NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('serviceable', 'defect', 'quarantined', 'out', 'retired')),
  why TEXT NOT NULL CHECK (why <> ''),
  out_with TEXT NOT NULL,
  out_until TEXT NOT NULL,
  entered_by TEXT NOT NULL
) STRICT;

CREATE INDEX item_event_by_item ON item_event (item_id, sequence);

CREATE TABLE job (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  title TEXT NOT NULL CHECK (title <> ''),
  client TEXT NOT NULL,
  purpose TEXT NOT NULL,
  place_id TEXT REFERENCES place (id),
  date TEXT NOT NULL,
  state TEXT NOT NULL CHECK (state IN ('planned', 'flown', 'put-away')),
  version TEXT NOT NULL CHECK (version <> ''),
  abort_word TEXT NOT NULL,
  example INTEGER NOT NULL CHECK (example IN (0, 1)),
  delivery_fps REAL CHECK (delivery_fps > 0),
  on_site INTEGER NOT NULL CHECK (on_site >= -1),
  first_off INTEGER NOT NULL CHECK (first_off >= -1),
  all_down INTEGER NOT NULL CHECK (all_down >= -1),
  off_site INTEGER NOT NULL CHECK (off_site >= -1),
  sky TEXT NOT NULL CHECK (sky IN ('clear', 'thin', 'partly', 'overcast', 'dark')),
  wind_from_deg REAL CHECK (wind_from_deg BETWEEN 0 AND 360),
  wind_ms REAL CHECK (wind_ms >= 0),
  gust_ms REAL CHECK (gust_ms >= 0),
  wind_height_m REAL CHECK (wind_height_m > 0),
  temperature_c REAL,
  visibility_m REAL CHECK (visibility_m >= 0),
  aircraft_id TEXT REFERENCES aircraft (item_id) DEFERRABLE INITIALLY DEFERRED,
  out_minutes INTEGER NOT NULL CHECK (out_minutes >= 0),
  back_minutes INTEGER NOT NULL CHECK (back_minutes >= 0),
  battery_change_minutes INTEGER NOT NULL CHECK (battery_change_minutes >= 0),
  filter_change_minutes INTEGER NOT NULL CHECK (filter_change_minutes >= 0)
) STRICT;

CREATE INDEX job_by_date ON job (date, title);

CREATE TABLE day_event (
  job_id TEXT NOT NULL REFERENCES job (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  clock INTEGER NOT NULL CHECK (clock >= 0),
  text TEXT NOT NULL CHECK (text <> ''),
  PRIMARY KEY (job_id, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE job_item (
  job_id TEXT NOT NULL REFERENCES job (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  item_id TEXT NOT NULL REFERENCES item (id),
  PRIMARY KEY (job_id, position),
  UNIQUE (job_id, item_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE job_crew (
  job_id TEXT NOT NULL REFERENCES job (id),
  member_id TEXT NOT NULL REFERENCES crew_member (id),
  role TEXT NOT NULL CHECK (role IN ('lead', 'pilot', 'camera', 'observer')),
  PRIMARY KEY (job_id, member_id, role)
) STRICT, WITHOUT ROWID;

CREATE TABLE shot (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  label TEXT NOT NULL COLLATE NOCASE CHECK (label <> ''),
  title TEXT NOT NULL,
  note TEXT NOT NULL,
  "view" TEXT NOT NULL CHECK ("view" IN ('oblique', 'down')),
  bearing_deg REAL CHECK (bearing_deg BETWEEN 0 AND 360),
  height_from_m REAL NOT NULL CHECK (height_from_m >= 0),
  height_to_m REAL NOT NULL CHECK (height_to_m >= 0),
  track TEXT NOT NULL,
  speed_ms REAL NOT NULL CHECK (speed_ms >= 0),
  intent TEXT NOT NULL CHECK (intent IN ('video', 'slow', 'still', 'bracket', 'timelapse')),
  fps REAL CHECK (fps > 0),
  angle_deg REAL,
  angle_from_deg REAL,
  angle_to_deg REAL,
  frames INTEGER NOT NULL CHECK (frames >= 0),
  step_stops REAL,
  interval_s REAL,
  max_iso REAL NOT NULL CHECK (max_iso >= 0),
  hold_aperture REAL NOT NULL CHECK (hold_aperture >= 0),
  minutes INTEGER NOT NULL CHECK (minutes BETWEEN 1 AND 120),
  window_from INTEGER NOT NULL CHECK (window_from >= 0),
  window_to INTEGER NOT NULL CHECK (window_to >= window_from),
  fixed_time INTEGER NOT NULL CHECK (fixed_time IN (0, 1)),
  most_wanted INTEGER NOT NULL CHECK (most_wanted IN (0, 1)),
  weight REAL NOT NULL CHECK (weight >= 0),
  subject_offset_stops REAL NOT NULL,
  match_group TEXT NOT NULL,
  UNIQUE (job_id, label)
) STRICT;

CREATE INDEX shot_by_job ON shot (job_id, position);

-- The crew's own limit sheets: whose rule each row is, where it stands, when that was checked.
CREATE TABLE limit_row (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  sheet TEXT NOT NULL CHECK (sheet <> ''),
  position INTEGER NOT NULL CHECK (position >= 0),
  kind TEXT NOT NULL CHECK (kind <> ''),
  text TEXT NOT NULL,
  compare TEXT NOT NULL CHECK (compare IN ('at-most', 'at-least', 'required', 'prohibited',
    'by-time')),
  value REAL,
  unit TEXT NOT NULL,
  rule TEXT NOT NULL CHECK (rule IN ('own', 'law', 'permit', 'maker', 'insurer')),
  source TEXT NOT NULL,
  checked_on TEXT NOT NULL,
  checked_by TEXT NOT NULL,
  expires_on TEXT NOT NULL,
  example INTEGER NOT NULL CHECK (example IN (0, 1))
) STRICT;

-- Light readings: what was measured and how, and the scene's exposure value that follows.
CREATE TABLE reading (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  at INTEGER NOT NULL,
  method TEXT NOT NULL CHECK (method IN ('shown', 'ev100', 'lux', 'frame')),
  ev100 REAL NOT NULL,
  shown_s REAL,
  target_s REAL,
  lux REAL,
  nd_stops REAL NOT NULL CHECK (nd_stops >= 0),
  source TEXT NOT NULL,
  entered_by TEXT NOT NULL
) STRICT;

CREATE INDEX reading_by_job ON reading (job_id, at);

-- A reading that turned out wrong is withdrawn with a reason; it is not removed.
CREATE TABLE reading_dropped (
  reading_id TEXT PRIMARY KEY REFERENCES reading (id),
  at INTEGER NOT NULL,
  why TEXT NOT NULL CHECK (why <> '')
) STRICT, WITHOUT ROWID;

-- A plan as it was printed. The copy is kept as text: later tables can't change what it said.
CREATE TABLE plan_version (
  job_id TEXT NOT NULL REFERENCES job (id),
  letter TEXT NOT NULL CHECK (letter <> ''),
  frozen_at INTEGER NOT NULL,
  copy TEXT NOT NULL,
  PRIMARY KEY (job_id, letter)
) STRICT;

CREATE TABLE amendment (
  job_id TEXT NOT NULL REFERENCES job (id),
  number INTEGER NOT NULL CHECK (number > 0),
  letter TEXT NOT NULL,
  at INTEGER NOT NULL,
  text TEXT NOT NULL CHECK (text <> ''),
  entered_by TEXT NOT NULL,
  PRIMARY KEY (job_id, number)
) STRICT;

CREATE TABLE flight (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  version TEXT NOT NULL,
  line INTEGER NOT NULL CHECK (line >= 0),
  "off" INTEGER NOT NULL,
  "down" INTEGER NOT NULL CHECK ("down" > "off"),
  battery_id TEXT NOT NULL REFERENCES battery (item_id),
  entered_by TEXT NOT NULL,
  note TEXT NOT NULL
) STRICT;

CREATE INDEX flight_by_job ON flight (job_id, "off");

CREATE TABLE flight_filter (
  flight_id TEXT NOT NULL REFERENCES flight (id),
  position INTEGER NOT NULL CHECK (position >= 0),
  filter_id TEXT NOT NULL REFERENCES filter (item_id),
  PRIMARY KEY (flight_id, position)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER item_event_keep_update BEFORE UPDATE ON item_event
BEGIN SELECT RAISE (ABORT, 'item events are only added to'); END;
CREATE TRIGGER item_event_keep_delete BEFORE DELETE ON item_event
BEGIN SELECT RAISE (ABORT, 'item events are only added to'); END;
CREATE TRIGGER reading_keep_update BEFORE UPDATE ON reading
BEGIN SELECT RAISE (ABORT, 'readings are only added to'); END;
CREATE TRIGGER reading_keep_delete BEFORE DELETE ON reading
BEGIN SELECT RAISE (ABORT, 'readings are only added to'); END;
CREATE TRIGGER reading_dropped_keep_update BEFORE UPDATE ON reading_dropped
BEGIN SELECT RAISE (ABORT, 'withdrawn readings are only added to'); END;
CREATE TRIGGER reading_dropped_keep_delete BEFORE DELETE ON reading_dropped
BEGIN SELECT RAISE (ABORT, 'withdrawn readings are only added to'); END;
CREATE TRIGGER plan_version_keep_update BEFORE UPDATE ON plan_version
BEGIN SELECT RAISE (ABORT, 'plan versions are only added to'); END;
CREATE TRIGGER plan_version_keep_delete BEFORE DELETE ON plan_version
BEGIN SELECT RAISE (ABORT, 'plan versions are only added to'); END;
CREATE TRIGGER amendment_keep_update BEFORE UPDATE ON amendment
BEGIN SELECT RAISE (ABORT, 'amendments are only added to'); END;
CREATE TRIGGER amendment_keep_delete BEFORE DELETE ON amendment
BEGIN SELECT RAISE (ABORT, 'amendments are only added to'); END;
CREATE TRIGGER flight_keep_update BEFORE UPDATE ON flight
BEGIN SELECT RAISE (ABORT, 'flights are only added to'); END;
CREATE TRIGGER flight_keep_delete BEFORE DELETE ON flight
BEGIN SELECT RAISE (ABORT, 'flights are only added to'); END;
CREATE TRIGGER flight_filter_keep_update BEFORE UPDATE ON flight_filter
BEGIN SELECT RAISE (ABORT, 'filters of a flight are only added to'); END;
CREATE TRIGGER flight_filter_keep_delete BEFORE DELETE ON flight_filter
BEGIN SELECT RAISE (ABORT, 'filters of a flight are only added to'); END;
