"""What a marking guide is drawn with: lines of few weights, text, filled shapes; mm, y downward."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Literal

from fitdoctor.amounts.marks import Point

Weight = Literal["old", "new", "step", "fold", "cut", "hair", "tick", "frame"]
Anchor = Literal["start", "middle", "end"]

WIDTH_MM: dict[Weight, float] = {"old": 0.25, "new": 0.7, "step": 0.45, "fold": 0.35, "cut": 0.35, "hair": 0.09, "tick": 0.18, "frame": 0.3}
"Thin for the old seam, strong for the new one, as on a cutter's pattern."
DASH_MM: dict[Weight, tuple[float, ...]] = {"step": (1.2, 1.6), "fold": (6.0, 1.5, 1.0, 1.5), "cut": (4.0, 2.0)}
GREY: dict[Weight, float] = {"hair": 0.45, "tick": 0.2}


@dataclass(frozen=True)
class Line:
    """A line through points."""

    points: tuple[Point, ...]
    weight: Weight

    def moved(self, dx: float, dy: float) -> Line:
        return replace(self, points=tuple((x + dx, y + dy) for x, y in self.points))


@dataclass(frozen=True)
class Text:
    """Words whose foot stands at `at`; size is that of the type in mm."""

    at: Point
    words: str
    size: float = 3.2
    anchor: Anchor = "start"
    bold: bool = False
    degrees: float = 0.0
    "Turned clockwise on paper."

    def moved(self, dx: float, dy: float) -> Text:
        return replace(self, at=(self.at[0] + dx, self.at[1] + dy))


@dataclass(frozen=True)
class Fill:
    """A filled shape; grey 0 is black, 1 white."""

    points: tuple[Point, ...]
    grey: float = 0.0

    def moved(self, dx: float, dy: float) -> Fill:
        return replace(self, points=tuple((x + dx, y + dy) for x, y in self.points))


Shape = Line | Text | Fill
Box = tuple[float, float, float, float]
"x and y of the upper left corner, x and y of the lower right one."


def outline(x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    """The corners of a rectangle, closed."""
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height), (x, y)


def box_of(shapes: Iterable[Shape]) -> Box:
    """The smallest box round everything drawn."""
    corners = [corner for shape in shapes for corner in _extent(shape)]
    xs, ys = [x for x, _ in corners], [y for _, y in corners]
    return min(xs), min(ys), max(xs), max(ys)


def _extent(shape: Shape) -> Iterator[Point]:
    if not isinstance(shape, Text):
        yield from shape.points
        return
    from_left = {"start": 0.0, "middle": 0.5, "end": 1.0}[shape.anchor]
    width = text_width(shape.words, shape.size)
    x, y = shape.at
    if shape.degrees:
        yield from ((x - width, y - width), (x + width, y + width))
        return
    yield x - width * from_left, y - shape.size * 0.75
    yield x + width * (1 - from_left), y + shape.size * 0.22


# Advance widths of Helvetica in thousandths of its size, from its published font metrics; letters of one width together.
_WIDTHS = {
    191: "'",
    222: "ijl‘’",
    260: "|",
    278: " !,./:;I[\\]ft·",
    333: "-`()r",
    334: "{}",
    355: '"',
    389: "*",
    400: "°",
    469: "^",
    500: "Jcksvxyz",
    556: "#$0123456789?L_abdeghnopqu–",
    584: "+<=>~×±",
    611: "FTZ",
    667: "&ABEKPSVXY",
    722: "CDHNRUw",
    778: "GOQ",
    833: "Mm",
    889: "%",
    944: "W",
    1000: "…—",
    1015: "@",
}
_WIDTH_OF = {letter: width for width, letters in _WIDTHS.items() for letter in letters}


def text_width(words: str, size: float) -> float:
    """Width of the words in mm."""
    return sum(_WIDTH_OF.get(letter, 556) for letter in words) * size / 1000


def wrapped(words: str, size: float, width: float) -> tuple[str, ...]:
    """The words in lines no wider than `width`."""
    lines: list[str] = []
    for word in words.split(" "):
        if lines and text_width(f"{lines[-1]} {word}", size) <= width:
            lines[-1] = f"{lines[-1]} {word}"
        else:
            lines.append(word)
    return tuple(lines)
