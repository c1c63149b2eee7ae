"""A reading: what was thought of a garment at one moment. Readings are added, never changed: they are held against the outcome."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING

import msgspec

from fitdoctor.case import Case
from fitdoctor.jobbook.job import Moment, State

if TYPE_CHECKING:
    from fitdoctor.assess import Assessment

_WORTH_NAMING = 0.02


class Thought(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A cause, by the title it had then, and its chance from 0 to 1."""

    cause: str
    title: str
    chance: float


class MarkThen(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """An amount on the cloth as it was worked out; mm.

    Attributes:
        id: method and seam, numbered where a method marks one seam twice: `lower-back-waist-seam.back-waist-seam`.
    """

    id: str
    where: str
    take: str
    layer: str
    each_mm: float
    total_mm: float
    convention: str


class Reading(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What was known, thought and planned at one moment.

    Attributes:
        at: when; note: on what occasion, such as ‘after the first try-on’.
        chances: every cause that could bring on what was seen, or is treated -> its chance.
        thoughts: the causes worth naming, likeliest first.
        level, verdict: the verdict as a code and as a sentence.
        minutes: of the plan, at best, likely, at worst.
    """

    at: Moment
    note: str = ""
    state: State
    case: Case
    chances: dict[str, float] = {}
    thoughts: tuple[Thought, ...] = ()
    treat: tuple[str, ...] = ()
    methods: tuple[str, ...] = ()
    marks: tuple[MarkThen, ...] = ()
    level: str = ""
    verdict: str = ""
    minutes: tuple[float, float, float] = (0.0, 0.0, 0.0)


@dataclass(frozen=True)
class Beside:
    """One line of two readings side by side; what was not there then is empty."""

    part: str
    what: str
    before: str
    after: str

    @property
    def changed(self) -> bool:
        """Whether the two readings differ here."""
        return self.before != self.after


def reading_of(assessment: Assessment, at: datetime, state: State, note: str = "") -> Reading:
    """An assessment as it goes into the book."""
    diagnosis = assessment.diagnosis
    able = diagnosis.net.able | frozenset(assessment.treat)
    weighed = [cause for cause in diagnosis.causes if cause.id in able]
    return Reading(
        at=at,
        note=note,
        state=state,
        case=assessment.case,
        chances={cause.id: round(cause.probability, 6) for cause in weighed},
        thoughts=tuple(
            Thought(cause=c.id, title=c.title, chance=round(c.probability, 6)) for c in weighed if c.probability >= _WORTH_NAMING
        ),
        treat=assessment.treat,
        methods=assessment.methods,
        marks=tuple(_marks(assessment)),
        level=assessment.verdict.level,
        verdict=assessment.verdict.sentence,
        minutes=assessment.plan.minutes,
    )


def same_in_substance(one: Reading, other: Reading) -> bool:
    """Whether two readings differ in their time alone."""
    return msgspec.structs.replace(one, at=other.at) == other


def side_by_side(before: Reading, after: Reading) -> tuple[Beside, ...]:
    """Two readings line by line: what was seen, answered, measured, thought, decided, marked; equal lines too."""
    rows = {key: ("", "") for reading in (before, after) for key, _ in _lines(reading)}
    for place, reading in enumerate((before, after)):
        for key, text in _lines(reading):
            rows[key] = (text, rows[key][1]) if place == 0 else (rows[key][0], text)
    parts = list(dict.fromkeys(part for part, _ in rows))
    lines = [Beside(part, what, *texts) for (part, what), texts in rows.items()]
    return tuple(sorted(lines, key=lambda line: parts.index(line.part)))


def _lines(reading: Reading) -> Iterator[tuple[tuple[str, str], str]]:
    """(part, what) -> text; ids stand for what the knowledge has a title for."""
    case = reading.case
    yield from ((("fact", feature), value) for feature, value in case.facts.items())
    yield from ((("seen", symptom), "seen") for symptom in case.seen)
    yield from ((("seen", symptom), "not there") for symptom in case.not_seen)
    yield from ((("looked over", view), "yes") for view in case.looked)
    yield from ((("answer", check), answer) for check, answer in case.answers.items())
    yield from ((("measured", id_), f"{measured.mm:.10g} mm") for id_, measured in case.measured.items())
    yield from ((("cause", thought.cause), f"{thought.chance:.0%}") for thought in reading.thoughts)
    yield from ((("treat", cause), "yes") for cause in reading.treat)
    yield from ((("method", method), "yes") for method in reading.methods)
    yield from ((("mark", mark.id), f"{mark.take} {mark.total_mm:.10g} mm") for mark in reading.marks)
    yield ("verdict", ""), reading.level
    yield ("minutes", ""), " to ".join(f"{minutes:.0f}" for minutes in (reading.minutes[0], reading.minutes[2]))


def _marks(assessment: Assessment) -> Iterator[MarkThen]:
    worked = [(w.method, mark) for w in assessment.amounts if w.calculation for mark in w.calculation.marks]
    for id_, (_, mark) in zip(_numbered(f"{method}.{mark.at}" for method, mark in worked), worked, strict=True):
        yield MarkThen(
            id=id_,
            where=mark.where,
            take=mark.take,
            layer=mark.layer,
            each_mm=mark.each_mm,
            total_mm=mark.total_mm,
            convention=mark.convention,
        )


def _numbered(names: Iterable[str]) -> Iterator[str]:
    """The second of the same name becomes name-2, the third name-3."""
    times: dict[str, int] = {}
    for name in names:
        times[name] = times.get(name, 0) + 1
        yield name if times[name] == 1 else f"{name}-{times[name]}"
