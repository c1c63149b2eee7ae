"""Paints a display list with QPainter: on the screen, into a picture, on a printed page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QBrush, QColor, QFont, QFontMetricsF, QLinearGradient, QPainter, QPainterPath, QPen, QRadialGradient

from fitdoctor.figure.shapes import Clip, Field, Fill, Flat, Ink, Line, Polygon, Shape, Spot, Words

SMALL_SCALE = 0.45
"Pixels per mm below which lines keep the width they have at this scale, so that a small picture keeps its outline."
SPOT_STOPS = ((0.0, 1.0), (0.35, 0.80), (0.7, 0.28), (1.0, 0.0))
WORD_PIXELS = 64


@dataclass(frozen=True)
class FigureTones:
    """The colours of the drawn figure by the name of their role, and how strongly shade and light are laid on."""

    name: str
    colours: dict[str, str]
    strength: dict[str, float] = field(default_factory=dict)
    font: str = "Source Sans Pro"

    def colour(self, role: str, alpha: float = 1.0) -> QColor:
        """The colour of a role at an opacity."""
        colour = QColor(self.colours[role])
        colour.setAlphaF(max(0.0, min(1.0, alpha * self.strength.get(role, 1.0))))
        return colour

    def laid_on(self, role: str, alpha: float) -> float:
        """An opacity as this theme lays it on."""
        return alpha * self.strength.get(role, 1.0)


LIGHT = FigureTones(
    "light",
    {
        "bg": "#F3EDE0",
        "form": "#EADFD3",
        "form_lit": "#F4ECE2",
        "form_dark": "#CDBFB0",
        "form_line": "#8F806B",
        "cloth": "#D3C7B2",
        "lit": "#E6DDCC",
        "dark": "#AC9E86",
        "trim": "#C6B9A2",
        "under": "#6E6150",
        "button": "#6E6150",
        "shirt": "#FBF8F1",
        "shirt_dark": "#DFD8CB",
        "line": "#3B342D",
        "ink": "#332C25",
        "shade": "#2B1E10",
        "glow": "#FFFFFA",
        "deep": "#211A13",
        "text": "#29241F",
        "guide": "#2A4A7C",
        "pull": "#A2401F",
        "stack": "#17626C",
        "hang": "#5F5016",
    },
    {"shade": 1.0, "glow": 0.95},
)
DARK = FigureTones(
    "dark",
    {
        "bg": "#2B2621",
        "form": "#4A443E",
        "form_lit": "#585149",
        "form_dark": "#38332E",
        "form_line": "#85796C",
        "cloth": "#6A6054",
        "lit": "#81766A",
        "dark": "#483F36",
        "trim": "#5E554A",
        "under": "#2C2620",
        "button": "#2C2620",
        "shirt": "#A8A196",
        "shirt_dark": "#7B746A",
        "line": "#DDD3C3",
        "ink": "#120E0A",
        "shade": "#0B0805",
        "glow": "#FFF6E6",
        "deep": "#080604",
        "text": "#F0E8DB",
        "guide": "#ABC3ED",
        "pull": "#FFA482",
        "stack": "#7FD3DA",
        "hang": "#E3C873",
    },
    {"shade": 1.12, "glow": 0.72},
)


def path(points: Polygon, closed: bool) -> QPainterPath:
    """Straight pieces through the points."""
    out = QPainterPath(QPointF(*points[0]))
    for point in points[1:]:
        out.lineTo(*point)
    if closed:
        out.closeSubpath()
    out.setFillRule(Qt.FillRule.WindingFill)
    return out


def paint(painter: QPainter, shapes: Sequence[Shape], tones: FigureTones, scale: float) -> None:
    """Paint shapes in mm; the painter's transform is set already, `scale` says how many pixels it makes of a mm."""
    _Brush(painter, tones, 1.0 if scale >= SMALL_SCALE else SMALL_SCALE / max(scale, 0.05)).all(shapes)


@dataclass(frozen=True)
class _Brush:
    painter: QPainter
    tones: FigureTones
    widen: float

    def all(self, shapes: Sequence[Shape]) -> None:
        for shape in shapes:
            self.one(shape)

    def one(self, shape: Shape) -> None:
        match shape:
            case Fill():
                self.painter.fillPath(path(shape.outline, True), self.ink(shape.ink))
            case Line():
                self.line(shape)
            case Field():
                self.field(shape)
            case Spot():
                self.spot(shape)
            case Clip():
                self.clip(shape)
            case Words():
                self.words(shape)

    def ink(self, ink: Ink) -> QBrush:
        if isinstance(ink, Flat):
            return QBrush(self.tones.colour(ink.role, ink.alpha))
        gradient = QLinearGradient(QPointF(*ink.start), QPointF(*ink.end))
        for at, role, alpha in ink.stops:
            gradient.setColorAt(at, self.tones.colour(role, alpha))
        return QBrush(gradient)

    def line(self, shape: Line) -> None:
        width = shape.width * self.widen
        pen = QPen(self.ink(shape.ink), width)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        if shape.dash:
            pen.setDashPattern([length / shape.width for length in shape.dash])
        self.painter.strokePath(path(shape.points, shape.closed), pen)

    def field(self, shape: Field) -> None:
        """The rings one over another, each as opaque as brings the whole to its level."""
        full = min(self.tones.laid_on(shape.role, shape.strength), 0.97)
        count = len(shape.rings)
        colour = QColor(self.tones.colours[shape.role])
        for j, areas in enumerate(shape.rings, start=1):
            colour.setAlphaF(1 - (1 - full * j / count) / (1 - full * (j - 1) / count))
            for area in areas:
                self.painter.fillPath(path(area, True), QBrush(colour))

    def spot(self, shape: Spot) -> None:
        gradient = QRadialGradient(0, 0, 1)
        for at, share in SPOT_STOPS:
            gradient.setColorAt(at, self.tones.colour(shape.role, shape.strength * share))
        self.painter.save()
        self.painter.translate(*shape.at)
        self.painter.rotate(shape.angle)
        self.painter.scale(*shape.r)
        circle = QPainterPath()
        circle.addEllipse(QPointF(0, 0), 1, 1)
        self.painter.fillPath(circle, QBrush(gradient))
        self.painter.restore()

    def clip(self, shape: Clip) -> None:
        self.painter.save()
        area = QPainterPath()
        area.setFillRule(Qt.FillRule.WindingFill)
        for outline in shape.to:
            area.addPath(path(outline, True))
        self.painter.setClipPath(area, Qt.ClipOperation.IntersectClip)
        self.all(shape.shapes)
        self.painter.restore()

    def words(self, shape: Words) -> None:
        """Words on their plate, as outlines, so that they look alike at every scale."""
        font = QFont(self.tones.font)
        font.setPixelSize(WORD_PIXELS)
        font.setWeight(QFont.Weight.DemiBold)
        metrics, size = QFontMetricsF(font), shape.size * self.widen
        wide = max(metrics.horizontalAdvance(line) for line in shape.lines) * size / WORD_PIXELS + size * 1.1
        high = len(shape.lines) * size * 1.28 + size * 0.62
        left, top = shape.at[0] - wide / 2, shape.at[1] - high / 2
        plate = QPainterPath()
        plate.addRoundedRect(QRectF(left, top, wide, high), size * 0.3, size * 0.3)
        self.painter.fillPath(plate, QBrush(self.tones.colour("bg", 0.94)))
        self.painter.strokePath(plate, QPen(self.tones.colour(shape.role, 0.55), 1.4 * self.widen))
        for i, line in enumerate(shape.lines):
            self._word_line(font, line, QPointF(shape.at[0], top + size * (1.18 + 1.28 * i)), size, shape.role)

    def _word_line(self, font: QFont, text: str, at: QPointF, size: float, role: str) -> None:
        letters = QPainterPath()
        letters.addText(0, 0, font, text)
        wide = QFontMetricsF(font).horizontalAdvance(text)
        self.painter.save()
        self.painter.translate(at)
        self.painter.scale(size / WORD_PIXELS, size / WORD_PIXELS)
        self.painter.translate(-wide / 2, 0)
        self.painter.fillPath(letters, QBrush(self.tones.colour(role)))
        self.painter.restore()
