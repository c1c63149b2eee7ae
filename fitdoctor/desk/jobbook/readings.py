"""Readings in words: when, on what occasion, what was thought; and two of them line by line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime

from fitdoctor.desk.jobbook.days import day_words
from fitdoctor.desk.words import tr, upper_first
from fitdoctor.diagnosis.ranking import chance_word
from fitdoctor.jobbook.job import STATE_WORDS
from fitdoctor.jobbook.reading import Beside, Reading, side_by_side
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import TAKE_WORDS, duration
from fitdoctor.shop import Shop
from fitdoctor.verdict import LEVEL_WORDS

PARTS = {
    "fact": "Known of the garment",
    "seen": "Seen",
    "looked over": "Looked over",
    "answer": "Checks",
    "measured": "Measured",
    "cause": "Causes",
    "treat": "Treated",
    "method": "Work",
    "mark": "Marks",
    "verdict": "Can it be done",
    "minutes": "Time",
}
_KINDS = {"fact": "features", "seen": "symptoms", "answer": "checks", "measured": "measurements", "cause": "causes", "treat": "causes"}
_NOT_THERE = "–"


@dataclass(frozen=True)
class Compared:
    """One line of two readings: what it is, and how it stood in each."""

    part: str
    what: str
    before: str
    after: str
    changed: bool


def when(at: datetime, today: date) -> str:
    """‘today, 15:10’."""
    here = at.astimezone()
    return tr("{day}, {time}", day=day_words(here.date(), today), time=f"{here:%H:%M}")


def headline(reading: Reading, today: date) -> str:
    """When, and on what occasion."""
    return upper_first(", ".join(part for part in (when(reading.at, today), reading.note or tr(STATE_WORDS[reading.state])) if part))


def thought(knowledge: Knowledge, reading: Reading) -> str:
    """The likeliest cause with its word, and the verdict."""
    first = reading.thoughts[0] if reading.thoughts else None
    title = _title(knowledge, "causes", first.cause, first.title).rstrip(".") if first else ""
    cause = f"{title}: {tr(chance_word(first.chance))}." if first else tr("No cause stood out.")
    verdict = tr(LEVEL_WORDS[reading.level]) if reading.level in LEVEL_WORDS else ""
    return f"{cause} {verdict}".strip()


def compared(knowledge: Knowledge, shop: Shop, before: Reading, after: Reading) -> Iterator[Compared]:
    """Two readings line by line, in the words of the handbook and the shop's own lengths."""
    for line in side_by_side(before, after):
        one, other = (_said(knowledge, shop, reading, line, text) for reading, text in ((before, line.before), (after, line.after)))
        yield Compared(tr(PARTS[line.part]), _what(knowledge, before, after, line), one, other, one != other)


def _what(knowledge: Knowledge, before: Reading, after: Reading, line: Beside) -> str:
    if line.part == "mark":
        marks = {mark.id: mark for reading in (before, after) for mark in reading.marks}
        return upper_first(marks[line.what].where)
    if line.part == "method":
        return _title(knowledge, "methods", line.what, line.what)
    titles = {thought.cause: thought.title for reading in (before, after) for thought in reading.thoughts}
    kind = _KINDS.get(line.part)
    return _title(knowledge, kind, line.what, titles.get(line.what, line.what)).rstrip(".") if kind else upper_first(line.what)


def _said(knowledge: Knowledge, shop: Shop, reading: Reading, line: Beside, text: str) -> str:
    """How a line stood in one reading."""
    if not text:
        return _NOT_THERE
    if line.part == "fact":
        feature = knowledge.features.get(line.what)
        return next((value.title for value in feature.values if value.id == text), text) if feature else text
    if line.part == "measured":
        return shop.length(reading.case.measured[line.what].mm)
    if line.part == "cause":
        return tr(chance_word(next(thought.chance for thought in reading.thoughts if thought.cause == line.what)))
    if line.part == "mark":
        mark = next(mark for mark in reading.marks if mark.id == line.what)
        return f"{tr(TAKE_WORDS.get(mark.take, mark.take))}, {tr('in all')} {shop.length(mark.total_mm)}"
    if line.part == "verdict":
        return tr(LEVEL_WORDS[text]) if text in LEVEL_WORDS else text
    if line.part == "minutes":
        return (
            tr("{low} to {high}", low=duration(reading.minutes[0]), high=duration(reading.minutes[2])) if reading.minutes[2] else _NOT_THERE
        )
    return tr(text.replace("-", " "))


def _title(knowledge: Knowledge, kind: str, id_: str, otherwise: str) -> str:
    entry = knowledge.kind(kind).get(id_)
    return entry.title if entry else otherwise
