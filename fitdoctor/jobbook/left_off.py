"""Where its fitter left off with a job. No part of the job itself, so that leafing through the pages is no change of it."""

from __future__ import annotations

from dataclasses import dataclass

import msgspec

from fitdoctor.jobbook.keeping import from_doc
from fitdoctor.jobbook.opening import BookFile

_LAST = "last"


class LeftOff(msgspec.Struct, frozen=True, kw_only=True):
    """A place in the window.

    Attributes:
        step: the page that was open; view: the side of the figure that was shown.
        depths: measurements that were typed as the depth of a fold; the case holds what is taken up in all.
        aside: facts answered ‘not known’.
        drafts: what was typed and cannot be used yet, by field.
        written: whether the sheet was printed or saved since the last change.
    """

    step: str = "garment"
    view: str = "back"
    depths: tuple[str, ...] = ()
    aside: tuple[str, ...] = ()
    drafts: dict[str, str] = {}
    written: bool = False


@dataclass(frozen=True, eq=False)
class Places:
    """The places of one book."""

    file: BookFile

    def of(self, job: str) -> LeftOff:
        """Where one left off with a job; at its beginning where nothing was kept."""
        with self.file.looking() as connection:
            row = connection.execute("SELECT doc FROM left_off WHERE job = ?", (job,)).fetchone()
        return from_doc(row[0], LeftOff, "place") if row else LeftOff()

    def keep(self, job: str, place: LeftOff) -> None:
        """Remember the place, and this job as the last in hand; a job no longer in the book is passed over."""
        doc = msgspec.json.encode(place).decode()
        with self.file.writing() as connection:
            if connection.execute("SELECT 1 FROM job WHERE id = ?", (job,)).fetchone() is None:
                return
            kept = "INSERT INTO left_off VALUES (?, ?) ON CONFLICT (job) DO UPDATE SET doc = excluded.doc"
            connection.execute(kept, (job, doc))
            last = "INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value"
            connection.execute(last, (_LAST, job))

    def last(self) -> str:
        """Id of the job that was in hand last, which may be gone; nothing in a book that was never used."""
        with self.file.looking() as connection:
            row = connection.execute("SELECT value FROM setting WHERE name = ?", (_LAST,)).fetchone()
        return str(row[0]) if row else ""
