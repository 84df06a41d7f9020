-- A log book: entries of one job, added and never changed.
CREATE TABLE jobs (
    id TEXT PRIMARY KEY NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE entries (
    job  TEXT NOT NULL REFERENCES jobs (id),
    id   TEXT NOT NULL,
    at   TEXT NOT NULL,                          -- RFC 3339, UTC
    hand TEXT NOT NULL,                          -- initials
    act  TEXT NOT NULL CHECK (json_valid(act)),  -- JSON, as job::Act writes it
    PRIMARY KEY (job, id)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER entries_are_never_changed BEFORE UPDATE ON entries
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;

CREATE TRIGGER entries_are_never_removed BEFORE DELETE ON entries
BEGIN SELECT RAISE(ABORT, 'an entry is never removed'); END;

-- The same entry may come twice; another one under its name may not.
CREATE TRIGGER entries_are_never_replaced BEFORE INSERT ON entries
WHEN EXISTS (
    SELECT 1 FROM entries
    WHERE job = NEW.job AND id = NEW.id
      AND (at <> NEW.at OR hand <> NEW.hand OR act <> NEW.act)
)
BEGIN SELECT RAISE(ABORT, 'an entry is never replaced'); END;

CREATE TRIGGER jobs_are_never_removed BEFORE DELETE ON jobs
BEGIN SELECT RAISE(ABORT, 'a job is never removed'); END;
