"""Jobs into rows of the book and back."""

from __future__ import annotations

import unicodedata
from datetime import UTC, datetime
from typing import Any, TypeVar

import msgspec

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import Job

T = TypeVar("T")

COLUMNS = ("id", "revision", "doc", "words", "garment", "wearer", "title", "state", "brought", "due", "closed", "added", "changed")


def row_of(job: Job) -> dict[str, Any]:
    """The columns of a job; `doc` is the whole of it."""
    case, outcome = job.case, job.outcome
    return {
        "id": job.id,
        "revision": job.revision,
        "doc": msgspec.json.encode(job).decode(),
        "words": plain_words(" ".join((case.wearer, case.title, case.notes, *_ids(job), outcome.note if outcome else ""))),
        "garment": case.garment,
        "wearer": case.wearer,
        "title": case.title,
        "state": job.state,
        "brought": job.brought and job.brought.isoformat(),
        "due": job.due and job.due.isoformat(),
        "closed": _moment(outcome.closed) if outcome and outcome.closed else None,
        "added": _moment(job.added) if job.added else "",
        "changed": _moment(job.changed) if job.changed else "",
    }


def from_doc(doc: str, kind: type[T], what: str = "job") -> T:
    """A record from its column.

    Raises:
        FitdoctorError: it does not read; another program wrote into the book.
    """
    try:
        return msgspec.json.decode(doc, type=kind)
    except msgspec.MsgspecError as error:
        raise FitdoctorError(f"A {what} in the job book cannot be read ({error}).", "Set the book aside, or bring in an export.") from error


def plain_words(text: str) -> str:
    """Small letters without accents, words parted by single blanks, so that a search forgives both."""
    small = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold())
    bare = "".join(letter for letter in small if not unicodedata.combining(letter))
    return " ".join(bare.replace("-", " ").split())


def _moment(at: datetime) -> str:
    """In one time zone, so that moments sort as text."""
    return at.astimezone(UTC).isoformat()


def _ids(job: Job) -> tuple[str, ...]:
    """What the search finds a job by besides what was typed."""
    case, right = job.case, job.outcome.right if job.outcome else ()
    return (job.id, case.garment, *case.seen, *case.treat, *case.methods.values(), *right)
