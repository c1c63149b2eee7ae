"""Buttons: filled (one on a page), outlined, underlined; their words wrap where room is small."""

from __future__ import annotations

from math import ceil
from typing import Literal

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import Sign, paint_sign
from fitdoctor.desk.tokens import ANSWER, CHOSEN, CORNER, HAIR, TARGET

Role = Literal["plain", "go", "answer"]
PAD = 20.0
SIGN = 0.85


class Button(Control):
    """A button that says what happens. `go` turns the page; `answer` weighs the same as its neighbours and keeps a tick."""

    def __init__(self, look: Look, text: str, name: str, role: Role = "plain", sign: Sign | None = None) -> None:
        super().__init__(look, name, plain(text))
        self.role, self.sign = role, sign
        self.words = text
        self.setProperty("role", role)
        self.setCheckable(role == "answer")
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def say(self, text: str) -> None:
        """Change its words."""
        self.words = text
        self.setAccessibleName(plain(text))
        self.updateGeometry()
        self.update()

    def paragraph(self) -> Paragraph:
        """Its words as they are set."""
        return Paragraph(self.look, self.words, "bold")

    def _sign_px(self) -> float:
        return self.look.em * SIGN + 8 if self.sign or self.role == "answer" else 0.0

    def _pad(self) -> float:
        return PAD if not (self.sign and not self.words) else 12.0

    def _least(self) -> int:
        return self.look.grown(ANSWER if self.role == "answer" else TARGET)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        text = self.paragraph().height(max(1.0, width - 2 * self._pad() - self._sign_px())) if self.words else 0.0
        return max(self._least(), ceil(text + 16))

    def sizeHint(self) -> QSize:
        wide = ceil(self.paragraph().natural_width() + 2 * self._pad() + self._sign_px() + 1) if self.words else self._least() + 8
        return QSize(max(wide, self._least()), self._least())

    def minimumSizeHint(self) -> QSize:
        wide = ceil(self.paragraph().least_width() + 2 * self._pad() + self._sign_px() + 1) if self.words else self._least()
        return QSize(wide, self._least())

    def clipped(self) -> bool:
        """Whether some of the words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_ground(painter)
        tone = "on-thread" if self.role == "go" else "ink" if self.isEnabled() else "ink-2"
        self._paint_words(painter, tone)
        self.paint_ring(painter)
        painter.end()

    def _paint_ground(self, painter: QPainter) -> None:
        go, given = self.role == "go", self.role == "answer" and self.isChecked()
        hot = self.hovered and self.isEnabled()
        fill = "thread" if go else "thread-tint" if given else "paper-2" if hot or self.isDown() else "paper"
        edge = "thread" if go or given else "ink" if self.isEnabled() else "edge"
        width = CHOSEN if given or (go and hot) else HAIR
        colour = self.look.colour(fill)
        if go and hot:
            colour = colour.darker(112) if self.look.tokens.name == "light" else colour.lighter(106)
        painter.setBrush(colour)
        painter.setPen(QPen(self.look.colour(edge), width))
        inset = width / 2
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(inset, inset, -inset, -inset), CORNER, CORNER)

    def _paint_words(self, painter: QPainter, tone: str) -> None:
        paragraph, colour = self.paragraph(), self.look.colour(tone)
        sign = self.sign or ("tick" if self.role == "answer" and self.isChecked() else None)
        size = self.look.em * SIGN
        room = self.width() - 2 * self._pad() - self._sign_px()
        high = paragraph.height(max(1.0, room)) if self.words else 0.0
        box = QRectF(self._pad() + self._sign_px() / 2, (self.height() - high) / 2, max(1.0, room), high)
        if sign and self.words:
            wide = max((line.width for line in paragraph.lines(box.width())), default=0.0)
            left = box.center().x() - wide / 2 - size - 8 if not self.sign else self._pad()
            box.moveLeft(self._pad() + self._sign_px() if self.sign else box.left())
            ink = self.look.colour("thread") if self.role == "answer" else colour
            paint_sign(painter, sign, QRectF(left, (self.height() - size) / 2, size, size), ink)
        elif sign:
            paint_sign(painter, sign, QRectF((self.width() - size) / 2, (self.height() - size) / 2, size, size), colour)
        if self.words:
            paragraph.paint(painter, box, colour, Qt.AlignmentFlag.AlignHCenter)


class Link(Control):
    """Underlined words that lead somewhere or undo something; they say where or what."""

    def __init__(self, look: Look, text: str, name: str, role: str = "small", big: bool = False) -> None:
        super().__init__(look, name, plain(text))
        self.words, self.text_role, self.big = text, role, big
        self.setProperty("role", "quiet")
        policy = QSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def say(self, text: str) -> None:
        """Change its words; one that says nothing takes no room."""
        self.words = text
        self.setAccessibleName(plain(text))
        if not text or self.parent():
            self.setVisible(bool(text))
        self.updateGeometry()
        self.update()

    def paragraph(self) -> Paragraph:
        """Its words as they are set."""
        return Paragraph(self.look, self.words, self.text_role)

    def _least(self) -> int:
        return self.look.target() if self.big else ceil(self.look.line(self.text_role) + 6)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(self._least(), ceil(self.paragraph().height(width - 4) + 6))

    def sizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().natural_width() + 5), self._least())

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(self.paragraph().least_width() + 5), self._least())

    def clipped(self) -> bool:
        """Whether some of the words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        colour = self.look.colour("ink" if self.hovered else "thread")
        paragraph = self.paragraph()
        high = paragraph.height(self.width() - 4)
        box = QRectF(0, (self.height() - high) / 2, self.width() - 4, high)
        paragraph.paint(painter, box, colour)
        painter.setPen(QPen(colour, HAIR))
        base = box.top() + paragraph.base_line() + 3.5
        for line in paragraph.lines(box.width()):
            painter.drawLine(round(box.left()), round(base), round(box.left() + line.width), round(base))
            base += self.look.line(self.text_role)
        self.paint_ring(painter)
        painter.end()
