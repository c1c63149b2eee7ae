"""What was answered, and what it shows: progress over time, lines known, pairs mixed up."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime

import msgspec

from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.exercise import LEAVE_ALONE, POINTS, Exercise, Feedback, Kind, Mark, Question, Skill, pair
from fitdoctor.practice.lines import CLEAN

_MOVING = 20
"""Answers a point of the curve is the mean of."""


class Answered(msgspec.Struct, frozen=True, kw_only=True):
    """One answer as it is kept.

    Attributes:
        at: when, as an ISO date and time in UTC.
        set: the words of the set it belongs to, and its seed; empty where the schedule chose the exercise.
        exercise: id within the set.
        skill: key of what it trains; confused: the two that were taken for one another, the right one first.
        answer, right: in words.
    """

    at: str
    kind: Kind
    garment: str
    skill: str
    mark: Mark
    view: str = ""
    set: str = ""
    seed: str = ""
    exercise: str = ""
    ask: str = ""
    answer: str = ""
    right: str = ""
    confused: tuple[str, ...] = ()

    @property
    def when(self) -> datetime:
        return datetime.fromisoformat(self.at)


@dataclass(frozen=True)
class Known:
    """How many lines of one side of a garment are known, of those met."""

    garment: str
    view: str
    known: int
    met: int


@dataclass(frozen=True)
class Point:
    """One point of the curve: answers so far, mean of the last ones, and the day."""

    answers: int
    share: float
    day: date


@dataclass(frozen=True)
class Confusion:
    """The right answer, the one that was given, and how often."""

    right: str
    given: str
    times: int


def answered(
    exercise: Exercise, question: Question, feedback: Feedback, said: str, at: datetime, set_: str = "", seed: str = ""
) -> Answered:
    """An answer for the record.

    Args:
        said: the answer in words; at: now, with its time zone.
    """
    return Answered(
        at=at.astimezone(UTC).isoformat(timespec="seconds"),
        kind=question.kind,
        garment=exercise.case.garment,
        skill=question.skill.key,
        mark=feedback.mark,
        view=question.picture.view,
        set=set_,
        seed=seed,
        exercise=exercise.id,
        ask=question.ask,
        answer=said,
        right=feedback.right,
        confused=feedback.told.confused,
    )


def confused_pair(answer: Answered) -> Skill | None:
    """The pair of entries that was mixed up, as a skill of its own; words of a verdict or a convention are none."""
    ids = answer.confused
    told = answer.kind in ("lines", "cause", "garment") and LEAVE_ALONE not in ids
    return pair(*ids) if len(ids) == 2 and told else None


def curve(answers: Sequence[Answered], over: int = _MOVING) -> tuple[Point, ...]:
    """The share of points got over the last answers, after each answer."""
    points = [POINTS[answer.mark] for answer in answers]
    last = [points[max(0, end - over) : end] for end in range(1, len(points) + 1)]
    return tuple(Point(at, sum(some) / len(some), answers[at - 1].when.date()) for at, some in enumerate(last, 1))


def lines_known(answers: Iterable[Answered], settled: Mapping[str, bool]) -> tuple[Known, ...]:
    """For each side of each garment the lines known, of those met.

    Args:
        settled: skill key -> whether it has left the first steps of the schedule and was not lost again.
    """
    met: dict[tuple[str, str], set[str]] = {}
    for answer in answers:
        if answer.skill.startswith("symptom:"):
            met.setdefault((answer.garment, answer.view), set()).add(answer.skill)
    return tuple(
        Known(garment, view, sum(settled.get(key, False) for key in keys), len(keys)) for (garment, view), keys in sorted(met.items())
    )


def confusions(answers: Iterable[Answered], kinds: Sequence[Kind] = ("lines", "cause", "garment")) -> tuple[Confusion, ...]:
    """What was taken for what, the most frequent first."""
    counted = Counter(a.confused for a in answers if len(a.confused) == 2 and a.kind in kinds)
    ordered = sorted(counted.items(), key=lambda item: (-item[1], item[0]))
    return tuple(Confusion(right, given, times) for (right, given), times in ordered)


@dataclass(frozen=True)
class Matrix:
    """A table of confusions: a row for what was right, a column for what was said, in the same order."""

    ids: tuple[str, ...]
    times: tuple[tuple[int, ...], ...]


def matrix(found: Sequence[Confusion], most: int = 8) -> Matrix:
    """The most frequent confusions as a table of so many entries; of those in it none is left out."""
    kept: dict[str, None] = {}
    for one in found:
        both = dict.fromkeys((*kept, one.right, one.given))
        kept = both if len(both) <= most else kept
    ids = tuple(kept)
    cells = {(one.right, one.given): one.times for one in found}
    return Matrix(ids, tuple(tuple(cells.get((right, given), 0) for given in ids) for right in ids))


def title_of(knowledge: Knowledge, id_: str) -> str:
    """What an entry in a confusion is called."""
    if id_ == LEAVE_ALONE:
        return CLEAN.partition(":")[0]
    return next(_titles(knowledge, id_), id_)


def _titles(knowledge: Knowledge, id_: str) -> Iterator[str]:
    for kind in ("symptoms", "causes", "checks", "conditions", "methods"):
        entry = knowledge.kind(kind).get(id_)
        if entry is not None:
            yield entry.short or entry.title
