"""What a calculator takes and gives: lengths with their give or take in, marks on the cloth out. All lengths in mm."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from fitdoctor.reason import Reason

Take = Literal["in", "out", "lower", "raise", "mark", "add", "cut"]
Point = tuple[float, float]


@dataclass(frozen=True)
class Length:
    """A length and its give or take, mm."""

    mm: float
    give_mm: float = 0.0
    assumed: str = ""
    "Where it does not come from a measurement: 'from a standard block: measure … for the exact figure'."

    def __add__(self, other: Length) -> Length:
        return Length(self.mm + other.mm, self.give_mm + other.give_mm, self.assumed or other.assumed)

    def __sub__(self, other: Length) -> Length:
        return Length(self.mm - other.mm, self.give_mm + other.give_mm, self.assumed or other.assumed)

    def __mul__(self, factor: float) -> Length:
        return Length(self.mm * factor, self.give_mm * abs(factor), self.assumed)


@dataclass(frozen=True)
class Mark:
    """One amount at a place on the cloth.

    Attributes:
        at: seam or part id, such as back-waist-seam.
        where: the place in words: at centre back, running out at the side seams.
        layer: shell or lining.
        take: what is done there.
        each_mm: on each side or layer, as `convention` says.
        total_mm: taken up in all over this mark.
        convention: how each_mm counts: each side, each layer, each dart, in all.
        stations: (way along the seam from its first end, offset from the old seam), mm.
        old, new: the seam before and after as polylines in the piece's own mm plane; for drawings and guides.
        give_mm: give or take of total_mm.
        layer_share: what part of a station's offset falls on one layer: 1/2 where each_mm counts both layers or both legs of a dart.
            `old` and `new` lie on one layer: their distance is the station's offset times this.
        grain: direction of the straight grain in the piece's plane.
        ends: what lies where the seam begins and where it ends.
        along_mm: how far the stations move along the seam itself, toward its end; below 0 toward its beginning.
        edge: the edge a dart starts from, in the plane of `old`; empty where it is not drawn.
    """

    at: str
    where: str
    take: Take
    each_mm: float
    total_mm: float
    convention: str
    layer: Literal["shell", "lining"] = "shell"
    stations: tuple[Point, ...] = ()
    old: tuple[Point, ...] = ()
    new: tuple[Point, ...] = ()
    give_mm: float = 0.0
    layer_share: float = 1.0
    grain: Point = (0.0, 1.0)
    ends: tuple[str, str] = ("", "")
    along_mm: float = 0.0
    edge: tuple[Point, ...] = ()


@dataclass(frozen=True)
class Calculation:
    """What came out of a calculator.

    Attributes:
        marks: the amounts on the cloth.
        total: taken up (or let out) in all.
        each: on each side or layer, as the first mark counts.
        effects: what else changes, by name: lengths the verdict and the operations' texts refer to.
        unplaced_mm: what found no place; never dropped without a word.
        because: how it was worked out, for the reader.
    """

    marks: tuple[Mark, ...]
    total: Length
    each: Length
    effects: Mapping[str, Length] = field(default_factory=dict)
    unplaced_mm: float = 0.0
    because: tuple[Reason, ...] = ()


@dataclass(frozen=True)
class Calculator:
    """A calculator by name.

    Attributes:
        work_out: (inputs, options) -> Calculation; every needed input is there.
        needs: inputs without which nothing can be worked out.
        block: inputs with a stand-in from a standard block where not measured, mm.
        effects: names of the effects it gives.
        optional: inputs that may be missing; the effects that need them are then left out.
        options: words it understands: option -> values allowed (empty: any).
    """

    name: str
    work_out: Callable[[Mapping[str, Length], Mapping[str, str]], Calculation]
    needs: tuple[str, ...]
    block: Mapping[str, float] = field(default_factory=dict)
    effects: tuple[str, ...] = ()
    options: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    optional: tuple[str, ...] = ()
