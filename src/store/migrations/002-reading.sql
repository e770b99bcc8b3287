-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 2: what a reading needs to correct the rest of the day by itself: how sure it is, the
-- camera's settings, what was looked at, under which sky, and whether cloud was on the move. A
-- bearing that was not given is the sun behind the camera.

ALTER TABLE reading ADD COLUMN spread_stops REAL NOT NULL DEFAULT 0.5
  CHECK (spread_stops BETWEEN 0 AND 20);
ALTER TABLE reading ADD COLUMN aperture REAL CHECK (aperture > 0);
ALTER TABLE reading ADD COLUMN iso REAL CHECK (iso > 0);
ALTER TABLE reading ADD COLUMN "view" TEXT NOT NULL DEFAULT 'oblique'
  CHECK ("view" IN ('oblique', 'down'));
ALTER TABLE reading ADD COLUMN bearing_deg REAL CHECK (bearing_deg BETWEEN 0 AND 360);
ALTER TABLE reading ADD COLUMN subject_offset_stops REAL NOT NULL DEFAULT 0;
ALTER TABLE reading ADD COLUMN sky TEXT NOT NULL DEFAULT 'clear'
  CHECK (sky IN ('clear', 'thin', 'partly', 'overcast', 'dark'));
ALTER TABLE reading ADD COLUMN cloud_moves INTEGER NOT NULL DEFAULT 0
  CHECK (cloud_moves IN (0, 1));

ALTER TABLE reading_dropped ADD COLUMN entered_by TEXT NOT NULL DEFAULT '';
