"""A way to do it: its name, its verdict as a tag, the first reason, the minutes."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.round_choice import paint_round
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.tag import TagState, paint_tag, state_tag_size
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR

PAD, GAP = 14.0, 6.0


@dataclass(frozen=True)
class Way:
    """A method as it is shown."""

    method: str
    title: str
    tag: TagState
    verdict: str
    reason: str
    time: str


class MethodChoice(Control):
    """Chosen it has a thread edge and a filled round; any verdict can be chosen."""

    def __init__(self, look: Look, way: Way, chosen: bool, name: str) -> None:
        super().__init__(look, name, ". ".join(plain(part) for part in (way.title, way.verdict, way.reason, way.time) if part))
        self.way = way
        self.setCheckable(True)
        self.setChecked(chosen)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _title(self) -> Paragraph:
        return Paragraph(self.look, self.way.title, "bold")

    def _indent(self) -> float:
        return self.look.px(1.3) + 10

    def _parts(self) -> list[tuple[Paragraph, str]]:
        rows = ((self.way.reason, "ink"), (self.way.time, "ink-2"))
        return [(Paragraph(self.look, text, "small"), tone) for text, tone in rows if text]

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        inner = width - 2 * PAD
        high = self._title().height(max(1.0, inner - self._indent())) + self.look.px(1.7) + 2 * GAP
        high += sum(part.height(max(1.0, inner)) + 3 for part, _ in self._parts())
        return ceil(high + 2 * PAD - 2)

    def sizeHint(self) -> QSize:
        wide = self.look.px(19)
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        tag = state_tag_size(self.look, self.way.tag, self.way.verdict).width()
        words = max((part.least_width() for part, _ in self._parts()), default=0.0)
        return QSize(ceil(max(tag, words, self._title().least_width() + self._indent()) + 2 * PAD), self.look.target())

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        width = CHOSEN if on else HAIR
        painter.setBrush(look.colour("thread-tint" if on else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("thread" if on else "edge"), width))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        inner, y = self.width() - 2 * PAD, PAD
        size = look.px(1.3)
        paint_round(painter, look, QRectF(PAD, y + (look.line("bold") - size) / 2, size, size), on)
        title = self._title()
        title.paint(painter, QRectF(PAD + self._indent(), y, inner - self._indent(), 999), look.colour("ink"))
        y += title.height(inner - self._indent()) + GAP
        tag = state_tag_size(look, self.way.tag, self.way.verdict)
        paint_tag(painter, look, QRectF(PAD, y, tag.width(), tag.height()), self.way.tag, self.way.verdict)
        y += tag.height() + GAP
        for part, tone in self._parts():
            part.paint(painter, QRectF(PAD, y, inner, 999), look.colour(tone))
            y += part.height(inner) + 3
        self.paint_ring(painter)
        painter.end()
