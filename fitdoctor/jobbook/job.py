"""What the job book keeps of one job."""

from __future__ import annotations

import re
from datetime import date, datetime
from typing import Annotated, Literal, get_args

import msgspec
from msgspec import Meta

from fitdoctor.case import Case
from fitdoctor.errors import FitdoctorError

State = Literal["looked-at", "marked", "basted", "tried-on", "done", "given-back"]
STATES: tuple[State, ...] = get_args(State)
STATE_WORDS: dict[State, str] = {
    "looked-at": "looked at",
    "marked": "marked",
    "basted": "basted",
    "tried-on": "tried on",
    "done": "done",
    "given-back": "given back",
}
Result = Literal["as-wanted", "better", "no-better", "given-up"]
RESULT_WORDS: dict[Result, str] = {
    "as-wanted": "hangs as wanted",
    "better": "better, not yet right",
    "no-better": "no better",
    "given-up": "given up",
}
Moment = Annotated[datetime, Meta(tz=True)]
Spent = Annotated[float, Meta(ge=0)]
JobId = Annotated[str, Meta(pattern="^[a-z0-9]+(-[a-z0-9]+)*$", max_length=40)]

_INITIALS_OR_NUMBER = re.compile(r"(?:[^\W\d_]\W*){1,3}|[^\s@]*\d[^\s@]*")
_MOST_LETTERS = 20
_MOST_DIGITS = 8


class Outcome(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How a job came out, as it was closed.

    Attributes:
        closed: when; the book sets it where it is missing.
        right: the causes that turned out to be present; none: nothing the program knows was the matter.
        used_mm: mark of the last reading -> the amount used in all, mm.
        minutes: spent on the whole job; None: the minutes of the operations count.
    """

    closed: Moment | None = None
    right: tuple[str, ...] = ()
    used_mm: dict[str, float] = {}
    minutes: Spent | None = None
    result: Result = "as-wanted"
    note: str = ""


class Job(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One job as it stands. A change is another Job with the same id, handed to the book.

    Attributes:
        id: given by the book.
        revision: counts the changes; the book sets it, and knows by it whether another window was quicker.
        case: garment, wearer (initials or ticket number only), what is seen, answered, measured and decided.
        brought, due: the day it came in, the day it is due.
        reached: when the job first came into each state; the book sets it.
        minutes: operation of the plan -> minutes spent on it.
        outcome: None while the job is open.
        added, changed: set by the book.
    """

    id: JobId = ""
    revision: Annotated[int, Meta(ge=0, le=2**31)] = 0
    case: Case
    state: State = "looked-at"
    brought: date | None = None
    due: date | None = None
    reached: dict[State, Moment] = {}
    minutes: dict[str, Spent] = {}
    outcome: Outcome | None = None
    added: Moment | None = None
    changed: Moment | None = None


class Photo(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A photo of a job; its content lies in the book's folder under its hash."""

    sha256: Annotated[str, Meta(pattern="^[0-9a-f]{64}$")]
    name: str
    added: Moment

    @property
    def ending(self) -> str:
        """The end of the file's name, with its dot, in small letters."""
        dot = self.name.rfind(".")
        return self.name[dot:].lower() if dot > 0 else ""


def minutes_spent(job: Job) -> float | None:
    """Minutes spent on the whole job; None where none were written down."""
    if job.outcome is not None and job.outcome.minutes is not None:
        return job.outcome.minutes
    return sum(job.minutes.values()) if job.minutes else None


def check_wearer(wearer: str) -> None:
    """Let only initials or a ticket number pass, so that the book never names a person.

    Initials are words of up to three letters; a word with a digit is a number. A name that short cannot be told from initials.

    Raises:
        FitdoctorError: it looks like a name, an address or a telephone number.
    """
    words = wearer.split()
    longest = len(wearer) > _MOST_LETTERS or sum(map(str.isdigit, wearer)) > _MOST_DIGITS
    if longest or any(not _INITIALS_OR_NUMBER.fullmatch(word.strip("#№./-")) for word in words if word.strip("#№./-")):
        raise FitdoctorError(f"‘{wearer}’ looks like more than initials.", "The job book keeps initials or a ticket number only.")
