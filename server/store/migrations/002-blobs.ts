/** Photos, by the SHA-256 of their bytes; an entry names them, so that the chain covers them. Append-only as the log is. */
export const blobs002 = `
CREATE TABLE blob (
  hash TEXT NOT NULL UNIQUE,
  bytes BLOB NOT NULL
) STRICT;

CREATE TRIGGER blob_is_never_updated BEFORE UPDATE ON blob BEGIN
  SELECT RAISE(ABORT, 'a photo of the log is never changed');
END;

CREATE TRIGGER blob_is_never_deleted BEFORE DELETE ON blob BEGIN
  SELECT RAISE(ABORT, 'a photo of the log is never deleted');
END;

CREATE TRIGGER blob_is_never_replaced BEFORE INSERT ON blob
WHEN EXISTS (SELECT 1 FROM blob WHERE hash = NEW.hash)
BEGIN
  SELECT RAISE(IGNORE);
END;
`;
