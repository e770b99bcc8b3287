-- SPDX-License-Identifier: GPL-3.0-or-later
--
-- Version 9: checklists and their runs. A list is its text. A run keeps the text it was started with,
-- the conditions and the rules of that moment, so that its events lead to the same marks for ever;
-- what happened in it is only ever added to. A list of its own that the crew takes out again leaves
-- its runs as they are: they need no list.

CREATE TABLE checklist (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  title TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (title <> ''),
  text TEXT NOT NULL CHECK (text <> ''),
  changed_at INTEGER NOT NULL,
  entered_by TEXT NOT NULL
) STRICT;

CREATE TABLE run (
  id TEXT PRIMARY KEY CHECK (length (id) = 36),
  job_id TEXT NOT NULL REFERENCES job (id),
  list_id TEXT NOT NULL CHECK (length (list_id) = 36),
  title TEXT NOT NULL CHECK (title <> ''),
  text TEXT NOT NULL CHECK (text <> ''),
  conditions TEXT NOT NULL,
  line INTEGER NOT NULL CHECK (line >= 0),
  restart_after_s INTEGER NOT NULL CHECK (restart_after_s > 0),
  restart_on INTEGER NOT NULL CHECK (restart_on BETWEEN 0 AND 7),
  started_at INTEGER NOT NULL
) STRICT;

CREATE INDEX run_by_job ON run (job_id, started_at);

CREATE TABLE run_event (
  run_id TEXT NOT NULL REFERENCES run (id),
  sequence INTEGER NOT NULL CHECK (sequence > 0),
  act TEXT NOT NULL CHECK (act IN ('start', 'say', 'done', 'second', 'accept', 'defer',
    'not-applicable', 'fail', 'reopen', 'hold', 'auto-hold', 'resume', 'change', 'abandon')),
  item INTEGER NOT NULL CHECK (item >= -1),
  at INTEGER NOT NULL,
  entered_at INTEGER NOT NULL,
  entered_by TEXT NOT NULL,
  other TEXT NOT NULL,
  said TEXT NOT NULL,
  expected TEXT NOT NULL,
  why TEXT NOT NULL,
  subject_id TEXT REFERENCES item (id),
  changed INTEGER NOT NULL CHECK (changed BETWEEN 0 AND 7),
  after_ms INTEGER NOT NULL CHECK (after_ms >= -1),
  from_paper INTEGER NOT NULL CHECK (from_paper IN (0, 1)),
  PRIMARY KEY (run_id, sequence)
) STRICT, WITHOUT ROWID;

-- The crew's own rules for runs: one row.
CREATE TABLE list_rules (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  idle_s INTEGER NOT NULL CHECK (idle_s > 0),
  restart_after_s INTEGER NOT NULL CHECK (restart_after_s > 0),
  restart_on INTEGER NOT NULL CHECK (restart_on BETWEEN 0 AND 7),
  cold_below_c REAL NOT NULL
) STRICT;

-- What a person says a day is, against what the facts of the job say.
CREATE TABLE day_condition (
  job_id TEXT NOT NULL REFERENCES job (id),
  condition TEXT NOT NULL CHECK (condition IN ('cold', 'night', 'water', 'near people',
    'two operators', 'first flight of the day', 'new site')),
  holds INTEGER NOT NULL CHECK (holds IN (0, 1)),
  PRIMARY KEY (job_id, condition)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER run_keep_update BEFORE UPDATE ON run
BEGIN SELECT RAISE (ABORT, 'runs are only added to'); END;
CREATE TRIGGER run_keep_delete BEFORE DELETE ON run
BEGIN SELECT RAISE (ABORT, 'runs are only added to'); END;
CREATE TRIGGER run_event_keep_update BEFORE UPDATE ON run_event
BEGIN SELECT RAISE (ABORT, 'events of a run are only added to'); END;
CREATE TRIGGER run_event_keep_delete BEFORE DELETE ON run_event
BEGIN SELECT RAISE (ABORT, 'events of a run are only added to'); END;
