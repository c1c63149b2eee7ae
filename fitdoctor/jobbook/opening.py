"""Opening the book's file: looked over before it is touched, brought to the present shape, and every change one transaction."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

import platformdirs

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.shape import APPLICATION_ID, STEPS, Step
from fitdoctor.jobbook.trouble import damaged, said_plainly, unwritable

PATIENCE_SECONDS = 5.0
"""How long a change waits for another window's."""


def usual_place() -> Path:
    """Where the book lies if nothing else is said: the user's own data folder."""
    return Path(platformdirs.user_data_dir("fitdoctor", appauthor=False)) / "jobs.db"


@dataclass(frozen=True, eq=False)
class BookFile:
    """The open file."""

    path: Path
    connection: sqlite3.Connection

    @contextmanager
    def looking(self) -> Iterator[sqlite3.Connection]:
        """Read; what goes wrong is a known error."""
        with said_plainly(self.path):
            yield self.connection

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: kept whole when the block ends, and nothing of it when the block or the disk fails."""
        with said_plainly(self.path):
            self.connection.execute("BEGIN IMMEDIATE")
            try:
                yield self.connection
                self.connection.execute("COMMIT")
            except BaseException:
                if self.connection.in_transaction:
                    self.connection.execute("ROLLBACK")
                raise

    def close(self) -> None:
        """Give the file back."""
        self.connection.close()


def open_file(path: Path, steps: Sequence[Step] = STEPS, patience_seconds: float = PATIENCE_SECONDS) -> BookFile:
    """Open the file, or begin it.

    Raises:
        FitdoctorError: it is damaged, of a newer program, no job book, locked, or its place takes no file. It was not touched then.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        begun = path.exists() and path.stat().st_size > 0
    except OSError as error:
        raise unwritable(path) from error
    if begun and not path.is_file():
        raise unwritable(path)
    if begun:
        _look_over(path, len(steps), patience_seconds)
    with said_plainly(path):
        connection = sqlite3.connect(path, timeout=patience_seconds, isolation_level=None)
        try:
            _set_safe(connection)
            _bring_up(BookFile(path, connection), steps)
        except BaseException:
            connection.close()
            raise
    return BookFile(path, connection)


def set_aside(path: Path, now: datetime) -> Path:
    """Rename a book that cannot be opened, with all that belongs to it, so that a new one can begin; nothing is lost.

    Returns:
        Where the file lies now.

    Raises:
        FitdoctorError: it could not be renamed.
    """
    aside = path.with_name(f"{path.stem}-set-aside-{now:%Y-%m-%d-%H%M%S}{path.suffix}")
    try:
        for ending in ("-wal", "-shm", ""):
            part = Path(f"{path}{ending}")
            if part.exists():
                part.rename(f"{aside}{ending}")
    except OSError as error:
        raise unwritable(path) from error
    return aside


def copies(path: Path) -> tuple[Path, ...]:
    """The copies kept before the file was brought to a newer shape."""
    start = f"{path.stem}-before-version-"
    return tuple(sorted(p for p in path.parent.iterdir() if p.name.startswith(start) and p.suffix == path.suffix))


def _look_over(path: Path, newest: int, patience_seconds: float) -> None:
    """Read only, so that a file that is refused stays as it is, its write-ahead log included.

    A window killed while it began the book leaves a rollback journal, which only a writer may take back.
    """
    mode = "rw" if Path(f"{path}-journal").exists() else "ro"
    address = f"{path.absolute().as_uri()}?mode={mode}"
    with said_plainly(path), closing(sqlite3.connect(address, uri=True, timeout=patience_seconds)) as look:
        version, mark = _pragma(look, "user_version"), _pragma(look, "application_id")
        if mark != APPLICATION_ID and (version or look.execute("SELECT 1 FROM sqlite_master").fetchone()):
            raise FitdoctorError(f"{path} is not a job book.", "Choose another file.")
        if version > newest:
            text = f"The job book {path} was written by a newer version of this program (its shape is {version}, known here is {newest})."
            raise FitdoctorError(text, "Install the newer version; the file was left as it is.")
        if _pragma(look, "integrity_check") != "ok" or look.execute("PRAGMA foreign_key_check").fetchone():
            raise damaged(path)


def _set_safe(connection: sqlite3.Connection) -> None:
    """A write-ahead log flushed with every change, and deleted content overwritten."""
    connection.execute("PRAGMA journal_mode = WAL")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA secure_delete = ON")
    connection.execute("PRAGMA foreign_keys = ON")


def _bring_up(file: BookFile, steps: Sequence[Step]) -> None:
    version = _pragma(file.connection, "user_version")
    if version >= len(steps):
        return
    if version:
        _keep_copy(file, version)
    with file.writing() as connection:
        # Another window may have been quicker; what it has done is not done again.
        for number in range(_pragma(connection, "user_version"), len(steps)):
            for statement in steps[number]:
                connection.execute(statement)
            connection.execute(f"PRAGMA user_version = {number + 1}")
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")


def _keep_copy(file: BookFile, version: int) -> None:
    """The whole book as it was, under its own name only once it is complete."""
    kept = file.path.with_name(f"{file.path.stem}-before-version-{version + 1}{file.path.suffix}")
    draft = kept.with_name(f"{kept.name}.part")
    try:
        draft.unlink(missing_ok=True)
        with closing(sqlite3.connect(draft)) as target:
            file.connection.backup(target)
        draft.replace(kept)
    except OSError as error:
        raise unwritable(kept) from error


def _pragma(connection: sqlite3.Connection, name: str) -> Any:
    return connection.execute(f"PRAGMA {name}").fetchone()[0]
