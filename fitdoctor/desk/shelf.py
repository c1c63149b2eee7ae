"""The garments at hand, each in a file of its own: written whole or not at all after every change."""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import platformdirs

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError

_LAST = "last"
SEEN = "Seen: "
"How a line of the notes begins that says what is seen in the fitter's own words."


class Kept(msgspec.Struct, frozen=True, kw_only=True):
    """One garment as it is kept: the case, and where its fitter left off.

    Attributes:
        step: the page that was open; view: the side of the figure that was shown.
        depths: measurements that were typed as the depth of a fold; the case holds what is taken up in all.
        aside: facts answered ‘not known’.
        drafts: what was typed and cannot be used yet, by field.
        written: whether the sheet was printed or saved since the last change.
        changed: when, as an ISO date and time.
    """

    id: str
    case: Case
    step: str = "garment"
    view: str = "back"
    depths: tuple[str, ...] = ()
    aside: tuple[str, ...] = ()
    drafts: dict[str, str] = {}
    written: bool = False
    changed: str = ""


def cases_folder() -> Path:
    """Where the cases are kept."""
    return Path(platformdirs.user_data_dir("fitdoctor", appauthor=False)) / "cases"


@dataclass(frozen=True)
class Shelf:
    """A folder of kept cases."""

    folder: Path

    def keep(self, kept: Kept) -> Kept:
        """Write a case, and remember it as the last one.

        Raises:
            FitdoctorError: it could not be written.
        """
        stamped = msgspec.structs.replace(kept, changed=datetime.now(UTC).isoformat(timespec="seconds"))
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            _write_whole(self.folder / f"{kept.id}.json", msgspec.json.format(msgspec.json.encode(stamped)))
            _write_whole(self.folder / _LAST, kept.id.encode())
        except OSError as error:
            reason = error.strerror or str(error)
            text = f"The garment could not be kept: {reason[:1].lower()}{reason[1:]}."
            raise FitdoctorError(text, "What you entered is still here.") from error
        return stamped

    def all(self) -> tuple[tuple[Kept, ...], tuple[str, ...]]:
        """Every kept case, the last changed first, and a note for each file that could not be read."""
        found: list[Kept] = []
        notes: list[str] = []
        for path in self._files():
            try:
                found.append(msgspec.json.decode(path.read_bytes(), type=Kept))
            except (OSError, msgspec.MsgspecError) as error:
                notes.append(f"{path} could not be read and was left as it is ({error}).")
        return tuple(sorted(found, key=lambda kept: kept.changed, reverse=True)), tuple(notes)

    def last(self) -> str:
        """Id of the case that was open last, or nothing."""
        try:
            return (self.folder / _LAST).read_text().strip()
        except OSError:
            return ""

    def drop(self, id_: str) -> None:
        """Take a case off the shelf for good."""
        (self.folder / f"{id_}.json").unlink(missing_ok=True)

    def new_id(self, garment: str) -> str:
        """An id no kept case has."""
        taken = {path.stem for path in self._files()}
        stem = garment or "garment"
        return next(id_ for id_ in (f"{stem}-{number}" for number in range(1, 100_000)) if id_ not in taken)

    def _files(self) -> Iterator[Path]:
        if self.folder.is_dir():
            yield from sorted(self.folder.glob("*.json"))


def _write_whole(path: Path, content: bytes) -> None:
    draft = path.with_suffix(".new")
    with draft.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    draft.replace(path)


def own_words(notes: str) -> list[str]:
    """What is seen and no line of the knowledge fits."""
    return [line.removeprefix(SEEN) for line in notes.splitlines() if line.startswith(SEEN)]
