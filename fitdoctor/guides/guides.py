"""Which marks of a job have a guide, and each guide with its heading."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count

from fitdoctor.amounts.marks import Calculation, Mark
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.guides.draft import seam_shapes
from fitdoctor.guides.heading import headed
from fitdoctor.guides.hems_and_darts import button_shapes, dart_shapes, hem_shapes, point_shapes
from fitdoctor.guides.lettering import Ruler, both_units
from fitdoctor.guides.lines import is_straight
from fitdoctor.guides.notches import notch_shapes
from fitdoctor.guides.shapes import Line, Shape, Weight
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import TAKE_WORDS, letter_of
from fitdoctor.shop import Shop

_HEMS = ("hem", "vent")
_ONE_DRAWING = {"sleeve-vent": "sleeve-hem"}
"Marks that stand on the drawing of another."


@dataclass(frozen=True)
class Guide:
    """One guide at full size, in mm.

    Attributes:
        letters: of its marks on the job sheet.
        says: what it shows, as sentences.
    """

    letters: str
    title: str
    says: tuple[str, ...]
    shapes: tuple[Shape, ...]
    marks: tuple[Mark, ...]


def guides_for(knowledge: Knowledge, amounts: Sequence[WorkedAmount], shop: Shop) -> tuple[Guide, ...]:
    """A guide for every curve, taper, dart and set of hem lines among the worked amounts, lettered as on the job sheet."""
    numbers = count()
    found: list[Guide] = []
    for calculation in (amount.calculation for amount in amounts if amount.calculation):
        lettered = [(letter_of(next(numbers)), mark) for mark in calculation.marks]
        for group in _groups(lettered):
            if _wants_guide([mark for _, mark in group]):
                found.append(_guide(knowledge, group, calculation, shop))
    return tuple(found)


def _groups(lettered: Sequence[tuple[str, Mark]]) -> list[list[tuple[str, Mark]]]:
    """Marks drawn together; a mark of the lining goes with its like of the shell."""
    groups: list[list[tuple[str, Mark]]] = []
    shell = [mark for _, mark in lettered if mark.layer == "shell"]
    for letter, mark in lettered:
        if mark.layer == "lining" and replace(mark, layer="shell") in shell:
            continue
        group = next((group for group in groups if _together(group[0][1], mark)), None)
        if group is None:
            groups.append(group := [])
        group.append((letter, mark))
    return groups


def _together(first: Mark, mark: Mark) -> bool:
    """Lines at one hem of one leg, darts on one edge, steps from one old seam, seams of one curve."""
    if first.at.endswith(_HEMS) or mark.at.endswith(_HEMS):
        return _ONE_DRAWING.get(mark.at, mark.at) == first.at and _leg(mark) == _leg(first)
    if first.edge:
        return mark.at == first.at
    return mark.old == first.old and (mark.at == first.at or mark.new == first.new) and not mark.along_mm


def _leg(mark: Mark) -> str:
    return mark.where.split(": ")[0] if ": " in mark.where else ""


def _wants_guide(marks: Sequence[Mark]) -> bool:
    """Whether paper helps: a straight seam that moves evenly is marked with the rule alone."""
    first = marks[0]
    if len(first.old) < 2 or first.layer == "lining" or first.each_mm <= 0:
        return False
    if first.along_mm or (len(marks) > 1 and first.at.endswith(_HEMS)):
        return True
    even = len({round(offset, 3) for _, offset in first.stations}) == 1
    return first.old != first.new and not (even and is_straight(first.old))


def _guide(knowledge: Knowledge, group: Sequence[tuple[str, Mark]], calculation: Calculation, shop: Shop) -> Guide:
    marks = [mark for _, mark in group]
    letters = group[0][0] if len(group) == 1 else f"{group[0][0]}–{group[-1][0]}"
    seams = " and ".join(dict.fromkeys(knowledge.seam_title(_ONE_DRAWING.get(mark.at, mark.at)) for mark in marks))
    layers = "shell and lining" if any(mark.layer == "lining" for mark in calculation.marks) else "shell"
    leg = f", {_leg(marks[0])}" if _leg(marks[0]).endswith("leg") else ""
    title = f"{seams[:1].upper()}{seams[1:]}{leg}: {TAKE_WORDS[marks[0].take]} ({layers})"
    says = tuple(_says(marks, calculation, shop.finest))
    body = tuple(_body(marks, Ruler(shop.unit, shop.finest)))
    names = {weight: words for weight, words in _LINES.items() if any(isinstance(s, Line) and s.weight == weight for s in body)}
    names |= _OTHERWISE.get("piece" if marks[0].take == "add" else "notches" if marks[0].along_mm else "", {})
    return Guide(letters, title, says, headed(f"{letters}   {title}", says, names, body), tuple(marks))


_LINES: dict[Weight, str] = {
    "old": "as it is",
    "new": "to sew on",
    "step": "steps: try on after each",
    "fold": "fold",
    "cut": "cut edge",
}
_OTHERWISE: dict[str, dict[Weight, str]] = {
    "piece": {"old": "middle of the piece"},
    "notches": {"old": "the seam; it stays", "new": "the way the notches go"},
}
_ALSO = {
    "place-from-centre": "The first dart stands {} from centre back, along the neckline.",
    "facing-edge": "The facing's new edge, from centre back to the shoulder seam: {}.",
    "apart": "The two darts are finished {} apart.",
    "cut-width": "Cut the piece {} wide, its seams included.",
}
"Effects that a cutter needs on the paper."


def _says(marks: Sequence[Mark], calculation: Calculation, finest: int) -> Iterator[str]:
    shown = marks if marks[0].edge else marks[-1:] if marks[-1].at == marks[0].at and marks[0].old != marks[0].new else marks[:1]
    for mark in shown:
        amount = both_units(mark.each_mm, finest)
        total = sum(like.total_mm for like in marks) if len({like.at for like in marks}) > 1 else mark.total_mm
        whole = "" if mark.convention == "in all" else f", in all {both_units(total, finest)}"
        yield f"{mark.where[:1].upper()}{mark.where[1:]}: {mark.convention} {amount}{whole}."
    mark = marks[0]
    if mark.layer_share < 1 and len(mark.old) == len(mark.new):
        which = "side of the fold" if "dart" in mark.at else ("half" if mark.take == "add" else "layer")
        yield f"The guide shows one {which}: turn it over for the other."
    for effect, words in _ALSO.items():
        if effect in calculation.effects:
            yield words.format(both_units(calculation.effects[effect].mm, finest))
    assumed = calculation.total.assumed
    if assumed:
        yield f"{assumed[:1].upper()}{assumed[1:]}."


def _body(marks: Sequence[Mark], ruler: Ruler) -> Iterator[Shape]:
    first = marks[0]
    if first.at.endswith("hem") and len(marks) > 1:
        yield from hem_shapes([mark for mark in marks if not mark.at.endswith("vent")], ruler.finest)
        for mark in marks:
            yield from button_shapes(mark, ruler.finest) if mark.at.endswith("vent") else ()
    elif first.edge:
        yield from dart_shapes(marks, ruler.finest)
    elif first.along_mm:
        yield from notch_shapes(first, ruler)
    elif len(first.old) == 2:
        yield from point_shapes(first, ruler.finest)
    else:
        yield from seam_shapes(marks, ruler)
