"""The records of what is drawn: figures and their pieces, the strokes of a symptom, the arrows of a mechanism."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from fitdoctor.knowledge.entry import Entry, Id, View

PointList = Annotated[str, Meta(pattern=r"^-?[0-9.]+,-?[0-9.]+c?( -?[0-9.]+,-?[0-9.]+c?)*$")]
"Points of a curve, `x,y` in mm with a space between; `c` behind a point makes it a corner, the others are smooth."


class Piece(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """One thing painted on a figure; a figure paints its pieces in order."""

    paint: Literal[
        "wearer",
        "gapes",
        "strokes",
        "part",
        "seam",
        "edge",
        "line",
        "crease",
        "soft",
        "spot",
        "hollow",
        "swell",
        "button",
        "fading",
        "mouth",
    ]
    "What is painted; wearer, gapes and strokes say when the wearer's body and the symptom's strokes have their turn."
    name: str = ""
    "What outline changes and strokes call it; a part on both sides becomes name.r and name.l."
    on: str = ""
    "Part or group of parts it lies on and is clipped to."
    points: PointList | None = None
    "The curve, or a whole outline."
    half: PointList | None = None
    "The right half of a symmetrical outline, from the top at the centre to the bottom."
    far: PointList | None = None
    "Of a mouth: where its other edge stands while it is open."
    at: tuple[float, float] | None = None
    r: tuple[float, float] = (5, 5)
    angle: float = 0
    both: bool = False
    "Also mirrored about the centre line."
    tone: str = "cloth"
    span: tuple[float, float] | None = None
    "From where to where the light runs round the part; parts of one tube share it."
    rim: float = 1
    outline: float = 2.2
    drawn: tuple[int, int] | None = None
    "First and last point of the outline that is drawn as a line, where not all of it is."
    casts: tuple[float, float, float] | None = None
    "Shadow of the part on what lies under it: shift to the right, shift down, darkness."
    width: float | None = None
    strength: float | None = None
    fade: tuple[float, float] = (0.4, 0.4)
    drop: float = 9
    "How far the shade of an edge falls; below 0 it falls to the other side."
    dash: tuple[float, ...] = ()
    down: tuple[float, float] | None = None
    "Heights between which a fading piece comes or goes."
    lit: bool = False
    only: dict[str, tuple[str, ...]] = {}
    "Painted only where each of these facts has one of these values; a fact not told has the value not-known, `garment` is the kind."
    but_not: dict[str, tuple[str, ...]] = {}
    "Left out where any of these facts has one of these values."
    closed: str = ""
    "Painted only while the opening of this name is closed."
    opened: str = ""
    "Painted only while a drawing opens it."


class ZoneShape(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """Where a zone lies on a figure: the parts it is on, cut out by a convex shape."""

    within: PointList
    on: tuple[str, ...] = ()
    "Parts or groups; empty: the shape itself."
    both: bool = False


class SeamLine(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """Where a seam, dart, hem or edge of the garment lies on a figure: amounts and new lines are drawn beside it."""

    points: PointList
    "From the end where a mark counts first: centre to side, top to bottom."
    into: tuple[float, float]
    "Direction from the seam into the cloth on the right half; taking in goes there."
    both: bool = False


class Figure(Entry, frozen=True, kw_only=True):
    """A garment drawn from one side on its wearer, in mm of a real body (x from the centre line, y down from the nape)."""

    view: View
    box: tuple[float, float, float, float]
    "x, y, width, height of the whole picture."
    wearer: tuple[Id, ...] = ()
    "Figures of the wearer's body painted where the piece `wearer` stands."
    main: str = ""
    "Part or group that strokes lie on when they name none."
    groups: dict[str, tuple[str, ...]] = {}
    "Names for several parts together."
    implies: dict[str, dict[str, str]] = {}
    "Part -> facts that a stroke on this part stands for where they are not told (a stroke on a sleeve: there are sleeves)."
    pieces: tuple[Piece, ...]
    landmarks: dict[str, tuple[float, float]] = {}
    levels: dict[str, tuple[float, float, float]] = {}
    "Height, left edge and right edge at places other figures have too: they carry a drawing from one figure to another."
    zones: dict[str, ZoneShape] = {}
    seams: dict[str, SeamLine] = {}


class Bump(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A change of the outline: p += (dx, dy) exp(-((x-cx)/rx)^2 - ((y-cy)/ry)^2)."""

    at: tuple[float, float]
    r: tuple[float, float]
    move: tuple[float, float]
    on: tuple[str, ...] = ()
    both: bool = False


class Stroke(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """One stroke of a drawn symptom, in mm of a real body (x from the centre line, y down from the nape)."""

    stroke: Literal[
        "fold",
        "taut",
        "fan",
        "spot",
        "soft",
        "swell",
        "hollow",
        "gape",
        "line",
        "crease",
        "dent",
        "dart",
        "seam",
        "dots",
        "pins",
        "pinch",
        "move",
        "ring",
        "unpick",
        "tape",
        "pad",
        "fingers",
    ]
    "From pins on: what the hands do, over the cloth in the thread's colour; for checks and measurements."
    on: str = ""
    "Part it is clipped to; empty is the main cloth of the view."
    from_: tuple[float, float] | None = msgspec.field(default=None, name="from")
    to: tuple[float, float] | None = None
    at: tuple[float, float] | None = None
    through: tuple[tuple[float, float], ...] = ()
    near: tuple[tuple[float, float], ...] = ()
    far: tuple[tuple[float, float], ...] = ()
    r: tuple[float, float] | None = None
    bow: float = 0
    depth: float | None = None
    fade: tuple[float, float] | None = None
    side: int = 0
    seed: int = 0
    k: float = 1
    n: int = 5
    toward: float = 0
    spread: float = 30
    length: float = 140
    start: float = 8
    width: float | None = None
    strength: float | None = None
    lit: bool = False
    angle: float = 0
    both: bool = False
    "Also mirrored about the centre line."


class Drawing(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """A symptom as strokes on one figure."""

    garments: tuple[str, ...] = ()
    "Garments this drawing is for; empty: all of the symptom's."
    crop: tuple[float, float, float, float]
    "x, y, width, height shown in a small picture."
    outline: tuple[Bump, ...] = ()
    strokes: tuple[Stroke, ...] = ()
    opens: tuple[str, ...] = ()
    "Openings of the figure drawn spread: vent, pockets, fly, pleats."


class MechanismArrow(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    kind: Literal["pull", "stack", "hang", "ledge"]
    from_: tuple[float, float] = msgspec.field(name="from")
    to: tuple[float, float]
    bow: float = 0
    both_ends: bool = False
    both: bool = False
    says: str = ""
    view: View = "back"
