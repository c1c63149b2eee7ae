"""The tables of the book, version by version. A step once shipped is never changed: a new shape is a new step."""

from __future__ import annotations

APPLICATION_ID = 0x66697464
"""`fitd`: marks a file as a job book among other SQLite files."""

Step = tuple[str, ...]
"""The statements that bring the file from one version to the next."""

STEPS: tuple[Step, ...] = (
    (
        # `doc` is the whole job as JSON; the other columns are drawn from it for finding and sorting.
        """CREATE TABLE job (
            id TEXT PRIMARY KEY, revision INTEGER NOT NULL, doc TEXT NOT NULL, words TEXT NOT NULL, garment TEXT NOT NULL,
            wearer TEXT NOT NULL, title TEXT NOT NULL, state TEXT NOT NULL, brought TEXT, due TEXT, closed TEXT,
            added TEXT NOT NULL, changed TEXT NOT NULL) STRICT""",
        "CREATE INDEX job_due ON job (due)",
        "CREATE INDEX job_closed ON job (closed)",
        # The job as it was before each change, for taking a change back.
        """CREATE TABLE earlier (
            job TEXT NOT NULL REFERENCES job ON DELETE CASCADE, revision INTEGER NOT NULL, doc TEXT NOT NULL,
            PRIMARY KEY (job, revision)) STRICT""",
        """CREATE TABLE reading (
            job TEXT NOT NULL REFERENCES job ON DELETE CASCADE, number INTEGER NOT NULL, doc TEXT NOT NULL,
            PRIMARY KEY (job, number)) STRICT""",
        """CREATE TABLE photo (
            job TEXT NOT NULL REFERENCES job ON DELETE CASCADE, sha256 TEXT NOT NULL, name TEXT NOT NULL, added TEXT NOT NULL,
            PRIMARY KEY (job, sha256)) STRICT""",
        "CREATE INDEX photo_sha256 ON photo (sha256)",
        # Closed jobs that no longer teach: what was learned was reset after them.
        "CREATE TABLE forgotten (job TEXT PRIMARY KEY REFERENCES job ON DELETE CASCADE) STRICT",
        "CREATE TABLE setting (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT",
    ),
    # The page that was open when the garment was put down.
    ("CREATE TABLE left_off (job TEXT PRIMARY KEY REFERENCES job ON DELETE CASCADE, doc TEXT NOT NULL) STRICT",),
)
