"""What is kept of the rack: lists of garments looked at, each with its money and what was told; written after every change."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Literal

import msgspec
import platformdirs

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.photos import write_whole
from fitdoctor.rack.question import Rack
from fitdoctor.rack.told import Told, after

_LAST = "last"
Sheet = Literal["start", "garment", "compare"]


class Draft(msgspec.Struct, frozen=True, kw_only=True):
    """What is typed about a garment before it is asked about; amounts as they were typed.

    Attributes:
        wages: whether an hour's work is counted.
        of: id of the garment whose particulars these are; empty: a new one.
    """

    garment: str = ""
    title: str = ""
    price: str = ""
    worth: str = ""
    rate: str = ""
    wages: bool = False
    of: str = ""


class OnRack(msgspec.Struct, frozen=True, kw_only=True):
    """One garment looked at.

    Attributes:
        told: in order; the rack follows from it.
        skipped: marks of questions left for later.
    """

    id: str
    garment: str
    title: str = ""
    price: float
    worth: float
    rate: float = 0.0
    hurry: bool = False
    told: tuple[Told, ...] = ()
    skipped: tuple[str, ...] = ()

    @property
    def rack(self) -> Rack:
        """The buyer with all that was told."""
        case = Case(garment=self.garment, title=self.title)
        return after(Rack(self.price, self.worth, self.rate, case, hurry=self.hurry), self.told)


class RackList(msgspec.Struct, frozen=True, kw_only=True):
    """Garments compared with one another.

    Attributes:
        at: id of the garment in hand; sheet: what is open.
        changed: when, as an ISO date and time.
    """

    id: str
    garments: tuple[OnRack, ...] = ()
    at: str = ""
    sheet: Sheet = "start"
    draft: Draft = Draft()
    changed: str = ""

    def garment(self, id_: str) -> OnRack | None:
        """A garment of the list."""
        return next((garment for garment in self.garments if garment.id == id_), None)

    def with_garment(self, garment: OnRack) -> RackList:
        """The list with a garment changed, or added at its end."""
        known = self.garment(garment.id) is not None
        changed = tuple(garment if one.id == garment.id else one for one in self.garments)
        return msgspec.structs.replace(self, garments=changed if known else (*self.garments, garment))


def lists_folder() -> Path:
    """Where the lists are kept."""
    return Path(platformdirs.user_data_dir("fitdoctor", appauthor=False)) / "rack"


@dataclass(frozen=True)
class Lists:
    """A folder of lists, each in a file of its own, written whole or not at all."""

    folder: Path

    def keep(self, one: RackList) -> RackList:
        """Write a list, and remember it as the last one.

        Raises:
            FitdoctorError: it could not be written.
        """
        stamped = msgspec.structs.replace(one, changed=datetime.now(UTC).isoformat(timespec="seconds"))
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            write_whole(self.folder / f"{one.id}.json", msgspec.json.format(msgspec.json.encode(stamped)))
            write_whole(self.folder / _LAST, one.id.encode())
        except OSError as error:
            reason = error.strerror or str(error)
            text = f"The list could not be kept: {reason[:1].lower()}{reason[1:]}."
            raise FitdoctorError(text, "What you entered is still here.") from error
        return stamped

    def all(self) -> tuple[tuple[RackList, ...], tuple[str, ...]]:
        """Every list that holds a garment, the last changed first, and a note for each file that could not be read."""
        found: list[RackList] = []
        notes: list[str] = []
        for path in self._files():
            try:
                found.append(msgspec.json.decode(path.read_bytes(), type=RackList))
            except (OSError, msgspec.MsgspecError) as error:
                notes.append(f"{path} could not be read and was left as it is ({error}).")
        full = (one for one in found if one.garments)
        return tuple(sorted(full, key=lambda one: one.changed, reverse=True)), tuple(notes)

    def last(self) -> tuple[RackList, str]:
        """The list that was in hand last, or a new one; and a note where that could not be read."""
        try:
            return msgspec.json.decode((self.folder / f"{(self.folder / _LAST).read_text().strip()}.json").read_bytes(), type=RackList), ""
        except FileNotFoundError:
            return self.new(), ""
        except (OSError, msgspec.MsgspecError) as error:
            return self.new(), f"The last list of the rack could not be read and was left as it is ({error})."

    def new(self) -> RackList:
        """An empty list with an id no kept one has."""
        taken = {path.stem for path in self._files()}
        return RackList(id=next(id_ for id_ in (f"list-{number}" for number in range(1, 100_000)) if id_ not in taken))

    def _files(self) -> Iterator[Path]:
        if self.folder.is_dir():
            yield from sorted(self.folder.glob("*.json"))
