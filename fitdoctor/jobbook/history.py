"""What was thought of each job when."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.keeping import from_doc
from fitdoctor.jobbook.opening import BookFile
from fitdoctor.jobbook.reading import Reading, same_in_substance


@dataclass(frozen=True, eq=False)
class History:
    """The readings of one book."""

    file: BookFile

    def of(self, job: str) -> tuple[Reading, ...]:
        """A job's readings, the oldest first."""
        with self.file.looking() as connection:
            rows = connection.execute("SELECT doc FROM reading WHERE job = ? ORDER BY number", (job,)).fetchall()
        return tuple(from_doc(doc, Reading, "reading") for (doc,) in rows)

    def note(self, job: str, reading: Reading) -> bool:
        """Add a reading to a job.

        Returns:
            False where it says what the last one says; nothing is added then.

        Raises:
            FitdoctorError: the job is not in the book.
        """
        with self.file.writing() as connection:
            if connection.execute("SELECT 1 FROM job WHERE id = ?", (job,)).fetchone() is None:
                raise FitdoctorError("This job is not in the book.", "It may have been deleted in another window.")
            last = connection.execute("SELECT number, doc FROM reading WHERE job = ? ORDER BY number DESC", (job,)).fetchone()
            if last and same_in_substance(from_doc(last[1], Reading, "reading"), reading):
                return False
            put(connection, job, last[0] + 1 if last else 1, reading)
        return True


def put(connection: sqlite3.Connection, job: str, number: int, reading: Reading) -> None:
    """Put a reading in, inside a transaction."""
    doc = msgspec.json.encode(reading).decode()
    connection.execute("INSERT INTO reading (job, number, doc) VALUES (?, ?, ?)", (job, number, doc))
