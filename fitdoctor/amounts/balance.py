"""Balance between back and front: the back passed up or let down, the front shortened at the shoulders."""

from __future__ import annotations

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.given import Given, calculator
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Take
from fitdoctor.reason import Reason

_DONE: dict[str, tuple[str, Take, str]] = {
    "back-up": (
        "on the back, even along neck and shoulder seam",
        "in",
        "The back is passed up and hangs shorter, hem and all.",
    ),
    "back-down": ("on the back, even along the shoulder seam", "out", "The back comes down and hangs longer, hem and all."),
    "front-shorten": (
        "on the front, even along the shoulder seam",
        "in",
        "The fronts hang shorter; the back keeps its length.",
    ),
}


def _balance(given: Given) -> Calculation:
    total, do = given.total, given.word("do")
    where, take, says = _DONE[do]
    mark = mark_seam("shoulder-seam", where, take, pieces.sloping_shoulder(block.SHOULDER), Amount(total, total, "in all"))
    effects = {"back-length-change": Length(0.0) if do == "front-shorten" else total, "hem-change": total}
    return Calculation((mark,), total, total, effects, because=(Reason(says),))


CALCULATORS = (
    calculator(
        "balance",
        _balance,
        effects=("back-length-change", "hem-change"),
        options={"do": ("back-up", "front-shorten", "back-down")},
    ),
)
