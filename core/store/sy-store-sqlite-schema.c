/* SPDX-License-Identifier: MIT */
#include "sy-store-sqlite-private.h"

/*
 * The journal is what counts; task and task_search are a projection that can be made anew from it.
 * The triggers guard against accidents (a stray tool, a bug), not against somebody who means to.
 * SQLite keeps no NaN and no infinity that every reader understands: none is NULL, unbounded is a flag.
 */
#define JOURNAL \
  "CREATE TABLE journal (" \
  "  number INTEGER PRIMARY KEY CHECK (number > 0)," \
  "  hash BLOB NOT NULL CHECK (length (hash) = 32)," \
  "  kind INTEGER NOT NULL," \
  "  item TEXT NOT NULL," \
  "  event BLOB NOT NULL" \
  ") STRICT;" \
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
  "  withdrawn INTEGER NOT NULL CHECK (withdrawn IN (0, 1))" \
  ") STRICT;" \
  "CREATE INDEX task_name ON task (name);" \
  "CREATE INDEX task_line ON task (line);" \
  /* Holds the words of search_text as sy_store_fold() makes them: parted by blanks, nothing left to fold. */ \
  "CREATE VIRTUAL TABLE task_search USING fts5 (words, tokenize = 'ascii', prefix = '2 3');"

const char sy_sqlite_schema[] =
  "PRAGMA application_id = " G_STRINGIFY (SY_SQLITE_APPLICATION_ID) ";"
  "PRAGMA user_version = " G_STRINGIFY (SY_SQLITE_SCHEMA_VERSION) ";"
  JOURNAL PROJECTION;

const char sy_sqlite_schema_renewed[] =
  "DROP TABLE task_search;"
  "DROP TABLE task;"
  PROJECTION
  "PRAGMA user_version = " G_STRINGIFY (SY_SQLITE_SCHEMA_VERSION) ";";
