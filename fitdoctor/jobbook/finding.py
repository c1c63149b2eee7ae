"""Finding jobs: words, filters, order."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any, Literal

from fitdoctor.jobbook.job import STATES, State
from fitdoctor.jobbook.keeping import plain_words
from fitdoctor.jobbook.opening import BookFile

Order = Literal["due", "brought", "changed", "added", "closed", "wearer", "title", "garment", "state"]


@dataclass(frozen=True)
class Line:
    """A job as a line of a list."""

    id: str
    wearer: str
    title: str
    garment: str
    state: State
    brought: date | None
    due: date | None
    closed: datetime | None
    changed: datetime
    added: datetime
    photos: int


@dataclass(frozen=True)
class Sought:
    """What is looked for; what is left empty does not narrow.

    Attributes:
        words: all of them must occur, anywhere; case and accents are forgiven.
        open: True: open jobs alone; False: closed ones alone.
        due_by: due on this day or before; jobs without a due day are left out then.
        brought_from, brought_to: the day it came in, both days counted.
    """

    words: str = ""
    states: tuple[State, ...] = ()
    garments: tuple[str, ...] = ()
    open: bool | None = None
    due_by: date | None = None
    brought_from: date | None = None
    brought_to: date | None = None
    order: Order = "due"
    backwards: bool = False


def find(file: BookFile, sought: Sought | None = None) -> tuple[Line, ...]:
    """The jobs looked for, in order; those that lack what they are ordered by come last, either way."""
    sought = sought or Sought()
    conditions = list(_conditions(sought))
    where = " AND ".join(condition for condition, _ in conditions) or "1"
    photos = "(SELECT count(*) FROM photo WHERE photo.job = job.id)"
    query = f"SELECT id, wearer, title, garment, state, brought, due, closed, changed, added, {photos} FROM job WHERE {where}"
    with file.looking() as connection:
        rows = connection.execute(query, [value for _, values in conditions for value in values]).fetchall()
    lines = sorted(map(_line, rows), key=lambda line: (line.added, line.id))
    key = _KEYS[sought.order]
    there = sorted((line for line in lines if key(line) is not None), key=key, reverse=sought.backwards)
    return (*there, *(line for line in lines if key(line) is None))


def _conditions(sought: Sought) -> Iterator[tuple[str, tuple[Any, ...]]]:
    for word in plain_words(sought.words).split():
        yield "instr(words, ?) > 0", (word,)
    for column, wanted in (("state", sought.states), ("garment", sought.garments)):
        if wanted:
            yield f"{column} IN ({', '.join('?' * len(wanted))})", wanted
    if sought.open is not None:
        yield f"closed IS {'' if sought.open else 'NOT '}NULL", ()
    days = (("due <= ?", sought.due_by), ("brought >= ?", sought.brought_from), ("brought <= ?", sought.brought_to))
    for condition, day in days:
        if day:
            yield condition, (day.isoformat(),)


def _line(row: tuple[Any, ...]) -> Line:
    id_, wearer, title, garment, state, brought, due, closed, changed, added, photos = row
    return Line(
        id=id_,
        wearer=wearer,
        title=title,
        garment=garment,
        state=state,
        brought=date.fromisoformat(brought) if brought else None,
        due=date.fromisoformat(due) if due else None,
        closed=datetime.fromisoformat(closed) if closed else None,
        changed=datetime.fromisoformat(changed),
        added=datetime.fromisoformat(added),
        photos=photos,
    )


def _text(text: str) -> str | None:
    return plain_words(text) or None


_KEYS: dict[Order, Callable[[Line], Any]] = {
    "due": lambda line: line.due,
    "brought": lambda line: line.brought,
    "changed": lambda line: line.changed,
    "added": lambda line: line.added,
    "closed": lambda line: line.closed,
    "wearer": lambda line: _text(line.wearer),
    "title": lambda line: _text(line.title),
    "garment": lambda line: _text(line.garment),
    "state": lambda line: STATES.index(line.state),
}
