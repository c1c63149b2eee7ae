"""What SQLite says when it cannot go on, in sentences with what to do."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from fitdoctor.errors import FitdoctorError

_WHAT_TO_DO: dict[tuple[int, ...], tuple[str, str]] = {
    (sqlite3.SQLITE_FULL,): (
        "The disk is full: the job book {path} could not keep the change.",
        "Make room on the disk and do it again; what was kept before is safe.",
    ),
    (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED): (
        "The job book {path} is being written by another window.",
        "Wait a moment and do it again.",
    ),
    (sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM, sqlite3.SQLITE_AUTH): (
        "The job book {path} cannot be opened for writing.",
        "Allow writing to the file and its folder, or choose another place for the book.",
    ),
    (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB): (
        "The job book {path} is damaged.",
        "It was left as it is. Set it aside to begin a new one, then bring in an earlier export.",
    ),
    (sqlite3.SQLITE_IOERR,): (
        "The disk did not do its work for the job book {path}.",
        "Look whether the disk is full or was taken out, and do it again; what was kept before is safe.",
    ),
    (sqlite3.SQLITE_TOOBIG,): ("That is too large for the job book {path}.", "Shorten it."),
}
_PRIMARY = 0xFF
"""SQLite's extended codes carry the plain one in their lowest byte."""


def damaged(path: Path) -> FitdoctorError:
    """The error for a file that does not hold together."""
    return _error(path, sqlite3.SQLITE_CORRUPT) or FitdoctorError(str(path))


def unwritable(path: Path) -> FitdoctorError:
    """The error for a place that takes no file."""
    return _error(path, sqlite3.SQLITE_READONLY) or FitdoctorError(str(path))


class DamagedBook(FitdoctorError):
    """The file does not hold together: it can be set aside, and a new one begun."""


class ChangedElsewhere(FitdoctorError):
    """Another window has changed the same thing meanwhile."""


@contextmanager
def said_plainly(path: Path) -> Iterator[None]:
    """Turn what the user can mend into a known error; anything else is a bug and stays what it is."""
    try:
        yield
    except sqlite3.Error as error:
        known = _error(path, getattr(error, "sqlite_errorcode", 0) & _PRIMARY)
        if known is None:
            raise
        raise known from error


def _error(path: Path, code: int) -> FitdoctorError | None:
    for codes, (text, hint) in _WHAT_TO_DO.items():
        if code in codes:
            kind = DamagedBook if sqlite3.SQLITE_CORRUPT in codes else FitdoctorError
            return kind(text.format(path=path), hint)
    return None
