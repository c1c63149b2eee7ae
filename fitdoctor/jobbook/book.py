"""The job book: jobs added, changed, taken back, closed, deleted for good; each change one transaction, kept before it is said to be."""

from __future__ import annotations

import sqlite3
from collections.abc import Callable, Sequence
from contextlib import closing
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from uuid import uuid4

import msgspec

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.history import History
from fitdoctor.jobbook.job import Job, Outcome, Photo, check_wearer
from fitdoctor.jobbook.keeping import COLUMNS, from_doc, row_of
from fitdoctor.jobbook.learning import Learning
from fitdoctor.jobbook.left_off import Places
from fitdoctor.jobbook.merge import merged
from fitdoctor.jobbook.opening import PATIENCE_SECONDS, BookFile, copies, open_file, usual_place
from fitdoctor.jobbook.photos import Photos, read_photo
from fitdoctor.jobbook.shape import STEPS, Step
from fitdoctor.jobbook.trouble import ChangedElsewhere, said_plainly

MOST_EARLIER = 100
"""Changes of one job that can be taken back."""

replace = msgspec.structs.replace
_INSERT = f"INSERT INTO job ({', '.join(COLUMNS)}) VALUES ({', '.join(f':{name}' for name in COLUMNS)})"
_UPDATE = f"UPDATE job SET {', '.join(f'{name} = :{name}' for name in COLUMNS[1:])} WHERE id = :id"


def now() -> datetime:
    """The present moment."""
    return datetime.now(UTC)


@dataclass(frozen=True, eq=False)
class JobBook:
    """An open book. `with open_book() as book:` closes it again.

    Attributes:
        notes: what went wrong on opening and does not keep the book from being used.
    """

    file: BookFile
    clock: Callable[[], datetime] = now
    notes: tuple[str, ...] = ()
    photos: Photos = field(init=False)
    history: History = field(init=False)
    learning: Learning = field(init=False)
    places: Places = field(init=False)

    def __post_init__(self) -> None:
        for name, part in (("photos", Photos), ("history", History), ("learning", Learning), ("places", Places)):
            object.__setattr__(self, name, part(self.file))

    def __enter__(self) -> JobBook:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.file.close()

    def job(self, id_: str) -> Job:
        """The job as it stands now.

        Raises:
            FitdoctorError: it is not in the book.
        """
        with self.file.looking() as connection:
            return _stored(connection, id_)

    def state_of_the_file(self) -> int:
        """A number that changes when another window has changed the book, so that lists can be drawn anew."""
        with self.file.looking() as connection:
            return int(connection.execute("PRAGMA data_version").fetchone()[0])

    def add(self, job: Job | Case) -> Job:
        """Put a job into the book; it comes in today unless it says otherwise.

        Raises:
            FitdoctorError: the wearer is more than initials, or the book cannot be written.
        """
        given = job if isinstance(job, Job) else Job(case=job)
        check_wearer(given.case.wearer)
        at = self.clock()
        brought = given.brought or at.astimezone().date()
        kept = _stamped(replace(given, id=uuid4().hex[:16], revision=0, brought=brought, added=at), at)
        with self.file.writing() as connection:
            connection.execute(_INSERT, row_of(kept))
        return kept

    def change(self, before: Job, after: Job) -> Job:
        """Keep a change; what another window changed meanwhile is kept too, where it is another field.

        Args:
            before: the job as it was read from the book; after: as it should become.

        Returns:
            The job as it stands in the book now.

        Raises:
            FitdoctorError: the same field was changed in another window, the job was deleted there, or the book cannot be written.
        """
        check_wearer(after.case.wearer)
        with self.file.writing() as connection:
            stored = _stored(connection, before.id)
            wanted, clashes = (after, ()) if stored.revision == before.revision else merged(before, stored, after)
            if clashes:
                text = f"This job was changed in another window meanwhile: {', '.join(clashes)}."
                raise ChangedElsewhere(text, "Look at it as it is now, and make your change again.")
            wanted = replace(wanted, id=stored.id, added=stored.added, reached=stored.reached, changed=stored.changed)
            if replace(wanted, revision=stored.revision) == stored:
                return stored
            kept = _stamped(replace(wanted, revision=stored.revision), self.clock())
            _remember(connection, stored)
            connection.execute(_UPDATE, row_of(kept))
        return kept

    def undo(self, job: Job) -> Job:
        """Take back the last change of a job.

        Raises:
            FitdoctorError: there is none, or another window has changed the job since it was read.
        """
        with self.file.writing() as connection:
            stored = _stored(connection, job.id)
            if stored.revision != job.revision:
                raise ChangedElsewhere("This job was changed in another window meanwhile.", "Look at it as it is now.")
            row = connection.execute("SELECT revision, doc FROM earlier WHERE job = ? ORDER BY revision DESC", (job.id,)).fetchone()
            if row is None:
                raise FitdoctorError("There is no change of this job to take back.")
            kept = replace(from_doc(row[1], Job), revision=stored.revision + 1, changed=self.clock())
            connection.execute("DELETE FROM earlier WHERE job = ? AND revision = ?", (job.id, row[0]))
            connection.execute(_UPDATE, row_of(kept))
        return kept

    def close_job(self, job: Job, outcome: Outcome) -> Job:
        """Close a job with how it came out; what was right teaches from now on. Closing anew replaces the outcome."""
        state = job.state if job.state == "given-back" else "done"
        return self.change(job, replace(job, outcome=replace(outcome, closed=outcome.closed or self.clock()), state=state))

    def reopen(self, job: Job) -> Job:
        """Take the outcome away; the job teaches no more."""
        return self.change(job, replace(job, outcome=None, state="tried-on"))

    def delete(self, id_: str) -> None:
        """Delete a job for good: its rows overwritten, its photos wiped, in the copies kept before upgrades too.

        Raises:
            FitdoctorError: it is not in the book, or something of it could not be wiped.
        """
        with self.file.writing() as connection:
            _stored(connection, id_)
            connection.execute("DELETE FROM job WHERE id = ?", (id_,))
        self.photos.sweep()
        with self.file.looking() as connection:
            connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
        for copy in copies(self.file.path):
            _delete_in_copy(copy, id_)

    def add_photo(self, id_: str, source: Path) -> Photo:
        """Copy a photo into the book.

        Raises:
            FitdoctorError: it is no photo, cannot be read, or there is no room.
        """
        photo, content = read_photo(source, self.clock())
        with self.file.writing() as connection:
            _stored(connection, id_)
            self.photos.keep(connection, id_, photo, content)
        return photo

    def remove_photo(self, id_: str, photo: Photo) -> None:
        """Take a photo out for good."""
        with self.file.writing() as connection:
            connection.execute("DELETE FROM photo WHERE job = ? AND sha256 = ?", (id_, photo.sha256))
        self.photos.sweep()


def open_book(
    path: Path | None = None,
    clock: Callable[[], datetime] = now,
    steps: Sequence[Step] = STEPS,
    patience_seconds: float = PATIENCE_SECONDS,
) -> JobBook:
    """Open the book, or begin one.

    Args:
        path: the file; the user's own data folder if left out.

    Raises:
        FitdoctorError: it cannot be opened; the file was left as it is.
    """
    file = open_file(path or usual_place(), steps, patience_seconds)
    try:
        Photos(file).sweep()
    except FitdoctorError as error:
        return JobBook(file, clock, (str(error),))
    return JobBook(file, clock)


def put(connection: sqlite3.Connection, job: Job) -> None:
    """Put a job in as it is, id and all, inside a transaction; for jobs that come from an export."""
    connection.execute(_INSERT, row_of(job))


def _stored(connection: sqlite3.Connection, id_: str) -> Job:
    row = connection.execute("SELECT doc FROM job WHERE id = ?", (id_,)).fetchone()
    if row is None:
        raise FitdoctorError("This job is not in the book.", "It may have been deleted in another window.")
    return from_doc(row[0], Job)


def _stamped(job: Job, at: datetime) -> Job:
    reached = job.reached if job.state in job.reached else {**job.reached, job.state: at}
    return replace(job, revision=job.revision + 1, changed=at, reached=reached)


def _remember(connection: sqlite3.Connection, job: Job) -> None:
    doc = row_of(job)["doc"]
    connection.execute("INSERT INTO earlier (job, revision, doc) VALUES (?, ?, ?)", (job.id, job.revision, doc))
    keep_from = "SELECT revision FROM earlier WHERE job = ?1 ORDER BY revision DESC LIMIT 1 OFFSET ?2"
    connection.execute(f"DELETE FROM earlier WHERE job = ?1 AND revision <= ({keep_from})", (job.id, MOST_EARLIER))


def _delete_in_copy(copy: Path, id_: str) -> None:
    with said_plainly(copy), closing(sqlite3.connect(copy, isolation_level=None)) as connection:
        connection.execute("PRAGMA secure_delete = ON")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("DELETE FROM job WHERE id = ?", (id_,))
        connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
