"""A buyer at the rack, a question that can be answered there in seconds, and the rack after its answer."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal, cast, get_args

import msgspec

from fitdoctor.case import Answer, Case
from fitdoctor.knowledge.entries import View

Kind = Literal["feature", "check", "side", "symptom"]
Decides = Literal["cause", "work"]
CANNOT_TELL = "not-known"
"""The answer that is always open."""
SIDES: tuple[str, ...] = get_args(View)
HURRY_SECONDS = 10.0


@dataclass(frozen=True)
class Rack:
    """A buyer with a garment in the hand.

    Attributes:
        worth: of the garment to the buyer if it fitted, in the money of the price.
        rate_per_hour: of the buyer's own time or the shop's work; 0 counts no wages.
        aside: questions put aside because they could not be answered, by their marks.
        to_be_named: a side where something shows that nobody has named yet; empty: none.
        hurry: only the deal breakers, in `HURRY_SECONDS`.
        spent_seconds: used up by the questions so far.
    """

    price: float
    worth: float
    rate_per_hour: float
    case: Case
    aside: frozenset[str] = frozenset()
    to_be_named: str = ""
    hurry: bool = False
    spent_seconds: float = 0.0

    @property
    def sides_not_looked_over(self) -> tuple[str, ...]:
        """Sides nobody has looked over yet."""
        return tuple(side for side in SIDES if side not in self.case.looked and mark("side", side) not in self.aside)

    @property
    def as_far_as_seen(self) -> Case:
        """The case with nothing but what was named on the sides not looked over: how it stands until somebody looks."""
        return msgspec.structs.replace(self.case, looked=(*self.case.looked, *self.sides_not_looked_over))


@dataclass(frozen=True)
class AnswerChoice:
    """One answer to tap: its value, what the button says, how to recognise it, and how likely it is."""

    value: str
    title: str
    look: str
    chance: float


@dataclass(frozen=True)
class RackQuestion:
    """One question that needs no tools; "can't tell" (`CANNOT_TELL`) is always an answer as well.

    Attributes:
        kind: a feature of the garment; a check; a whole side to look over; which symptom it is that shows on a side (the id is the side).
        how: how to find out.
        gain: what knowing the answer is worth on average, in money.
        breaks: chance of an answer after which the garment is better left.
        decides: what is the matter (cause), or whether it can be done (work).
    """

    id: str
    kind: Kind
    ask: str
    how: str
    answers: tuple[AnswerChoice, ...]
    seconds: float
    gain: float
    breaks: float
    decides: Decides

    @property
    def mark(self) -> str:
        """Its name among the questions put aside."""
        return mark(self.kind, self.id)


def mark(kind: str, id_: str) -> str:
    """How a question is named among those put aside."""
    return f"{kind}/{id_}"


def answered(rack: Rack, kind: Kind, id_: str, value: str, seconds: float = 0.0) -> Rack:
    """The rack with one answer more. What cannot be told is put aside; a side where something shows asks which symptom it is."""
    spent = replace(rack, spent_seconds=rack.spent_seconds + seconds)
    if value == CANNOT_TELL:
        return replace(spent, aside=rack.aside | {mark(kind, id_), *((mark("side", id_),) if kind == "symptom" else ())}, to_be_named="")
    if kind == "side" and value == "yes":
        return replace(spent, to_be_named=id_)
    return replace(spent, case=_case_after(rack.case, kind, id_, value), to_be_named="")


def looked_for(case: Case, symptom: str, seen: bool) -> Case:
    """The case after one symptom was looked for."""
    if seen:
        return msgspec.structs.replace(case, seen=(*case.seen, symptom))
    return msgspec.structs.replace(case, not_seen=(*case.not_seen, symptom))


def _case_after(case: Case, kind: Kind, id_: str, value: str) -> Case:
    change = msgspec.structs.replace
    if kind == "feature":
        return change(case, facts={**case.facts, id_: value})
    if kind == "check":
        return change(case, answers={**case.answers, id_: cast(Answer, value)})
    if kind == "side":
        return change(case, looked=(*case.looked, id_))
    return looked_for(case, value, seen=True)
