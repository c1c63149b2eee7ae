"""The marks on the cloth: letter, seam and place, what to do, how much. What cannot be worked out yet stands basted."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.picture import BALL, paint_ball
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.text import Rule
from fitdoctor.desk.tokens import HAIR, ROW_BAR
from fitdoctor.desk.words import tr, upper_first
from fitdoctor.sheet import SheetMark

_DO, _MUCH, _NARROW_EM = 0.12, 0.34, 28


class MarkRow(Control):
    """One mark; chosen it lights its line on the plate."""

    def __init__(self, look: Look, mark: SheetMark, name: str) -> None:
        place = ", ".join(part for part in (upper_first(mark.seam), mark.where) if part)
        super().__init__(look, name, f"{mark.letter}: {plain(place)}, {mark.do}, {mark.how_much}")
        self.mark = mark
        self._assumed = Paragraph(look, upper_first(mark.assumed), "small")
        self.place = place + (f" ({tr('lining')})" if mark.layer == "lining" else "")
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _columns(self, width: int) -> list[tuple[float, float, Paragraph, str]]:
        """(left, width, text, colour) of each column; one under another where room is small is told by equal lefts."""
        look, first = self.look, self.look.px(BALL) + 16
        room = width - first
        place = Paragraph(look, self.place, "row")
        do = Paragraph(look, self.mark.do, "row")
        convention, _, amount = self.mark.how_much.rpartition(", in all ")
        much = f"**{convention}**, in all {amount}" if convention else f"**{self.mark.how_much}**"
        amounts = Paragraph(look, much, "row")
        if width < look.px(_NARROW_EM):
            return [(first, room, place, "ink"), (first, room, Paragraph(look, f"{self.mark.do}: {much}", "row"), "ink")]
        wide_do = max(room * _DO, do.natural_width() + 4)
        wide_much = room * _MUCH
        return [
            (first, room - wide_do - wide_much - 24, place, "ink"),
            (width - wide_much - wide_do - 12, wide_do, do, "ink"),
            (width - wide_much, wide_much, amounts, "ink"),
        ]

    def _high(self, width: int) -> float:
        columns = self._columns(width)
        if len(columns) == 2:
            return sum(text.height(wide) for _, wide, text, _ in columns) + 2
        return max(text.height(wide) for _, wide, text, _ in columns)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        assumed = self._assumed.height(width - self._columns(width)[0][0]) if self.mark.assumed else 0.0
        return max(self.look.grown(42), ceil(self._high(width) + assumed + 18))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(30), self.look.grown(43))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(14), self.look.grown(43))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look = self.look
        if self.isChecked() or self.hovered:
            painter.fillRect(self.rect(), look.colour("thread-tint" if self.isChecked() else "paper-2"))
        if self.isChecked():
            painter.fillRect(0, 0, ROW_BAR, self.height(), look.colour("thread"))
        y = 9.0
        middle = y + look.line("row") / 2
        paint_ball(painter, look, QPointF(look.px(BALL) / 2 + 6, middle), self.mark.letter, basted=bool(self.mark.assumed))
        columns = self._columns(self.width())
        for left, wide, text, tone in columns:
            text.paint(painter, QRectF(left, y, wide, 999), look.colour(tone))
            if len(columns) == 2:
                y += text.height(wide) + 2
        if self.mark.assumed:
            left, below = columns[0][0], 9 + self._high(self.width())
            self._assumed.paint(painter, QRectF(left, below, self.width() - left, 999), look.colour("care"))
        self.paint_ring(painter)
        painter.end()


class _OpenRow(QWidget):
    """An amount that waits for a measurement."""

    def __init__(self, look: Look, title: str) -> None:
        super().__init__()
        self.look, self.words = look, tr("Measure first: {what}", what=title)
        self._text, self._left = Paragraph(look, self.words, "row"), look.px(BALL) + 16
        self.setAccessibleName(self.words)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(self.look.grown(43), ceil(self._text.height(width - self._left) + 18))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(30), self.look.grown(43))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(14), self.look.grown(43))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(self.look.colour("care"), HAIR + 0.5)
        pen.setDashPattern([3, 2])
        painter.setPen(pen)
        painter.drawLine(QPointF(0, self.height() - 2), QPointF(self.width(), self.height() - 2))
        paint_ball(painter, self.look, QPointF(self.look.px(BALL) / 2 + 6, 9 + self.look.line("row") / 2), "?", basted=True)
        self._text.paint(painter, QRectF(self._left, 9, self.width() - self._left, 999), self.look.colour("ink-2"))
        painter.end()


class MarksTable(QWidget):
    """Emits the letter of the row chosen."""

    markChosen = Signal(str)

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self._rows = Rows()
        self.group = ControlGroup()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._rows)

    def show_marks(self, marks: Sequence[SheetMark], open_amounts: Sequence[str]) -> None:
        """Show these marks, and what must be measured before the others can be worked out."""
        rows: list[QWidget] = []
        marked = [MarkRow(self.look, mark, f"{self.objectName()}-{mark.letter}") for mark in marks]
        for row in marked:
            row.clicked.connect(lambda on=False, who=row: self.markChosen.emit(who.mark.letter if on else ""))
            rows += [row, Rule(self.look)]
        rows += [_OpenRow(self.look, title) for title in open_amounts]
        self._rows.show_rows(rows)
        self.group = ControlGroup(marked, exclusive=True)

