"""A job in the list: two lines, in columns where there is room, with its state as a tag; the chosen one is tinted with a bar."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.jobbook.lines import RowWords
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.parts.tag import paint_tag, state_tag_size
from fitdoctor.desk.tokens import HAIR, ROW_BAR
from fitdoctor.desk.words import tr

HIGH = 63
WIDE_EM, STATE_EM, LAST_EM = 40.0, 11.6, 5.0
"From this width in columns; the columns of state and day."
_LEFT, _PAD, _GAP = 14.0, 6.0, 14.0
_FOUND = 2
"Its place among the texts of a row."


def columns(look: Look, width: float) -> tuple[float, float, float, float] | None:
    """Left edges of what was found, how it stands, last, and the right edge; None where there is no room for columns."""
    if width < look.px(WIDE_EM):
        return None
    right = width - 12.0
    state = right - look.px(LAST_EM) - look.px(STATE_EM)
    return _LEFT + (state - _LEFT) * 0.54, state, right - look.px(LAST_EM), right


class JobRow(Control):
    """Looked at by a press or by coming to it with the arrows; opened by Enter or a double click."""

    came = Signal(str)
    opened = Signal(str)

    def __init__(self, look: Look, words: RowWords) -> None:
        super().__init__(look, f"jobs-row-{words.id}")
        self.job, self.words = words.id, words
        self.chosen = False
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        parts = (words.title, words.whom, words.found, words.word, words.remark, tr("last in hand {day}", day=words.last))
        self.setAccessibleName(", ".join(part for part in parts if part))

    def show_chosen(self, chosen: bool) -> None:
        """Show whether it is the one looked at."""
        self.chosen = chosen
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if self.ringed:
            self.came.emit(self.job)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.opened.emit(self.job)
        else:
            super().keyPressEvent(event)

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:
        self.opened.emit(self.job)

    # ---- how high

    def _paragraphs(self, width: float) -> list[tuple[Paragraph, str, QRectF]]:
        """Each text with its tone and its place, the tag left out."""
        look, at = self.look, columns(self.look, width)
        found_left = at[0] if at else _LEFT
        room = (at[0] if at else width - look.px(STATE_EM)) - _LEFT - _GAP
        title, whom = Paragraph(look, self.words.title, "bold"), Paragraph(look, self.words.whom, "small")
        shown = [(title, "ink", QRectF(_LEFT, _PAD, room, title.height(room)))]
        below = shown[0][2].bottom()
        shown.append((whom, "ink-2", QRectF(_LEFT, below, room, whom.height(room) if self.words.whom else 0)))
        found = Paragraph(look, self.words.found, "row" if at else "small")
        wide = (at[1] - at[0] - _GAP) if at else room
        top = _PAD if at else shown[1][2].bottom()
        shown.append((found, "ink", QRectF(found_left, top, wide, found.height(wide))))
        state = at[1] if at else width - look.px(STATE_EM)
        remark = Paragraph(look, self.words.remark, "small")
        wide = look.px(STATE_EM) - 4
        shown.append((remark, "ink-2", QRectF(state, _PAD + self._tag().height() + 2, wide, remark.height(wide))))
        return shown

    def _tag(self) -> QSize:
        return state_tag_size(self.look, self.words.tag, self.words.word)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        least = self.look.grown(HIGH)
        return max(least, ceil(max(box.bottom() for _, _, box in self._paragraphs(width)) + _PAD + 2))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(30), self.look.grown(HIGH))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(STATE_EM * 2), self.look.grown(HIGH))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.height() < self.heightForWidth(self.width()) or self._tag().width() > self.look.px(STATE_EM)

    # ---- painting

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, width = self.look, float(self.width())
        if self.chosen or self.hovered:
            painter.fillRect(self.rect(), look.colour("thread-tint" if self.chosen else "paper-2"))
        if self.chosen:
            painter.fillRect(0, 0, ROW_BAR, self.height(), look.colour("thread"))
        at = columns(look, width)
        for number, (text, tone, box) in enumerate(self._paragraphs(width)):
            if at and number == _FOUND:
                box.moveTop((self.height() - box.height()) / 2)
            text.paint(painter, box, look.colour(tone))
        size = self._tag()
        state = at[1] if at else width - look.px(STATE_EM)
        paint_tag(painter, look, QRectF(state, _PAD, size.width(), size.height()), self.words.tag, self.words.word)
        if at:
            self._paint_last(painter, at[2], at[3])
        painter.setPen(QPen(look.colour("rule"), HAIR))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
        self.paint_ring(painter)
        painter.end()

    def _paint_last(self, painter: QPainter, left: float, right: float) -> None:
        last = Paragraph(self.look, self.words.last, "row")
        wide = right - left
        box = QRectF(left, (self.height() - last.height(wide)) / 2, wide, 99)
        last.paint(painter, box, self.look.colour("ink-2"), Qt.AlignmentFlag.AlignRight)


class Heads(QWidget):
    """The heads of the columns, with the ink rule below; none where the rows have no columns."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.setFixedHeight(ceil(look.line("small")) + 8)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        at, ink = columns(self.look, self.width()), self.look.colour("ink-2")
        heads = [(_LEFT, tr("Garment, and whom it is for"))]
        if at:
            heads += [(at[0], tr("What was found")), (at[1], tr("How it stands"))]
            last = QRectF(at[2], 0, at[3] - at[2], 40)
            Paragraph(self.look, tr("Last"), "small").paint(painter, last, ink, Qt.AlignmentFlag.AlignRight)
        for left, text in heads:
            Paragraph(self.look, text, "small").paint(painter, QRectF(left, 0, 400, 40), ink)
        painter.setPen(QPen(self.look.colour("ink"), HAIR))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
        painter.end()
