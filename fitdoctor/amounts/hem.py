"""Lengths at the hem: sleeves, trouser legs, skirts; let down, taken up, levelled."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.amounts import block, pieces
from fitdoctor.amounts.carry import at_least_zero, shaped_by
from fitdoctor.amounts.curves import Polyline, as_points, run_out
from fitdoctor.amounts.given import Given, calculator, open_option
from fitdoctor.amounts.marking import Amount, mark_lines, mark_seam
from fitdoctor.amounts.marks import Calculation, Length, Mark, Take
from fitdoctor.reason import Reason


def let_down_effects(total: Length, depth: Length | None, new_hem: Length) -> dict[str, Length]:
    """What is left of a hem that is let down, what a new hem lacks, what the length itself lacks; nothing where the depth is not known."""
    if depth is None:
        return {}
    left = at_least_zero(depth - total)
    return {"hem-left": left, "hem-short-by": at_least_zero(new_hem - left), "cloth-short-by": at_least_zero(total - depth)}


def _trouser_hem(given: Given) -> Calculation:
    finish, slant = given.word("finish"), given.length("slant")
    step = given.length({"plain": "hem-depth", "cuff": "cuff-depth", "faced": "facing-seam"}[finish])
    lines = _LINES[finish]
    needed = step * (len(lines) - 1)
    inseam = given.length("finished-inseam")
    edge = pieces.trouser_hem(given.length("half-hem").mm, slant.mm)
    marks = (_finished_line(inseam, slant, edge), *_lines_below(lines, step, edge))
    effects = {"cloth-needed": needed, "slant": slant}
    below = given.measured("cloth-below")
    if below is not None:
        effects["cloth-short-by"] = at_least_zero(needed - below)
    effects |= _flare(given, step)
    because = (
        Reason("Each line lies below the finished line by whole depths of the hem or cuff; the last is where the cloth is cut."),
        Reason("The back of the hem is lower than the front by the slant; every line runs parallel."),
    )
    return Calculation(marks, shaped_by(needed, slant, step), shaped_by(step, slant), effects, because=because)


_CREASES = ("front crease", "back crease")
_LINES = {
    "plain": ("finished line", "cutting line"),
    "cuff": ("finished line", "first fold, the top of the cuff inside", "second fold", "cutting line"),
    "faced": ("finished line", "cutting line, where the facing is sewn on"),
}


def _finished_line(inseam: Length, slant: Length, edge: Polyline) -> Mark:
    stations = ((0.0, 0.0), (float(edge[-1][0]), slant.mm))
    points = as_points(edge)
    where = "finished line, the whole inseam from the crotch down; the back slants lower"
    return mark_lines("hem", where, "mark", Amount(inseam, inseam, "in all"), stations, (points, points), _CREASES)


def _lines_below(names: tuple[str, ...], step: Length, edge: Polyline) -> Iterator[Mark]:
    for n, name in enumerate(names[1:], 1):
        down = step * n
        take: Take = "cut" if name.startswith("cutting") else "mark"
        stations = ((0.0, down.mm), (float(edge[-1][0]), down.mm))
        old = as_points(edge)
        new = tuple((x, y + down.mm) for x, y in old)
        where = f"{name}, below the finished line"
        yield mark_lines("hem", where, take, Amount(down, down, "in all"), stations, (old, new), _CREASES)


def _flare(given: Given, step: Length) -> dict[str, Length]:
    """What a turned-up hem must be wider at its raw edge on a leg that narrows: all round, both sides of the fold mirrored."""
    knee, hem = given.measured("knee-girth"), given.measured("hem-girth")
    if knee is None or hem is None:
        return {}
    narrowing = (knee.mm - hem.mm) / given.length("knee-to-hem").mm
    return {"hem-flare": Length(max(0.0, narrowing) * step.mm, step.give_mm * abs(narrowing))}


def _let_down(given: Given) -> Calculation:
    total, finish = given.total, given.word("finish")
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", "all round the hem", "lower", edge, Amount(total, total, "in all"))
    new_hem = given.measured("new-hem") or given.length({"plain": "new-hem", "faced": "facing-seam", "false": "facing-seam"}[finish])
    effects = let_down_effects(total, given.measured("hem-depth"), new_hem)
    if finish == "false":
        effects["cloth-short-by"] = Length(0.0)
    because = (Reason("What the hem is deep, less what is let down, is left to turn up; a facing needs no more than its seam."),)
    return Calculation((mark,), total, total, effects, because=because)


def _take_up(given: Given) -> Calculation:
    total = given.total
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", f"all round the {given.word('part')}", "raise", edge, Amount(total, total, "in all"))
    narrow = given.length("edge-slope")
    effects = {"hem-flare": total * (2 * narrow.mm), "fold-shows": total * 0.5}
    because = (
        Reason("On an edge that flares the turned-up part is wider than what it lies on: ease the surplus in, or slope the seams inside."),
        Reason("Where the old edge is kept, half of the amount shows as a fold above it."),
    )
    return Calculation((mark,), total, total, effects, because=because)


def _level(given: Given) -> Calculation:
    total, at = given.total, given.word("at")
    lowest = {"back": "centre back", "front": "centre front", "side": "the lower side"}[at]
    where = f"most at {lowest}, running out where the hem is level already"
    edge = pieces.level(block.SKIRT_HEM_HALF)
    mark = mark_seam("hem", where, "raise", edge, Amount(total, total, "in all", shape=run_out), (lowest, "level"))
    because = (Reason("The height from the floor is read all round; the line between the readings runs smoothly."),)
    return Calculation((mark,), total, total, {"hem-change": total}, because=because)


CALCULATORS = (
    calculator(
        "trouser-hem",
        _trouser_hem,
        needs=("finished-inseam",),
        block={
            "slant": block.HEM_SLANT,
            "hem-depth": block.TROUSER_HEM,
            "cuff-depth": block.CUFF,
            "facing-seam": block.HEM_FACED,
            "half-hem": block.TROUSER_HEM_HALF,
            "knee-to-hem": block.KNEE_TO_HEM,
        },
        optional=("cloth-below", "knee-girth", "hem-girth"),
        effects=("cloth-needed", "cloth-short-by", "slant", "hem-flare"),
        options={"finish": ("plain", "cuff", "faced")},
    ),
    calculator(
        "hem-let-down",
        _let_down,
        block={"new-hem": block.SKIRT_HEM, "facing-seam": block.HEM_FACED},
        optional=("hem-depth",),
        effects=("hem-left", "hem-short-by", "cloth-short-by"),
        options={"finish": ("plain", "faced", "false")},
    ),
    calculator(
        "hem-take-up",
        _take_up,
        block={"edge-slope": 0.0},
        effects=("hem-flare", "fold-shows"),
        options={"part": open_option("hem")},
    ),
    calculator("skirt-hem-level", _level, effects=("hem-change",), options={"at": ("back", "front", "side")}),
)
