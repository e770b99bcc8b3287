-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Who was briefed: on which letter, with how many amendments read out, and when. Only added to:
-- whoever is briefed again on a later letter stands there twice.

CREATE TABLE briefed (
  job_id TEXT NOT NULL REFERENCES job (id),
  letter TEXT NOT NULL CHECK (length (letter) BETWEEN 1 AND 3),
  upto INTEGER NOT NULL CHECK (upto BETWEEN 0 AND 9999),
  name TEXT NOT NULL CHECK (name <> ''),
  initials TEXT NOT NULL CHECK (initials <> ''),
  at INTEGER NOT NULL,
  entered_by TEXT NOT NULL,
  PRIMARY KEY (job_id, initials, at)
) STRICT;

CREATE TRIGGER briefed_keep_update BEFORE UPDATE ON briefed
BEGIN SELECT RAISE (ABORT, 'who was briefed is only added to'); END;
CREATE TRIGGER briefed_keep_delete BEFORE DELETE ON briefed
BEGIN SELECT RAISE (ABORT, 'who was briefed is only added to'); END;
