"""A tag for a state: sign, word and edge. Sewn means settled, basted not settled, doubled that the work cannot go past here."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil
from typing import Literal

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.signs import Sign, paint_sign
from fitdoctor.desk.tokens import CORNER, HAIR

Edge = Literal["sewn", "basted", "doubled"]
TagState = Literal["met", "limit", "not-known", "stops", "care", "plain", "yours", "given"]


@dataclass(frozen=True)
class TagLook:
    """How a state is shown."""

    tone: str
    ground: str
    sign: Sign | None
    edge: Edge = "sewn"


LOOKS: dict[TagState, TagLook] = {
    "met": TagLook("good", "good-tint", "tick"),
    "limit": TagLook("care", "care-tint", "cross"),
    "not-known": TagLook("care", "paper", "query", "basted"),
    "stops": TagLook("stop", "stop-tint", "cross", "doubled"),
    "care": TagLook("care", "care-tint", "care"),
    "plain": TagLook("ink-2", "paper", None),
    "yours": TagLook("thread", "thread-tint", None),
    "given": TagLook("ink-2", "paper", "cross"),
}


def state_tag_size(look: Look, state: TagState, word: str) -> QSize:
    """The room a tag takes, pixels."""
    sign = look.em * 1.24 if LOOKS[state].sign else 0.0
    return QSize(ceil(look.metrics("small-bold").horizontalAdvance(word) + 20 + sign), look.px(1.7))


def paint_tag(painter: QPainter, look: Look, box: QRectF, state: TagState, word: str) -> None:
    """Paint a tag into a box of its own size."""
    shown, em = LOOKS[state], look.em
    colour, ground = look.colour(shown.tone), look.colour(shown.ground)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    pen = QPen(look.colour("edge") if state == "plain" else colour, 2.0 if shown.edge == "basted" else HAIR)
    if shown.edge == "basted":
        pen.setDashPattern([3, 2])
    painter.setPen(pen)
    painter.setBrush(ground)
    frame = box.adjusted(1, 1, -1, -1)
    painter.drawRoundedRect(frame, CORNER, CORNER)
    if shown.edge == "doubled":
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(frame.adjusted(3, 3, -3, -3), 1, 1)
    x = box.left() + 10
    if shown.sign:
        size = em * 0.8
        paint_sign(painter, shown.sign, QRectF(x, box.center().y() - size / 2, size, size), colour)
        x += em * 1.24
    painter.setFont(look.font("small-bold"))
    painter.setPen(colour)
    painter.drawText(QRectF(x, box.top(), box.right() - x, box.height()), int(Qt.AlignmentFlag.AlignVCenter), word)


class StateTag(QWidget):
    """A tag as a widget of its own."""

    def __init__(self, look: Look, state: TagState, word: str, name: str = "") -> None:
        super().__init__()
        self.look, self.state, self.word = look, state, word
        self.setObjectName(name)
        self.setProperty("state", state)
        self.setAccessibleName(word)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def show_state(self, state: TagState, word: str) -> None:
        """Show another state."""
        self.state, self.word = state, word
        self.setProperty("state", state)
        self.setAccessibleName(word)
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return state_tag_size(self.look, self.state, self.word)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        paint_tag(painter, self.look, QRectF(self.rect()), self.state, self.word)
        painter.end()
