"""Jobs out as JSON and CSV, jobs in as JSON: a bad file is refused whole, with every reason."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook, put
from fitdoctor.jobbook.history import put as put_reading
from fitdoctor.jobbook.incoming import Carried, CarriedPhoto, Export, read_export
from fitdoctor.jobbook.job import STATE_WORDS, Job, minutes_spent
from fitdoctor.jobbook.photos import write_whole
from fitdoctor.knowledge.knowledge import Knowledge

_FIRST_OF_A_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def export_json(book: JobBook, ids: Iterable[str], path: Path, with_photos: bool = True) -> int:
    """Write these jobs with their readings, and their photos inside the same file.

    Returns:
        How many jobs were written.

    Raises:
        FitdoctorError: a job is not in the book, or the file cannot be written; nothing is left of it then.
    """
    jobs = tuple(_carried(book, id_, with_photos) for id_ in ids)
    _write(path, msgspec.json.format(msgspec.json.encode(Export(jobs=jobs))))
    return len(jobs)


def export_csv(book: JobBook, ids: Iterable[str], path: Path, knowledge: Knowledge | None = None) -> int:
    """Write these jobs as a table for a spreadsheet: UTF-8 with a mark at the start, one line a job.

    Args:
        knowledge: to write causes and methods by their titles; without it by their ids.

    Returns:
        How many jobs were written.

    Raises:
        FitdoctorError: a job is not in the book, or the file cannot be written.
    """
    rows = [_row(book, book.job(id_), knowledge) for id_ in ids]
    text = io.StringIO()
    writer = csv.DictWriter(text, _COLUMNS)
    writer.writeheader()
    writer.writerows({name: _inert(value) for name, value in row.items()} for row in rows)
    _write(path, text.getvalue().encode("utf-8-sig"))
    return len(rows)


def import_json(book: JobBook, path: Path) -> int:
    """Bring jobs in from an export, all of them or none; a job that is in the book already, just the same, is passed over.

    Returns:
        How many jobs came in.

    Raises:
        FitdoctorError: the file is not sound, with every reason; or a job of it stands in the book and differs.
    """
    export = read_export(path)
    with book.file.writing() as connection:
        kept = {id_: doc for id_, doc in connection.execute("SELECT id, doc FROM job")}
        new = [carried for carried in export.jobs if carried.job.id not in kept]
        differing = [c.job for c in export.jobs if c.job.id in kept and msgspec.json.decode(kept[c.job.id], type=Job) != c.job]
        if differing:
            reasons = "\n".join(f"{path}: the job ‘{job.case.title or job.id}’ stands in the book and differs" for job in differing)
            raise FitdoctorError(reasons, "Nothing was brought in. Delete the job in the book first, or take it out of the file.")
        for carried in new:
            put(connection, carried.job)
            for number, reading in enumerate(carried.readings, start=1):
                put_reading(connection, carried.job.id, number, reading)
            for photo in carried.photos:
                book.photos.keep(connection, carried.job.id, photo.as_photo(), photo.content)
    return len(new)


def _carried(book: JobBook, id_: str, with_photos: bool) -> Carried:
    photos = book.photos.of(id_) if with_photos else ()
    inside = tuple(CarriedPhoto(name=photo.name, added=photo.added, content=book.photos.content(photo)) for photo in photos)
    return Carried(job=book.job(id_), readings=book.history.of(id_), photos=inside)


_COLUMNS = (
    "id",
    "wearer",
    "title",
    "garment",
    "state",
    "brought",
    "due",
    "closed",
    "result",
    "causes",
    "methods",
    "verdict",
    "minutes planned",
    "minutes spent",
    "amounts used, mm",
    "photos",
    "notes",
)


def _row(book: JobBook, job: Job, knowledge: Knowledge | None) -> dict[str, Any]:
    readings, outcome = book.history.of(job.id), job.outcome
    last = readings[-1] if readings else None
    spent = minutes_spent(job)
    causes = outcome.right if outcome else last.treat if last else job.case.treat
    return {
        "id": job.id,
        "wearer": job.case.wearer,
        "title": job.case.title,
        "garment": job.case.garment,
        "state": STATE_WORDS[job.state],
        "brought": job.brought or "",
        "due": job.due or "",
        "closed": outcome.closed.date() if outcome and outcome.closed else "",
        "result": outcome.result if outcome else "",
        "causes": "; ".join(_titles(knowledge, "causes", causes)),
        "methods": "; ".join(_titles(knowledge, "methods", last.methods if last else tuple(job.case.methods.values()))),
        "verdict": last.level if last else "",
        "minutes planned": f"{last.minutes[1]:.0f}" if last and last.methods else "",
        "minutes spent": f"{spent:g}" if spent is not None else "",
        "amounts used, mm": "; ".join(f"{at} {mm:g}" for at, mm in outcome.used_mm.items()) if outcome else "",
        "photos": len(book.photos.of(job.id)),
        "notes": job.case.notes,
    }


def _titles(knowledge: Knowledge | None, kind: str, ids: Iterable[str]) -> Iterator[str]:
    known = knowledge.kind(kind) if knowledge else {}
    yield from (known[id_].title if id_ in known else id_ for id_ in ids)


def _inert(value: Any) -> Any:
    """Text that a spreadsheet would take for a formula is put in as text."""
    return f"'{value}" if isinstance(value, str) and value.startswith(_FIRST_OF_A_FORMULA) else value


def _write(path: Path, content: bytes) -> None:
    try:
        write_whole(path, content)
    except OSError as error:
        raise FitdoctorError(f"{path} could not be written: {error.strerror}.", "Choose another folder.") from error
