/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

/*
 * The journal is what counts; the other tables are a projection that can be made anew from it: task (every item, whatever
 * its kind), task_search (its words), action, and entry (what a list of the journal's lines shows of each).
 * The triggers guard against accidents (a stray tool, a bug), not against somebody who means to.
 * SQLite keeps no NaN and no infinity that every reader understands: none is NULL, unbounded is a flag.
 */
#define JOURNAL \
  JOURNAL_TABLE JOURNAL_GUARDS
#define JOURNAL_TABLE \
  "CREATE TABLE journal (" \
  "  number INTEGER PRIMARY KEY CHECK (number > 0)," \
  "  hash BLOB NOT NULL CHECK (length (hash) = 32)," \
  "  kind INTEGER NOT NULL," \
  "  item TEXT NOT NULL," \
  "  event BLOB NOT NULL" \
  ") STRICT;"
#define JOURNAL_GUARDS \
  "CREATE INDEX journal_item ON journal (item, number);" \
  "CREATE INDEX journal_policy ON journal (number) WHERE kind = 1;" \
  "CREATE TRIGGER journal_keep BEFORE UPDATE ON journal BEGIN" \
  "  SELECT RAISE (ABORT, 'a line of the journal is never changed');" \
  "END;" \
  "CREATE TRIGGER journal_hold BEFORE DELETE ON journal BEGIN" \
  "  SELECT RAISE (ABORT, 'a line of the journal is never removed');" \
  "END;" \
  /* Also keeps INSERT OR REPLACE from removing a line, which fires no DELETE trigger. */ \
  "CREATE TRIGGER journal_next BEFORE INSERT ON journal" \
  "  WHEN NEW.number IS NOT (SELECT ifnull (max (number), 0) + 1 FROM journal) BEGIN" \
  "  SELECT RAISE (ABORT, 'a line of the journal goes at its end');" \
  "END;"

#define PROJECTION \
  "CREATE TABLE task (" \
  "  seat INTEGER PRIMARY KEY," \
  "  id TEXT NOT NULL UNIQUE," \
  "  item_kind TEXT NOT NULL," \
  "  line INTEGER NOT NULL REFERENCES journal (number)," \
  "  name_key TEXT NOT NULL," \
  "  name TEXT NOT NULL," \
  "  place TEXT NOT NULL," \
  "  method TEXT NOT NULL," \
  "  units TEXT NOT NULL," \
  "  verdict TEXT NOT NULL," \
  "  index_value REAL," \
  "  index_unbounded INTEGER NOT NULL CHECK (index_unbounded IN (0, 1))," \
  "  index_symbol TEXT NOT NULL," \
  "  mass_kg REAL," \
  "  persons REAL NOT NULL," \
  "  lifts_per_day REAL," \
  "  rank_value REAL," \
  "  rank_unbounded INTEGER NOT NULL CHECK (rank_unbounded IN (0, 1))," \
  "  revision INTEGER NOT NULL," \
  "  clash INTEGER NOT NULL," \
  "  lineage TEXT NOT NULL," \
  "  done_by TEXT NOT NULL," \
  "  why TEXT NOT NULL," \
  "  done_at TEXT NOT NULL," \
  "  valid_until TEXT NOT NULL," \
  "  search_text TEXT NOT NULL," \
  "  mass_with_allowance_kg REAL," \
  "  cg_x_mm REAL," \
  "  cg_y_mm REAL," \
  "  cg_z_mm REAL," \
  "  machine TEXT NOT NULL," \
  "  storage TEXT NOT NULL," \
  "  gear_kind TEXT NOT NULL," \
  "  identity TEXT NOT NULL," \
  "  wll_kg REAL," \
  "  due TEXT NOT NULL," \
  "  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1))," \
  "  condition TEXT NOT NULL," \
  "  role TEXT NOT NULL," \
  "  edition INTEGER NOT NULL," \
  "  policy TEXT NOT NULL," \
  "  program TEXT NOT NULL," \
  "  loosened INTEGER NOT NULL CHECK (loosened IN (0, 1))," \
  "  begun TEXT NOT NULL," \
  "  signed_revision INTEGER NOT NULL," \
  "  signed_by TEXT NOT NULL," \
  "  signed_role TEXT NOT NULL," \
  "  signed_when TEXT NOT NULL," \
  "  signed_own INTEGER NOT NULL CHECK (signed_own IN (0, 1))," \
  "  open_actions TEXT NOT NULL," \
  "  n_open INTEGER NOT NULL," \
  "  action_due TEXT NOT NULL," \
  "  review_due TEXT NOT NULL," \
  "  review_trigger TEXT NOT NULL," \
  "  retired INTEGER NOT NULL CHECK (retired IN (0, 1))," \
  "  told_revision INTEGER NOT NULL" \
  ") STRICT;" \
  "CREATE INDEX task_name ON task (name);" \
  "CREATE INDEX task_line ON task (line);" \
  /* Holds the words of search_text as sy_store_fold() makes them: parted by blanks, nothing left to fold. */ \
  "CREATE VIRTUAL TABLE task_search USING fts5 (words, tokenize = 'ascii', prefix = '2 3');" \
  "CREATE TABLE action (" \
  "  id TEXT NOT NULL PRIMARY KEY," \
  "  item TEXT NOT NULL," \
  "  item_kind TEXT NOT NULL," \
  "  item_name TEXT NOT NULL," \
  "  what TEXT NOT NULL," \
  "  about TEXT NOT NULL," \
  "  assigned TEXT NOT NULL," \
  "  due TEXT NOT NULL," \
  "  open INTEGER NOT NULL CHECK (open IN (0, 1))," \
  "  opened_by TEXT NOT NULL," \
  "  opened_when TEXT NOT NULL," \
  "  why TEXT NOT NULL," \
  "  closed_by TEXT NOT NULL," \
  "  closed_when TEXT NOT NULL," \
  "  evidence TEXT NOT NULL," \
  "  begun INTEGER NOT NULL REFERENCES journal (number)," \
  "  line INTEGER NOT NULL REFERENCES journal (number)" \
  ") STRICT;" \
  "CREATE INDEX action_item ON action (item);" \
  "CREATE INDEX action_line ON action (line);" \
  "CREATE INDEX action_open ON action (begun) WHERE open = 1;" \
  "CREATE TABLE entry (" \
  "  number INTEGER PRIMARY KEY REFERENCES journal (number)," \
  "  kind INTEGER NOT NULL," \
  "  item TEXT NOT NULL," \
  "  item_kind TEXT NOT NULL," \
  "  name TEXT NOT NULL," \
  "  done_by TEXT NOT NULL," \
  "  role TEXT NOT NULL," \
  "  why TEXT NOT NULL," \
  "  done_at TEXT NOT NULL," \
  "  done_on TEXT NOT NULL," \
  "  written_at TEXT NOT NULL," \
  "  written_on TEXT NOT NULL," \
  "  clock_set INTEGER NOT NULL CHECK (clock_set IN (0, 1))," \
  "  revision INTEGER NOT NULL," \
  "  base INTEGER NOT NULL," \
  "  from_elsewhere INTEGER NOT NULL CHECK (from_elsewhere IN (0, 1))," \
  "  verdict TEXT NOT NULL," \
  "  words TEXT NOT NULL" \
  ") STRICT;" \
  "CREATE INDEX entry_item ON entry (item, number);" \
  "CREATE INDEX entry_person ON entry (done_by, number);" \
  "CREATE INDEX entry_deed ON entry (kind, number) WHERE kind <> 2;" \
  "CREATE INDEX entry_day ON entry (done_on, number);"

const char sy_sqlite_schema[] =
  "PRAGMA application_id = " G_STRINGIFY (SY_SQLITE_APPLICATION_ID) ";"
  "PRAGMA user_version = " G_STRINGIFY (SY_SQLITE_SCHEMA_VERSION) ";"
  JOURNAL PROJECTION;

const char sy_sqlite_schema_guards[] = JOURNAL_GUARDS;

const char sy_sqlite_schema_renewed[] =
  "DROP TABLE IF EXISTS entry;"
  "DROP TABLE IF EXISTS action;"
  "DROP TABLE IF EXISTS task_search;"
  "DROP TABLE IF EXISTS task;"
  PROJECTION
  "PRAGMA user_version = " G_STRINGIFY (SY_SQLITE_SCHEMA_VERSION) ";";
