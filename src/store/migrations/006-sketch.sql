-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Where the spots and posts of a place lie, seen from the take-off spot, and which way an observer
-- there faces: enough for a sketch. NULL: nobody has said.

ALTER TABLE place ADD COLUMN second_spot_bearing_deg REAL
  CHECK (second_spot_bearing_deg BETWEEN 0 AND 360);
ALTER TABLE place ADD COLUMN second_spot_distance_m REAL CHECK (second_spot_distance_m >= 0);
ALTER TABLE place ADD COLUMN post_bearing_deg REAL CHECK (post_bearing_deg BETWEEN 0 AND 360);
ALTER TABLE place ADD COLUMN post_distance_m REAL CHECK (post_distance_m >= 0);
ALTER TABLE place ADD COLUMN post_faces_deg REAL CHECK (post_faces_deg BETWEEN 0 AND 360);
ALTER TABLE place ADD COLUMN second_post_bearing_deg REAL
  CHECK (second_post_bearing_deg BETWEEN 0 AND 360);
ALTER TABLE place ADD COLUMN second_post_distance_m REAL CHECK (second_post_distance_m >= 0);
ALTER TABLE place ADD COLUMN second_post_faces_deg REAL
  CHECK (second_post_faces_deg BETWEEN 0 AND 360);
