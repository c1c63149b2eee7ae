"""Paints a display list with QPainter: on the screen, into a picture, on a printed page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import (
    QBrush,
    QColor,
    QFont,
    QFontMetricsF,
    QLinearGradient,
    QPainter,
    QPainterPath,
    QPainterPathStroker,
    QPen,
    QRadialGradient,
)

from fitdoctor.desk.figure_tones import DARK, LIGHT, FigureTones
from fitdoctor.figure.reach import reaches
from fitdoctor.figure.shapes import Clip, Field, Fill, Flat, Ink, Line, Polygon, Shape, Spot, Words
from fitdoctor.knowledge.entries import Drawing

__all__ = ["DARK", "LIGHT", "FigureTones", "hit", "paint", "path"]
SMALL_SCALE = 0.45
"Pixels per mm below which lines keep the width they have at this scale, so that a small picture keeps its outline."
SPOT_STOPS = ((0.0, 1.0), (0.35, 0.80), (0.7, 0.28), (1.0, 0.0))
WORD_PIXELS = 64


def path(points: Polygon, closed: bool) -> QPainterPath:
    """Straight pieces through the points."""
    out = QPainterPath(QPointF(*points[0]))
    for point in points[1:]:
        out.lineTo(*point)
    if closed:
        out.closeSubpath()
    out.setFillRule(Qt.FillRule.WindingFill)
    return out


def hit(drawing: Drawing, at: QPointF, near: float) -> bool:
    """Whether a place in mm lies on a line of the drawing, or nearer to one than `near` mm."""
    pen = QPainterPathStroker()
    for reach in reaches(drawing):
        pen.setWidth(2 * max(reach.spread, near))
        if pen.createStroke(path(reach.line, False)).contains(at):
            return True
    return False


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
        metrics, size = QFontMetricsF(font), shape.size
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
