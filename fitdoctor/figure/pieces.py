"""The pieces of a figure as shapes: parts with light running round them, seams, edges, buttons and quiet modelling."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.bumps import for_piece, move
from fitdoctor.figure.curves import STEPS, Knot, fading, flatten, mirrored, parse, shade_side, whole
from fitdoctor.figure.fields import band, lens, soft
from fitdoctor.figure.lines import button, edge, seam
from fitdoctor.figure.shapes import Clip, Fill, Flat, Ink, Line, Linear, Point, Polygon, Shape, Spot, bounds
from fitdoctor.figure.strokes import depth_between
from fitdoctor.knowledge.entries import Bump, Piece

TONES: dict[str, tuple[str, str, str]] = {
    "cloth": ("lit", "cloth", "dark"),
    "trim": ("cloth", "trim", "dark"),
    "form": ("form_lit", "form", "form_dark"),
    "shirt": ("shirt", "shirt", "shirt_dark"),
    "lining": ("under", "under", "under"),
    "shoe": ("form", "form_dark", "form_dark"),
}
"Tone -> the roles of its lit, middle and dark side."
RIM = (tuple(range(48, 6, -4)), 0.0175)
"Widths of the lines, one within the other, that darken the rim of a part, and the darkness of each."
FORM_RIM = ((20, 16, 12, 9, 6), 0.028)
RIGHT_SHARE = 0.64
"The light comes from the left: of two mirrored lit places the right one gets this share."


def knots(piece: Piece) -> tuple[Knot, ...]:
    """The points of the piece; a half outline made whole."""
    if piece.half:
        return whole(parse(piece.half))
    if piece.points:
        return parse(piece.points)
    raise FitdoctorError(f"A {piece.paint} piece has neither points nor half.", "Write its curve.")


def curve(piece: Piece, closed: bool, bumps: Sequence[Bump], right: bool = True) -> Polygon:
    """The piece's curve, on the asked side, moved by the outline changes that concern it."""
    points = flatten(knots(piece) if right else mirrored(knots(piece)), closed)
    return move(points, concerning(piece, bumps, right))


def concerning(piece: Piece, bumps: Sequence[Bump], right: bool) -> tuple[Bump, ...]:
    """The outline changes that move this side of the piece."""
    side = "r" if right else "l"
    names = [name for name in (piece.name, piece.on) if name]
    return for_piece(bumps, (*names, *(f"{name}.{side}" for name in names if piece.both)))


def sides(piece: Piece) -> tuple[bool, ...]:
    """On which sides it is painted: True for as given, False for mirrored; the mirrored left one lies below."""
    return (False, True) if piece.both else (True,)


def part_names(piece: Piece) -> tuple[str, ...]:
    """What the part is called on each of its sides, in the order of `sides`."""
    return (f"{piece.name}.l", f"{piece.name}.r") if piece.both else (piece.name,)


def part(piece: Piece, outline: Polygon) -> list[Shape]:
    """One part: its cast shadow, fill with the light running round it, soft rim and outline."""
    shapes: list[Shape] = []
    if piece.casts:
        dx, dy, alpha = piece.casts
        shapes.append(Fill(tuple((x + dx, y + dy) for x, y in outline), Flat("shade", alpha)))
    shapes.append(Fill(outline, _light_round(piece, outline)))
    if piece.rim:
        shapes.append(Clip((outline,), tuple(_rim(piece, outline))))
    if piece.outline:
        shapes.append(_contour(piece, outline))
    return shapes


def _light_round(piece: Piece, outline: Polygon) -> Ink:
    left, _, right, _ = bounds(outline)
    left, right = piece.span or (left, right)
    lit, middle, dark = TONES[piece.tone]
    return Linear((left, 0), (right, (right - left) * 0.12), ((0, middle, 1), (0.28, lit, 1), (0.62, middle, 1), (1, dark, 1)))


def _rim(piece: Piece, outline: Polygon) -> list[Shape]:
    widths, alpha = FORM_RIM if piece.tone == "form" else RIM
    role = "form_line" if piece.tone == "form" else "shade"
    return [Line(outline, width, Flat(role, alpha * piece.rim), closed=True) for width in widths]


def _contour(piece: Piece, outline: Polygon) -> Line:
    ink = Flat("form_line", 0.8) if piece.tone == "form" else Flat("line")
    if piece.drawn is None:
        return Line(outline, piece.outline, ink, closed=True)
    first, last = piece.drawn
    return Line(outline[first * STEPS : last * STEPS + 1], piece.outline, ink)


def _strength(piece: Piece, usual: float) -> float:
    return usual if piece.strength is None else piece.strength


def _along(piece: Piece, role: str, usual: float) -> Ink:
    """The ink of a line; one that fades comes or goes between two heights."""
    alpha = _strength(piece, usual)
    if piece.down is None:
        return Flat(role, alpha)
    return Linear((0, piece.down[0]), (0, piece.down[1]), ((0, role, 0.0), (1, role, alpha)))


def _seam(piece: Piece, points: Polygon) -> list[Shape]:
    return seam(points, piece.width or 1.5, _strength(piece, 0.55), piece.dash)


def _edge(piece: Piece, points: Polygon) -> list[Shape]:
    return edge(points, piece.width or 2.0, piece.drop, _strength(piece, 0.28))


def _line(piece: Piece, points: Polygon) -> list[Shape]:
    role = "form_line" if piece.tone == "form" else "ink"
    return [Line(points, piece.width or 1.8, _along(piece, role, 0.8), dash=piece.dash)]


def _crease(piece: Piece, points: Polygon) -> list[Shape]:
    role = "form_line" if piece.tone == "form" else "ink"
    return [lens(points, piece.width or 2.2, role, _strength(piece, 0.55), piece.fade)]


def _soft(piece: Piece, points: Polygon) -> list[Shape]:
    reach = piece.drop * shade_side(points)
    role = "glow" if piece.lit else "shade"
    return [soft(points, lambda _: 0.0, lambda _: reach, role, _strength(piece, 0.3), 5, fading(*piece.fade))]


def _furrow(role: str) -> Callable[[Piece, Polygon], list[Shape]]:
    def paint(piece: Piece, points: Polygon) -> list[Shape]:
        width = piece.width or 20.0
        return [band(points, lambda _: 0.0, lambda _: width, role, _strength(piece, 0.2), 8, fading(*piece.fade))]

    return paint


def _fading(piece: Piece, points: Polygon) -> list[Shape]:
    """An area of one tone that comes or goes between two heights: the wearer beyond the picture's subject."""
    top, bottom = piece.down or (0.0, 1.0)
    full = _strength(piece, 0.75)
    return [Fill(points, Linear((0, top), (0, bottom), ((0, piece.tone, full), (1, piece.tone, 0.0))))]


def spots(piece: Piece, right: bool) -> list[Shape]:
    """Quiet round modelling; a mirrored light is the brighter one, for it faces the light."""
    x, y = _place(piece)
    role = piece.tone if piece.tone.startswith("form") else ("glow" if piece.lit else "shade")
    dimmed = RIGHT_SHARE if piece.both and piece.lit and right else 1.0
    side = 1 if right else -1
    return [Spot((side * x, y), piece.r, side * piece.angle, role, _strength(piece, 0.2) * dimmed)]


def _place(piece: Piece) -> Point:
    if piece.at is None:
        raise FitdoctorError(f"A {piece.paint} piece lacks its place.", "Write at: [x, y].")
    return piece.at


def _button(piece: Piece, right: bool, bumps: Sequence[Bump]) -> list[Shape]:
    x, y = _place(piece)
    at = move(((x if right else -x, y),), concerning(piece, bumps, right))[0]
    return button(at, piece.r[0])


def _mouth(piece: Piece, bumps: Sequence[Bump], right: bool) -> list[Shape]:
    """An opening drawn open: the depth within, and its two edges."""
    known = concerning(piece, bumps, right)
    far_knots = parse(piece.far or "")
    near = curve(piece, False, bumps, right)
    far = move(flatten(far_knots if right else mirrored(far_knots)), known)
    shapes = depth_between(near, far)
    shapes += [Line(near, 2.4, Flat("glow", 0.7)), Line(near, 1.2, Flat("ink", 0.9)), Line(far, 1.8, Flat("ink", 0.9))]
    return shapes


OPEN: dict[str, Callable[[Piece, Polygon], list[Shape]]] = {
    "seam": _seam,
    "edge": _edge,
    "line": _line,
    "crease": _crease,
    "soft": _soft,
    "hollow": _furrow("shade"),
    "swell": _furrow("glow"),
}
"Pieces that follow an open curve."


def detail(piece: Piece, bumps: Sequence[Bump]) -> list[Shape]:
    """The shapes of a piece that is no part, on all its sides."""
    shapes: list[Shape] = []
    for right in sides(piece):
        if piece.paint == "spot":
            shapes += spots(piece, right)
        elif piece.paint == "button":
            shapes += _button(piece, right, bumps)
        elif piece.paint == "mouth":
            shapes += _mouth(piece, bumps, right)
        elif piece.paint == "fading":
            shapes += _fading(piece, curve(piece, True, bumps, right))
        else:
            shapes += OPEN[piece.paint](piece, curve(piece, False, bumps, right))
    return shapes
