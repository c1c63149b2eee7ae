"""The seven steps by name, and how a step can stand."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Thread = Literal["sewn", "basted", "none"]
TITLES: dict[str, str] = {
    "garment": "The garment",
    "shows": "What shows",
    "narrow": "Narrow it down",
    "measure": "Measure",
    "done": "Can it be done",
    "plan": "Plan and marks",
    "sheet": "The sheet",
}
STEPS = tuple(TITLES)


@dataclass(frozen=True)
class StepState:
    """How a step stands: in words, and by the line below them: sewn, basted or none."""

    id: str
    title: str
    stands: str = ""
    thread: Thread = "none"
