-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- A camera in full: picture profiles, in the order of their base ISOs; ISO in thirds or whole stops;
-- a shutter set by time or by angle; the frame and data rates it has; where its lens is sharp.

ALTER TABLE camera ADD COLUMN profiles TEXT NOT NULL DEFAULT '';
ALTER TABLE camera ADD COLUMN iso_steps TEXT NOT NULL DEFAULT 'thirds'
  CHECK (iso_steps IN ('thirds', 'stops'));
ALTER TABLE camera ADD COLUMN shutter_by TEXT NOT NULL DEFAULT 'time'
  CHECK (shutter_by IN ('time', 'angle'));
ALTER TABLE camera ADD COLUMN angle_low_deg REAL CHECK (angle_low_deg > 0);
ALTER TABLE camera ADD COLUMN angle_high_deg REAL CHECK (angle_high_deg <= 360);
ALTER TABLE camera ADD COLUMN frame_rates TEXT NOT NULL DEFAULT '';
ALTER TABLE camera ADD COLUMN data_rates TEXT NOT NULL DEFAULT '';
ALTER TABLE camera ADD COLUMN sharp_from REAL CHECK (sharp_from > 0);
ALTER TABLE camera ADD COLUMN sharp_to REAL CHECK (sharp_to > 0);
