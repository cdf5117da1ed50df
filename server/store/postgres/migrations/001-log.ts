/**
 * The log, what is made from it, and what is kept outside it, as in SQLite. Texts compare byte by byte (collation "C"),
 * so that both databases list in the same order.
 *
 * The triggers stop slips, not somebody who drops them first; that is what the chain and its verifier are for.
 *
 * @param schema the schema that holds the tables
 */
export function log001(schema: string): string {
  return `
CREATE TABLE ${schema}.log (
  seq bigint PRIMARY KEY,
  stream text COLLATE "C" NOT NULL,
  place bigint NOT NULL,
  hash text NOT NULL,
  bytes text NOT NULL,
  UNIQUE (stream, place)
);

CREATE TABLE ${schema}.blob (
  hash text COLLATE "C" PRIMARY KEY,
  bytes bytea NOT NULL
);

CREATE TABLE ${schema}.answered (
  request_id text COLLATE "C" PRIMARY KEY,
  person text,
  fingerprint text NOT NULL,
  answer text NOT NULL
);

CREATE TABLE ${schema}.summary (
  kind text COLLATE "C" NOT NULL,
  id text COLLATE "C" NOT NULL,
  sort text COLLATE "C" NOT NULL,
  body text NOT NULL,
  PRIMARY KEY (kind, id)
);

CREATE INDEX summary_in_order ON ${schema}.summary (kind, sort, id);

CREATE TABLE ${schema}.outside (
  kind text COLLATE "C" NOT NULL,
  id text COLLATE "C" NOT NULL,
  body text NOT NULL,
  PRIMARY KEY (kind, id)
);

CREATE FUNCTION ${schema}.is_never_changed() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION 'what the log holds is never changed and never deleted';
END $$;

CREATE TRIGGER log_is_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON ${schema}.log
FOR EACH STATEMENT EXECUTE FUNCTION ${schema}.is_never_changed();

CREATE TRIGGER blob_is_never_changed BEFORE UPDATE OR DELETE OR TRUNCATE ON ${schema}.blob
FOR EACH STATEMENT EXECUTE FUNCTION ${schema}.is_never_changed();

CREATE FUNCTION ${schema}.log_only_grows() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.seq <> 1 + coalesce((SELECT max(seq) FROM ${schema}.log), 0)
    OR NEW.place <> 1 + coalesce((SELECT max(place) FROM ${schema}.log WHERE stream = NEW.stream), 0)
  THEN
    RAISE EXCEPTION 'an entry must follow the last one of the log and of its stream';
  END IF;
  RETURN NEW;
END $$;

CREATE TRIGGER log_only_grows_at_its_end BEFORE INSERT ON ${schema}.log
FOR EACH ROW EXECUTE FUNCTION ${schema}.log_only_grows();
`;
}
