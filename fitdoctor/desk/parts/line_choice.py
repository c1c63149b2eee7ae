"""A small picture to choose with its name and one line of words: a symptom, a kind of garment."""

from __future__ import annotations

from collections.abc import Callable
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR

Picture = Callable[[tuple[int, int], float], QImage | None]
"""(size in pixels, pixel ratio) -> picture."""
_GAP = 6
_BESIDE_GAP = 16


class LineChoice(Control):
    """The picture above its words, or beside them; chosen it has a thread edge, a tick and says so."""

    def __init__(self, look: Look, entry: str, title: str, remark: str, picture: Picture, name: str) -> None:
        super().__init__(look, name)
        self.entry, self.title, self.remark, self.noted = entry, title, remark, ""
        self._picture = picture
        self.picture_size = (220, 88)
        self.beside = False
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.show_noted("")

    def show_noted(self, noted: str) -> None:
        """Say how it was noted (‘noted as 1’), or nothing."""
        self.noted = noted
        self.setChecked(bool(noted))
        self.setAccessibleName(". ".join(part for part in (plain(self.title), noted, plain(self.remark)) if part))
        self.updateGeometry()
        self.update()

    def set_picture(self, size: tuple[int, int], beside: bool) -> None:
        """The picture's size in pixels, and whether the words stand beside it."""
        self.picture_size, self.beside = size, beside
        self.updateGeometry()
        self.update()

    def _name(self) -> Paragraph:
        return Paragraph(self.look, self.title, "bold")

    def _below(self) -> Paragraph:
        return Paragraph(self.look, self.noted or self.remark, "small-bold" if self.noted else "small")

    def _words_width(self, width: int) -> float:
        return max(1.0, width - self.picture_size[0] - _BESIDE_GAP if self.beside else float(width))

    def _remark_indent(self) -> float:
        return self.look.em if self.noted else 0.0

    def _words_height(self, width: int) -> float:
        wide = self._words_width(width)
        below = self._below().height(wide - self._remark_indent()) if self.noted or self.remark else 0.0
        return self._name().height(wide) + below

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        words = self._words_height(width)
        return ceil(max(words, self.picture_size[1]) if self.beside else self.picture_size[1] + _GAP + words) + 4

    def sizeHint(self) -> QSize:
        wide = self.picture_size[0] + (self.look.px(12) + _BESIDE_GAP if self.beside else 0)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        words = max(self._name().least_width(), self._below().least_width() + self._remark_indent())
        return QSize(ceil(self.picture_size[0] + _BESIDE_GAP + words) if self.beside else max(96, ceil(words)), self.picture_size[1])

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        plate = QRectF(0, 0, self.picture_size[0] if self.beside else self.width(), self.picture_size[1])
        self._paint_picture(painter, plate)
        self._paint_words(painter, plate)
        self.paint_ring(painter, plate)
        painter.end()

    def _paint_picture(self, painter: QPainter, plate: QRectF) -> None:
        on, hot = self.isChecked(), self.hovered
        inside = plate.adjusted(1, 1, -1, -1)
        path = QPainterPath()
        path.addRoundedRect(inside, CORNER, CORNER)
        painter.fillPath(path, self.look.colour("paper-2"))
        image = self._picture((round(inside.width()), round(inside.height())), self.devicePixelRatioF())
        if image is not None:
            painter.save()
            painter.setClipPath(path)
            painter.drawImage(inside, image)
            painter.restore()
        width = CHOSEN if on or hot else HAIR
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.look.colour("thread" if on or hot else "edge"), width))
        painter.drawRoundedRect(plate.adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)

    def _paint_words(self, painter: QPainter, plate: QRectF) -> None:
        wide = self._words_width(self.width())
        x = plate.right() + _BESIDE_GAP if self.beside else 0.0
        y = max(0.0, (self.height() - self._words_height(self.width())) / 2) if self.beside else plate.bottom() + _GAP
        name, below = self._name(), self._below()
        name.paint(painter, QRectF(x, y, wide, 999), self.look.colour("ink"))
        y += name.height(wide)
        if self.noted:
            size = self.look.em * 0.82
            paint_sign(painter, "tick", QRectF(x, y + (self.look.line("small") - size) / 2, size, size), self.look.colour("thread"))
            below.paint(painter, QRectF(x + self.look.em, y, wide - self.look.em, 999), self.look.colour("thread"))
        elif self.remark:
            below.paint(painter, QRectF(x, y, wide, 999), self.look.colour("ink-2"))
