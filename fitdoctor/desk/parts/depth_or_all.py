"""Two pictures to choose from: the depth of the tuck, or what it takes up in all. Neither is chosen beforehand."""

from __future__ import annotations

from typing import Literal

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.round_choice import paint_round
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR
from fitdoctor.desk.words import tr

Sense = Literal["depth", "all"]
HIGH = 112


class _TuckChoice(Control):
    def __init__(self, look: Look, name: str, sense: Sense, text: str) -> None:
        super().__init__(look, name, text)
        self.sense, self.words = sense, text
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(12), round(self.look.px(2.7) + 64))

    def minimumSizeHint(self) -> QSize:
        return QSize(round(self._text().natural_width() + self.look.em * 1.3 + 40), self.sizeHint().height())

    def _text(self) -> Paragraph:
        return Paragraph(self.look, self.words, "bold")

    def clipped(self) -> bool:
        """Whether its words are out of sight."""
        return self.width() < self.minimumSizeHint().width()

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        width = CHOSEN if on else HAIR
        painter.setBrush(look.colour("thread-tint" if on else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("thread" if on else "edge"), width))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        size = look.px(1.3)
        paint_round(painter, look, QRectF(12, 10, size, size), on)
        text = self._text()
        text.paint(painter, QRectF(size + 22, 10 + (size - look.line("bold")) / 2, self.width(), 99), look.colour("ink"))
        paint_tuck(painter, look, QPointF(self.width() * 0.42, self.height() - 18), self.sense)
        self.paint_ring(painter)
        painter.end()


def paint_tuck(painter: QPainter, look: Look, foot: QPointF, sense: Sense) -> None:
    """A pinned tuck in section, and the line that says what was measured."""
    ink, thread = look.colour("ink"), look.colour("thread")
    pen = QPen(ink, 2.6, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(_fold(foot, half=4.5, high=40, run=48))
    painter.setPen(QPen(ink, 1.3))
    painter.drawLine(foot + QPointF(-19, -9), foot + QPointF(19, -12))
    painter.setBrush(ink)
    painter.drawEllipse(foot + QPointF(-19, -9), 2, 2)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(QPen(thread, 2))
    if sense == "depth":
        for y in (-1.0, -40.0):
            painter.drawLine(foot + QPointF(21, y), foot + QPointF(30, y))
        painter.drawLine(foot + QPointF(25.5, -1), foot + QPointF(25.5, -40))
        return
    painter.drawPath(_fold(foot + QPointF(0, -4), half=8.5, high=41, run=0))
    for side in (-1, 1):
        tip = foot + QPointF(side * 8.5, -2)
        painter.drawLine(tip, tip + QPointF(side * 4.5, -4))
        painter.drawLine(tip, tip + QPointF(-side * 1.5, -6))


def _fold(foot: QPointF, half: float, high: float, run: float) -> QPainterPath:
    x, y = foot.x(), foot.y()
    path = QPainterPath(QPointF(x - half - run, y))
    path.lineTo(x - half, y)
    path.lineTo(x - half, y - high + half)
    path.cubicTo(x - half, y - high - half * 0.4, x + half, y - high - half * 0.4, x + half, y - high + half)
    path.lineTo(x + half, y)
    path.lineTo(x + half + run, y)
    return path


class DepthOrAll(QWidget):
    """Emits `depth` or `all`."""

    senseChosen = Signal(str)

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        words: tuple[tuple[Sense, str], ...] = (("depth", tr("Depth of the fold")), ("all", tr("Taken up in all")))
        self.choices = [_TuckChoice(look, f"{name}-{sense}", sense, text) for sense, text in words]
        self.group = ControlGroup(self.choices, exclusive=True)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(14)
        for choice in self.choices:
            choice.clicked.connect(lambda _on=False, who=choice: self._press(who))
            row.addWidget(choice, 1)

    def _press(self, choice: _TuckChoice) -> None:
        choice.setChecked(True)
        self.senseChosen.emit(choice.sense)

    def show_sense(self, sense: str) -> None:
        """Show which was chosen; an empty text chooses neither."""
        for choice in self.choices:
            choice.setChecked(choice.sense == sense)
        self.group.rest()
