"""The margin note under a line: why, who says so, what may be done instead."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import ROW_BAR
from fitdoctor.desk.words import tr


@dataclass(frozen=True)
class WhoSays:
    """A source as it is shown."""

    line: str
    note: str = ""


class ReasonNote(QWidget):
    """Opened in place by the source link or the key W; holds what can be pressed as well."""

    def __init__(
        self,
        look: Look,
        why: str,
        who: Sequence[WhoSays],
        instead: str = "",
        presses: Sequence[QWidget] = (),
        picture: QWidget | None = None,
        heads: tuple[str, str] = ("Why", "Instead"),
    ) -> None:
        super().__init__()
        self.look, self._heads = look, heads
        self.setAccessibleName(tr(heads[0]))
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._columns.setContentsMargins(20, 12, 20, 14)
        self._columns.setSpacing(28)
        self._columns.addLayout(self._said(why, instead, presses, picture), 3)
        self._columns.addLayout(self._who(who), 2)

    def _said(self, why: str, instead: str, presses: Sequence[QWidget], picture: QWidget | None) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(4)
        column.addWidget(Words(self.look, tr(self._heads[0]), "bold"))
        column.addWidget(Words(self.look, why, "reading"))
        if picture:
            column.addSpacing(6)
            column.addWidget(picture)
        if instead:
            column.addSpacing(6)
            column.addWidget(Words(self.look, tr(self._heads[1]), "bold"))
            column.addWidget(Words(self.look, instead, "reading"))
        if presses:
            holder = QWidget()
            flow = FlowLayout(holder, 14)
            for press in presses:
                flow.addWidget(press)
            column.addSpacing(8)
            column.addWidget(holder)
        column.addStretch(1)
        return column

    def _who(self, who: Sequence[WhoSays]) -> QVBoxLayout:
        column = QVBoxLayout()
        column.setSpacing(2)
        column.addWidget(Words(self.look, tr("Who says so"), "small-bold"))
        for source in who:
            column.addWidget(Words(self.look, source.line, "small"))
            if source.note:
                column.addWidget(Words(self.look, source.note, "small", "ink-2"))
            column.addSpacing(6)
        column.addStretch(1)
        return column

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(30)
        self._columns.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(12), super().minimumSizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour("paper-2"))
        painter.fillRect(0, 0, ROW_BAR, self.height(), self.look.colour("ink"))
        painter.end()


def beside(*widgets: QWidget, gap: int = 12, stretch_last: bool = True) -> QWidget:
    """Widgets in a row, in the middle of its height."""
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(gap)
    for widget in widgets:
        line.addWidget(widget, 0, Qt.AlignmentFlag.AlignVCenter)
    if stretch_last:
        line.addStretch(1)
    return row
