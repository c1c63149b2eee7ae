"""What a buyer told, in order: the rack follows from it, so that any answer can be taken back."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Literal

import msgspec

from fitdoctor.rack.question import Kind, Rack, RackQuestion, answered, looked_for

SEEN = "seen"
"""A symptom the buyer saw without being asked."""


class Told(msgspec.Struct, frozen=True, kw_only=True):
    """One thing told.

    Attributes:
        kind, id: the question; for `SEEN` the symptom.
        value: the answer, or `CANNOT_TELL`.
        said: question and answer in a few words, to be read again.
    """

    kind: Kind | Literal["seen"]
    id: str
    value: str = "yes"
    seconds: float = 0.0
    said: str = ""


def told_to(question: RackQuestion, value: str, said: str = "") -> Told:
    """The answer to a question."""
    return Told(kind=question.kind, id=question.id, value=value, seconds=question.seconds, said=said)


def after(rack: Rack, told: Iterable[Told]) -> Rack:
    """The rack after all that was told."""
    for one in told:
        if one.kind == "seen":
            seen = one.id in rack.case.seen
            rack = rack if seen else replace(rack, case=looked_for(rack.case, one.id, seen=True), to_be_named="")
        else:
            rack = answered(rack, one.kind, one.id, one.value, one.seconds)
    return rack


def without(told: Sequence[Told], place: int) -> tuple[Told, ...]:
    """What is left when the answer at a place is taken back.

    ‘Something shows there’ and what was named for it go together: taking either back asks for the side anew.
    """
    gone = {place}
    if _is_something(told[place]) and place + 1 < len(told) and _names(told[place + 1], told[place]):
        gone.add(place + 1)
    if place and _is_something(told[place - 1]) and _names(told[place], told[place - 1]):
        gone.add(place - 1)
    return tuple(one for at, one in enumerate(told) if at not in gone)


def _is_something(one: Told) -> bool:
    return one.kind == "side" and one.value == "yes"


def _names(one: Told, side: Told) -> bool:
    return one.kind == "seen" or (one.kind == "symptom" and one.id == side.id)
