"""A section of the settings: rows under a heading, that tell what is wanted and show how the shop is set."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.text import SectionHead
from fitdoctor.shop import Shop

GAP = 20


class Group(QWidget):
    """Emits the values wanted by the settings' names, what is said of them, and under which key several changes are one."""

    wanted = Signal(object, str, str)

    def __init__(self, look: Look, title: str) -> None:
        super().__init__()
        self.look = look
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(0, 0, 0, 0)
        self.column.setSpacing(GAP)
        self.column.addWidget(SectionHead(look, title))

    def lay(self, rows: Sequence[QWidget]) -> None:
        """Rows one under another."""
        for row in rows:
            self.column.addWidget(row)

    def show_shop(self, shop: Shop) -> None:
        """Show how the shop is set."""
        raise NotImplementedError


def show_choice(row: ChoiceRow, value: str) -> None:
    """Show which of a row is chosen."""
    for choice in row.choices:
        choice.setChecked(choice.value == value)
    row.group.rest()
