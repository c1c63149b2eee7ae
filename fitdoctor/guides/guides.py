"""Which marks of a job have a guide, and each guide with its heading."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import count

from fitdoctor.amounts.marks import Calculation, Mark, Point
from fitdoctor.amounts.work_out import WorkedAmount
from fitdoctor.guides.draft import seam_shapes
from fitdoctor.guides.hems_and_darts import button_shapes, dart_shapes, hem_shapes, point_shapes
from fitdoctor.guides.lettering import both_units
from fitdoctor.guides.lines import is_straight
from fitdoctor.guides.shapes import Line, Shape, Text, Weight, box_of, text_width, wrapped
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.sheet import TAKE_WORDS, letter_of
from fitdoctor.shop import Shop

_HEADING_MM = 170.0
_ROW_MM = 4.6
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
    """Marks drawn together: those at one hem, and a mark of the lining with its like of the shell."""
    groups: dict[str, list[tuple[str, Mark]]] = {}
    shell = [mark for _, mark in lettered if mark.layer == "shell"]
    for n, (letter, mark) in enumerate(lettered):
        if mark.layer == "lining" and replace(mark, layer="shell") in shell:
            continue
        together = _ONE_DRAWING.get(mark.at, mark.at) if mark.at.endswith(("hem", "vent")) else f"{mark.at}-{n}"
        groups.setdefault(together, []).append((letter, mark))
    return list(groups.values())


def _wants_guide(marks: Sequence[Mark]) -> bool:
    """Whether paper helps: a straight seam that moves evenly is marked with the rule alone."""
    first = marks[0]
    if len(first.old) < 2 or first.layer == "lining":
        return False
    if len(marks) > 1:
        return True
    even = len({round(offset, 3) for _, offset in first.stations}) == 1
    return first.old != first.new and first.each_mm > 0 and not (even and is_straight(first.old))


def _guide(knowledge: Knowledge, group: Sequence[tuple[str, Mark]], calculation: Calculation, shop: Shop) -> Guide:
    marks = [mark for _, mark in group]
    letters = group[0][0] if len(group) == 1 else f"{group[0][0]}–{group[-1][0]}"
    seam = knowledge.seam_title(marks[0].at)
    layers = "shell and lining" if any(mark.layer == "lining" for mark in calculation.marks) else "shell"
    title = f"{seam[:1].upper()}{seam[1:]}: {TAKE_WORDS[marks[0].take]} ({layers})"
    says = tuple(_says(marks[0], calculation.total.assumed, shop.finest))
    return Guide(letters, title, says, tuple(_drawn(letters, title, says, marks, shop.finest)), tuple(marks))


def _says(mark: Mark, assumed: str, finest: int) -> Iterator[str]:
    amount = both_units(mark.each_mm, finest)
    whole = "" if mark.convention == "in all" else f", in all {both_units(mark.total_mm, finest)}"
    yield f"{mark.where[:1].upper()}{mark.where[1:]}: {mark.convention} {amount}{whole}."
    if mark.layer_share < 1 and len(mark.old) == len(mark.new):
        which = "side of the fold: turn it over for the other" if "dart" in mark.at else "layer: turn it over for the other"
        yield f"The guide shows one {which}."
    if assumed:
        yield f"{assumed[:1].upper()}{assumed[1:]}."


def _drawn(letters: str, title: str, says: Sequence[str], marks: Sequence[Mark], finest: int) -> Iterator[Shape]:
    body = tuple(_body(marks, finest))
    left, top, _, _ = box_of(body)
    yield from body
    rows = [row for text in says for row in wrapped(text, 3.4, _HEADING_MM)]
    y = top - 14 - _ROW_MM * len(rows)
    yield Line(((left, y - 7), (left + _HEADING_MM, y - 7)), "frame")
    yield Text((left, y), f"{letters}   {title}", 5.4, bold=True)
    for n, row in enumerate(rows):
        yield Text((left, y + 5.4 + _ROW_MM * n), row, 3.4)
    yield from _legend((left, y + 6.4 + _ROW_MM * len(rows)), {shape.weight for shape in body if isinstance(shape, Line)})


_LINES: tuple[tuple[Weight, str], ...] = (("old", "as it is"), ("new", "to sew on"), ("fold", "fold"), ("cut", "cut edge"))


def _legend(at: Point, used: set[Weight]) -> Iterator[Shape]:
    """What the lines of this guide mean, in one row."""
    x, y = at
    for weight, words in _LINES:
        if weight in used:
            yield Line(((x, y - 1), (x + 14, y - 1)), weight)
            yield Text((x + 16, y), words, 3.0)
            x += 24 + text_width(words, 3.0)


def _body(marks: Sequence[Mark], finest: int) -> Iterator[Shape]:
    first = marks[0]
    if first.at.endswith("hem") and len(marks) > 1:
        yield from hem_shapes([mark for mark in marks if not mark.at.endswith("vent")], finest)
        for mark in marks:
            yield from button_shapes(mark, finest) if mark.at.endswith("vent") else ()
    elif len(first.new) > len(first.old):
        yield from dart_shapes(first, finest)
    elif len(first.old) == 2:
        yield from point_shapes(first, finest)
    else:
        yield from seam_shapes(first, finest)
