"""Guides and diagrams as SVG at full size, mm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from xml.sax.saxutils import escape

from fitdoctor.guides.shapes import DASH_MM, GREY, WIDTH_MM, Box, Fill, Line, Shape, Text, box_of

_MARGIN_MM = 5.0


def as_svg(shapes: Iterable[Shape], box: Box | None = None) -> str:
    """The shapes as one picture in mm, whole; it prints at full size."""
    drawn = tuple(shapes)
    x0, y0, x1, y1 = box or box_of(drawn)
    x0, y0, width, height = x0 - _MARGIN_MM, y0 - _MARGIN_MM, x1 - x0 + 2 * _MARGIN_MM, y1 - y0 + 2 * _MARGIN_MM
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:.3f}mm" height="{height:.3f}mm" '
        f'viewBox="{x0:.3f} {y0:.3f} {width:.3f} {height:.3f}" font-family="Helvetica, Arial, sans-serif" '
        'stroke-linecap="round" stroke-linejoin="round">'
    )
    return "\n".join((head, *(element for shape in drawn for element in _element(shape)), "</svg>"))


def _element(shape: Shape) -> Iterator[str]:
    match shape:
        case Line():
            dash = ",".join(f"{mm:g}" for mm in DASH_MM.get(shape.weight, ()))
            dashed = f' stroke-dasharray="{dash}"' if dash else ""
            width, grey = WIDTH_MM[shape.weight], _grey(GREY.get(shape.weight, 0.0))
            yield f'<polyline points="{_points(shape.points)}" fill="none" stroke="{grey}" stroke-width="{width:g}"{dashed}/>'
        case Fill():
            yield f'<polygon points="{_points(shape.points)}" fill="{_grey(shape.grey)}"/>'
        case Text():
            x, y = shape.at
            bold = ' font-weight="bold"' if shape.bold else ""
            turned = f' transform="rotate({shape.degrees:g} {x:.3f} {y:.3f})"' if shape.degrees else ""
            yield (
                f'<text x="{x:.3f}" y="{y:.3f}" font-size="{shape.size:g}" text-anchor="{shape.anchor}"{bold}{turned}>'
                f"{escape(shape.words)}</text>"
            )


def _points(points: Iterable[tuple[float, float]]) -> str:
    return " ".join(f"{x:.4f},{y:.4f}" for x, y in points)


def _grey(grey: float) -> str:
    return "#" + f"{round(grey * 255):02x}" * 3
