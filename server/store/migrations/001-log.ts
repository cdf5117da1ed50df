/**
 * The log, what is made from it, and what is kept outside it.
 *
 * The triggers make the log append-only for every connection, also for one that leaves `recursive_triggers` off:
 * a REPLACE has to pass the insert trigger before it could delete anything. They stop slips, not somebody who drops
 * them first; that is what the chain and its verifier are for.
 */
export const log001 = `
CREATE TABLE log (
  seq INTEGER PRIMARY KEY,
  stream TEXT NOT NULL,
  place INTEGER NOT NULL,
  hash TEXT NOT NULL,
  bytes TEXT NOT NULL,
  UNIQUE (stream, place)
) STRICT;

CREATE TRIGGER log_is_never_updated BEFORE UPDATE ON log BEGIN
  SELECT RAISE(ABORT, 'an entry of the log is never changed');
END;

CREATE TRIGGER log_is_never_deleted BEFORE DELETE ON log BEGIN
  SELECT RAISE(ABORT, 'an entry of the log is never deleted');
END;

CREATE TRIGGER log_only_grows_at_its_end BEFORE INSERT ON log
WHEN NEW.seq <> 1 + coalesce((SELECT max(seq) FROM log), 0)
  OR NEW.place <> 1 + coalesce((SELECT max(place) FROM log WHERE stream = NEW.stream), 0)
BEGIN
  SELECT RAISE(ABORT, 'an entry must follow the last one of the log and of its stream');
END;

CREATE TABLE answered (
  request_id TEXT PRIMARY KEY,
  person TEXT,
  fingerprint TEXT NOT NULL,
  answer TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE summary (
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  sort TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

CREATE INDEX summary_in_order ON summary (kind, sort, id);

CREATE TABLE summary_next (
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  sort TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;

CREATE TABLE outside (
  kind TEXT NOT NULL,
  id TEXT NOT NULL,
  body TEXT NOT NULL,
  PRIMARY KEY (kind, id)
) STRICT, WITHOUT ROWID;
`;
