"""A numbered answer for a hand with pins in it: large, a second line, and where it helps a picture."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.line_choice import Picture
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR
from fitdoctor.desk.words import tr

LEAST = 104
"Pixels at any size of text."
PICTURE, SMALL = (148, 88), (104, 78)
"Pixels of a picture, and where the answer is narrow."
NARROW = 350
PAD, GAP = 24.0, 18.0
_NUMBER = 1.2
"In em."


class RackAnswerButton(Control):
    """Emits its click; the value goes with it."""

    def __init__(self, look: Look, number: int, value: str, title: str, below: str, question: str, picture: Picture | None = None) -> None:
        super().__init__(look, f"rack-answer-{value}", tr("{number}. {answer}", number=number, answer=plain(title)))
        self.number, self.value, self.title, self.below, self._picture = number, value, title, below, picture
        self.setAccessibleDescription(". ".join(part for part in (plain(question).rstrip("."), plain(below)) if part))
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _title(self) -> Paragraph:
        return Paragraph(self.look, self.title, "bold" if self._picture else "rack-answer")

    def _below(self) -> Paragraph:
        return Paragraph(self.look, self.below, "row")

    def _picture_size(self, width: int) -> tuple[int, int]:
        return SMALL if width < NARROW else PICTURE

    def _pad(self, width: int | None = None) -> float:
        return PAD if (self.width() if width is None else width) >= NARROW else PAD / 2

    def _indent(self, width: int) -> float:
        pad = self._pad(width)
        beside = self._picture_size(width)[0] + pad * 1.25 if self._picture else GAP
        return pad + self.look.em * _NUMBER + beside

    def _room(self, width: int) -> float:
        return max(1.0, width - self._indent(width) - PAD / 2)

    def _words_height(self, width: int) -> float:
        room = self._room(width)
        return self._title().height(room) + (self._below().height(room) if self.below else 0.0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(LEAST, ceil(self._words_height(width) + 24), PICTURE[1] + 16 if self._picture else 0)

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(18), LEAST)

    def minimumSizeHint(self) -> QSize:
        words = max(self._title().least_width(), self._below().least_width() if self.below else 0.0)
        return QSize(ceil(self._indent(0) + words + PAD / 2), LEAST)

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        width = CHOSEN if self.hovered or self.isDown() else HAIR
        painter.setBrush(self.look.colour("paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(self.look.colour("ink"), width))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        number = Paragraph(self.look, str(self.number), "rack-number")
        high = number.height(self.look.em * 3)
        number.paint(painter, QRectF(self._pad(), (self.height() - high) / 2, self.look.em * 3, high), self.look.colour("ink-2"))
        if self._picture:
            self._paint_picture(painter, self._picture)
        self._paint_words(painter)
        self.paint_ring(painter)
        painter.end()

    def _paint_picture(self, painter: QPainter, picture: Picture) -> None:
        size, pad = self._picture_size(self.width()), self._pad()
        plate = QRectF(pad + self.look.em * _NUMBER + pad / 2, (self.height() - size[1]) / 2, *size)
        path = QPainterPath()
        path.addRoundedRect(plate, CORNER, CORNER)
        painter.fillPath(path, self.look.colour("paper-2"))
        image = picture(size, self.devicePixelRatioF())
        if image is not None:
            painter.save()
            painter.setClipPath(path)
            painter.drawImage(plate, image)
            painter.restore()

    def _paint_words(self, painter: QPainter) -> None:
        room, title = self._room(self.width()), self._title()
        y = (self.height() - self._words_height(self.width())) / 2
        title.paint(painter, QRectF(self._indent(self.width()), y, room, 9999), self.look.colour("ink"))
        if self.below:
            below = QRectF(self._indent(self.width()), y + title.height(room), room, 9999)
            self._below().paint(painter, below, self.look.colour("ink-2"))
