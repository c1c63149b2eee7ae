"""Hems of skirts, dresses and jackets: let down, taken up, levelled from the floor."""

from __future__ import annotations

from collections.abc import Sequence

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero
from fitdoctor.amounts.curves import run_out, through
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark
from fitdoctor.reason import Reason


def let_down_effects(total: Length, depth: Length | None, new_hem: Length) -> dict[str, Length]:
    """What is left of a hem that is let down, what a new hem lacks, what the length itself lacks; nothing where the depth is not known."""
    if depth is None:
        return {}
    left = at_least_zero(depth - total)
    return {"hem-left": left, "hem-short-by": at_least_zero(new_hem - left), "cloth-short-by": at_least_zero(total - depth)}


def _let_down(given: Given) -> Calculation:
    total, finish = given.total, given.word("finish")
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", "all round the hem", "lower", edge, Amount(total, total, "in all"))
    new_hem = given.measured("new-hem") or given.length({"plain": "new-hem", "faced": "facing-seam", "false": "facing-seam"}[finish])
    effects = let_down_effects(total, given.measured("hem-depth"), new_hem)
    if finish != "plain":
        effects["facing-width"] = at_least_zero(total - given.length("facing-seam"))
    if finish == "false":
        effects["cloth-short-by"] = Length(0.0)
    because = (Reason("What the hem is deep, less what is let down, is left to turn up; a facing needs no more than its seam."),)
    return Calculation((mark,), total, total, effects, because=because)


def _take_up(given: Given) -> Calculation:
    total = given.total
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", f"all round the {given.word('part')}", "raise", edge, Amount(total, total, "in all"))
    narrow = given.length("edge-slope")
    effects = {"hem-flare": total * (2 * narrow.mm), "fold-shows": total * 0.5, "join-seam": given.length("join-seam")}
    because = (
        Reason("On an edge that flares the turned-up part is wider than what it lies on: ease the surplus in, or slope the seams inside."),
        Reason("Where the old edge is kept, half of the amount shows as a fold above it."),
    )
    return Calculation((mark,), total, total, effects, because=because)


_FLOOR = ("floor-front", "floor-right", "floor-back", "floor-left")


def _level(given: Given) -> Calculation:
    """From what the hem stands off the floor at four places where that was read, else from its biggest difference."""
    readings = [reading for reading in map(given.measured, _FLOOR) if reading is not None]
    return _by_readings(readings) if len(readings) == len(_FLOOR) else _by_difference(given)


def _by_readings(readings: Sequence[Length]) -> Calculation:
    """The highest place keeps its length, every other one comes up to it."""
    highest = max(readings, key=lambda reading: reading.mm)
    front, right, back, left = (at_least_zero(highest - reading) for reading in readings)
    total = max((front, right, back, left), key=lambda up: up.mm)
    halves = [("", right)] if right.mm == left.mm else [("on the right: ", right), ("on the left: ", left)]
    marks = tuple(_half_round(which, front, side, back) for which, side in halves)
    because = (Reason("The highest place of the hem keeps its length; the line through the readings runs smoothly."),)
    return Calculation(marks, total, total, {"hem-change": total}, because=because)


def _half_round(which: str, front: Length, side: Length, back: Length) -> Mark:
    most = max((front, side, back), key=lambda up: up.mm)
    values = (front.mm, side.mm, back.mm)
    amount = Amount(most, most, "in all", shape=lambda share: through(values, share) / most.mm if most.mm else 0.0)
    where = f"{which}from centre front over the side to centre back, up to the highest place"
    return mark_seam("hem", where, "raise", pieces.level(block.SKIRT_HEM_HALF), amount, ("centre front", "centre back"))


def _by_difference(given: Given) -> Calculation:
    total, at = given.total, given.word("place")
    lowest = {"back": "centre back", "front": "centre front", "side": "the lower side"}[at]
    where = f"most at {lowest}, running out where the hem is level already"
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", where, "raise", edge, Amount(total, total, "in all", shape=run_out), (lowest, "level"))
    because = (Reason("The height from the floor is read all round; the line between the readings runs smoothly."),)
    return Calculation((mark,), total, total, {"hem-change": total}, because=because)


CALCULATORS = (
    calculator(
        "hem-let-down",
        _let_down,
        block={"new-hem": block.SKIRT_HEM, "facing-seam": block.HEM_FACED},
        optional=("hem-depth",),
        effects=("hem-left", "hem-short-by", "cloth-short-by", "facing-width"),
        options={"finish": ("plain", "faced", "false")},
    ),
    calculator(
        "hem-take-up",
        _take_up,
        block={"edge-slope": 0.0, "join-seam": block.JOIN},
        effects=("hem-flare", "fold-shows", "join-seam"),
        options={"part": open_option("hem")},
    ),
    calculator(
        "skirt-hem-level",
        _level,
        optional=_FLOOR,
        effects=("hem-change",),
        options={"place": ("back", "front", "side")},
    ),
)
