"""One field of the filter: its name and value on a line; pressed it opens on the values to choose from."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.parts.signs import paint_sign
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import tr

_SIGN, _PAD, _GAP = 0.62, 5, 12


class DrawerHead(Control):
    """Name at the left, value after it, plus or minus at the right."""

    def __init__(self, look: Look, name: str, title: str) -> None:
        super().__init__(look, name)
        self.title, self.value = title, ""
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_value(self, value: str) -> None:
        """Show the value that holds; none lets all pass."""
        self.value = value
        self.setAccessibleName(f"{self.title}: {value or tr('any')}")
        self.updateGeometry()
        self.update()

    def _paragraph(self) -> Paragraph:
        value = f"**{self.value}**" if self.value else tr("any")
        return Paragraph(self.look, f"{self.title}: {value}", "row")

    def _room(self, width: float) -> float:
        return max(1.0, width - self.look.px(_SIGN) - _GAP)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return ceil(self._paragraph().height(self._room(width)) + 2 * _PAD)

    def sizeHint(self) -> QSize:
        return QSize(ceil(self._paragraph().natural_width() + self.look.px(_SIGN) + _GAP + 1), ceil(self.look.line("row") + 2 * _PAD))

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(self._paragraph().least_width() + self.look.px(_SIGN) + _GAP + 1), ceil(self.look.line("row") + 2 * _PAD))

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.hovered:
            painter.fillRect(self.rect(), self.look.colour("paper-2"))
        painter.setPen(QPen(self.look.colour("rule"), HAIR))
        painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)
        box = QRectF(0, _PAD, self._room(self.width()), self.height())
        self._paragraph().paint(painter, box, self.look.colour("ink"))
        size = self.look.px(_SIGN)
        middle = _PAD + (self.look.line("row") - size) / 2
        sign = QRectF(self.width() - size - 2, middle, size, size)
        paint_sign(painter, "minus" if self.isChecked() else "plus", sign, self.look.colour("ink-2"))
        self.paint_ring(painter)
        painter.end()


class Drawer(QWidget):
    """Emits its field and the value chosen; and its field when it is opened."""

    chosen = Signal(str, str)
    opened = Signal(str)

    def __init__(self, look: Look, field: str, title: str, values: Sequence[tuple[str, str]]) -> None:
        super().__init__()
        self.field = field
        self._titles = dict(values)
        self.head = DrawerHead(look, f"look-up-by-{field}", title)
        self.row = ChoiceRow(look, field, [("", tr("Any")), *values], "", f"look-up-by-{field}", title)
        self.row.chosen.connect(self._choose)
        self.head.toggled.connect(self._turn)
        self._inside = QWidget()
        inside = QVBoxLayout(self._inside)
        inside.setContentsMargins(0, 8, 0, 12)
        inside.addWidget(self.row)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.head)
        column.addWidget(self._inside)
        self._inside.hide()
        self.show_value("")

    def show_value(self, value: str) -> None:
        """Show the value that holds."""
        self.head.show_value(self._titles.get(value, ""))
        for choice in self.row.choices:
            choice.setChecked(choice.value == value)
        self.row.group.rest()

    def close_it(self) -> None:
        """Close it."""
        self.head.setChecked(False)

    def _turn(self, opened: bool) -> None:
        self._inside.setVisible(opened)
        if opened:
            self.opened.emit(self.field)
            if self.head.ringed:
                self.row.focus_first(Qt.FocusReason.TabFocusReason)

    def _choose(self, _: str, value: str) -> None:
        self.chosen.emit(self.field, value)
        self.close_it()
        self.head.setFocus(Qt.FocusReason.TabFocusReason)
