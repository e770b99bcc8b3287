-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 8: frozen plans and what stands beside them. Who froze a plan and why it has a letter of
-- its own; an amendment as a change that can be applied to the copy, as one sentence for each role,
-- and as who has read it; what the crew has decided about a line, which the planner then keeps. A
-- line is known by its first shot.

ALTER TABLE plan_version ADD COLUMN frozen_by TEXT NOT NULL DEFAULT '';
ALTER TABLE plan_version ADD COLUMN why TEXT NOT NULL DEFAULT '';
ALTER TABLE amendment ADD COLUMN change TEXT NOT NULL DEFAULT '';
ALTER TABLE flight ADD COLUMN line_id TEXT CHECK (length (line_id) = 36);

CREATE TABLE amendment_sentence (
  job_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  role TEXT NOT NULL CHECK (role IN ('lead', 'pilot', 'camera', 'observer')),
  text TEXT NOT NULL CHECK (text <> ''),
  PRIMARY KEY (job_id, number, role),
  FOREIGN KEY (job_id, number) REFERENCES amendment (job_id, number)
) STRICT;

CREATE TABLE acknowledgement (
  job_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  role TEXT NOT NULL,
  initials TEXT NOT NULL CHECK (initials <> ''),
  at INTEGER NOT NULL,
  entered_by TEXT NOT NULL,
  PRIMARY KEY (job_id, number, role, initials),
  FOREIGN KEY (job_id, number, role) REFERENCES amendment_sentence (job_id, number, role)
) STRICT;

CREATE TABLE line_lock (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  shot_id TEXT NOT NULL UNIQUE REFERENCES shot (id) ON DELETE CASCADE,
  battery_id TEXT REFERENCES battery (item_id),
  keep_filter INTEGER NOT NULL CHECK (keep_filter IN (0, 1)),
  filter_id TEXT REFERENCES filter (item_id),
  off_by INTEGER NOT NULL CHECK (off_by >= -1)
) STRICT;

CREATE INDEX line_lock_by_job ON line_lock (job_id);

CREATE TRIGGER amendment_sentence_keep_update BEFORE UPDATE ON amendment_sentence
BEGIN SELECT RAISE (ABORT, 'sentences of amendments are only added to'); END;
CREATE TRIGGER amendment_sentence_keep_delete BEFORE DELETE ON amendment_sentence
BEGIN SELECT RAISE (ABORT, 'sentences of amendments are only added to'); END;
CREATE TRIGGER acknowledgement_keep_update BEFORE UPDATE ON acknowledgement
BEGIN SELECT RAISE (ABORT, 'acknowledgements are only added to'); END;
CREATE TRIGGER acknowledgement_keep_delete BEFORE DELETE ON acknowledgement
BEGIN SELECT RAISE (ABORT, 'acknowledgements are only added to'); END;
