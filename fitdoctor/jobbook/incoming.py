"""An export as it is read: either sound from end to end, or refused with everything that is wrong with it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Literal

import msgspec

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import Job, Moment, Photo, check_wearer
from fitdoctor.jobbook.photos import ENDINGS, MOST_BYTES, sha256_of
from fitdoctor.jobbook.reading import Reading
from fitdoctor.knowledge.read.records import faults

FORMAT: Literal[1] = 1


class CarriedPhoto(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A photo with its content; in JSON the content is base64."""

    name: str
    added: Moment
    content: bytes

    def as_photo(self) -> Photo:
        """The photo as the book names it."""
        return Photo(sha256=sha256_of(self.content), name=self.name, added=self.added)


class Carried(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One job with all that belongs to it."""

    job: Job
    readings: tuple[Reading, ...] = ()
    photos: tuple[CarriedPhoto, ...] = ()


class Export(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """The whole file."""

    format: Literal[1] = FORMAT
    jobs: tuple[Carried, ...]


def read_export(path: Path) -> Export:
    """Read an export.

    Raises:
        FitdoctorError: it cannot be read or is not sound; every reason on a line of its own.
    """
    try:
        plain = msgspec.json.decode(path.read_bytes())
    except OSError as error:
        raise FitdoctorError(f"{path} cannot be read: {error.strerror}.", "Choose another file.") from error
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError) as error:
        raise FitdoctorError(f"{path} is not JSON ({error}).", "Choose a file that the job book has written.") from error
    export = _converted(plain)
    reasons = [fault.text for fault in faults(plain, Export)] if export is None else list(_against_sense(export))
    if export is None or reasons:
        raise FitdoctorError("\n".join(f"{path}: {reason}" for reason in reasons), "Nothing was brought in.")
    return export


def _converted(plain: Any) -> Export | None:
    """The file where it fits its records; None where the faults have to be looked for, which takes far longer."""
    try:
        export = msgspec.convert(plain, Export)
    except msgspec.ValidationError:
        return None
    known = frozenset(Case.__struct_fields__)
    cases = (inner["case"] for carried in plain["jobs"] for inner in (carried["job"], *carried.get("readings", ())))
    return export if all(known.issuperset(case) for case in cases) else None


def _against_sense(export: Export) -> Iterator[str]:
    """What fits the records and still cannot be."""
    times = Counter(carried.job.id for carried in export.jobs)
    yield from (f"the job ‘{id_}’ stands there {number} times" for id_, number in times.items() if number > 1 and id_)
    for number, carried in enumerate(export.jobs, start=1):
        yield from (f"jobs.{number}: {reason}" for reason in _job_against_sense(carried))


def _job_against_sense(carried: Carried) -> Iterator[str]:
    job = carried.job
    needed: dict[str, Any] = {"id": job.id, "added": job.added, "changed": job.changed, "garment": job.case.garment}
    yield from (f"job: the field ‘{name}’ is missing" for name, value in needed.items() if not value)
    if job.outcome is not None and job.outcome.closed is None:
        yield "job: closed without a day"
    for case in (job.case, *(reading.case for reading in carried.readings)):
        try:
            check_wearer(case.wearer)
        except FitdoctorError as error:
            yield error.text
    for photo in carried.photos:
        if not photo.name.lower().endswith(ENDINGS) or not 0 < len(photo.content) <= MOST_BYTES:
            yield f"‘{photo.name}’ is no photo that the book could keep"
