"""Photos of a job: copied into a folder beside the book under the hash of their content, wiped when no job has them any more.

A file is written before its row, and wiped after its row is gone, both inside a transaction: killed at any moment, every photo in the book
has its file, and what is left over is swept at the next opening. Overwriting cannot reach what a disk or a snapshot keeps by itself.
"""

from __future__ import annotations

import hashlib
import os
import re
import sqlite3
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import Photo
from fitdoctor.jobbook.opening import BookFile

ENDINGS = (".jpg", ".jpeg", ".png", ".webp", ".heic", ".heif", ".tif", ".tiff", ".bmp", ".gif")
MOST_BYTES = 64 * 1024 * 1024
_BLOCK = 1 << 20
_OURS = re.compile(r"(?P<sha256>[0-9a-f]{64})\.[a-z]+(?P<part>\.part)?")
"""Only what the book itself has put there is ever wiped."""


@dataclass(frozen=True, eq=False)
class Photos:
    """The photos of one book."""

    file: BookFile

    @property
    def folder(self) -> Path:
        """Where the contents lie."""
        return self.file.path.with_name(f"{self.file.path.stem}-photos")

    def of(self, job: str) -> tuple[Photo, ...]:
        """A job's photos, the oldest first."""
        with self.file.looking() as connection:
            rows = connection.execute("SELECT sha256, name, added FROM photo WHERE job = ? ORDER BY added, name", (job,)).fetchall()
        return tuple(Photo(sha256=sha256, name=name, added=datetime.fromisoformat(added)) for sha256, name, added in rows)

    def path(self, photo: Photo) -> Path:
        """Where a photo's content lies."""
        return self.folder / f"{photo.sha256}{photo.ending}"

    def content(self, photo: Photo) -> bytes:
        """A photo's content.

        Raises:
            FitdoctorError: someone took the file away.
        """
        try:
            return self.path(photo).read_bytes()
        except OSError as error:
            raise FitdoctorError(f"The photo ‘{photo.name}’ cannot be read: {error.strerror}.", "Take it out and add it again.") from error

    def keep(self, connection: sqlite3.Connection, job: str, photo: Photo, content: bytes) -> None:
        """Put a photo to a job inside a transaction; the same photo twice is once.

        Raises:
            FitdoctorError: there is no room, or the folder takes no file.
        """
        path = self.path(photo)
        if not path.exists():
            try:
                self.folder.mkdir(exist_ok=True)
                write_whole(path, content)
            except OSError as error:
                text = f"The photo ‘{photo.name}’ could not be copied: {error.strerror}."
                raise FitdoctorError(text, f"Make room, or allow writing to {self.folder}.") from error
        values = (job, photo.sha256, photo.name, photo.added.isoformat())
        connection.execute("INSERT INTO photo (job, sha256, name, added) VALUES (?, ?, ?, ?) ON CONFLICT DO NOTHING", values)

    def sweep(self) -> None:
        """Wipe every file in the folder that no job has."""
        if not self.folder.is_dir():
            return
        with self.file.writing() as connection:
            wanted = {sha256 for (sha256,) in connection.execute("SELECT DISTINCT sha256 FROM photo")}
            for path in sorted(self.folder.iterdir()):
                ours = _OURS.fullmatch(path.name)
                if ours and (ours["sha256"] not in wanted or ours["part"]):
                    _wipe(path)


def read_photo(source: Path, at: datetime) -> tuple[Photo, bytes]:
    """A photo file as it goes into the book.

    Raises:
        FitdoctorError: it cannot be read, is no photo by its name, or is too large.
    """
    if source.suffix.lower() not in ENDINGS:
        raise FitdoctorError(f"‘{source.name}’ is no photo.", f"Its name must end in {', '.join(ENDINGS)}.")
    try:
        if source.stat().st_size > MOST_BYTES:
            raise FitdoctorError(f"The photo ‘{source.name}’ is larger than {MOST_BYTES >> 20} MB.", "Make it smaller first.")
        content = source.read_bytes()
    except OSError as error:
        raise FitdoctorError(f"The photo ‘{source.name}’ cannot be read: {error.strerror}.", "Choose another file.") from error
    return Photo(sha256=sha256_of(content), name=source.name, added=at), content


def sha256_of(content: bytes) -> str:
    """The hash a content is kept under."""
    return hashlib.sha256(content).hexdigest()


def write_whole(path: Path, content: bytes) -> None:
    """Write a file whole or not at all.

    Raises:
        OSError: it could not be written; nothing is left of it.
    """
    draft = path.with_name(f"{path.name}.part")
    try:
        with draft.open("wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        draft.replace(path)
    except OSError:
        draft.unlink(missing_ok=True)
        raise


def _wipe(path: Path) -> None:
    """Overwrite a file, then take it away.

    Raises:
        FitdoctorError: it could not be.
    """
    try:
        with path.open("r+b") as file:
            for _ in range(0, path.stat().st_size, _BLOCK):
                file.write(bytes(_BLOCK))
            file.flush()
            os.fsync(file.fileno())
        path.unlink(missing_ok=True)
    except OSError as error:
        raise FitdoctorError(f"{path} could not be wiped: {error.strerror}.", "Take the file away by hand.") from error
