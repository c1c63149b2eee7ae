"""Three totals side by side: at best, likely, at worst."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Rule, Words


class SumRow(QWidget):
    """Each total with its title above and, where there is one, its price below."""

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self._rows = Rows()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        column.addWidget(Rule(look, "ink"))
        column.addWidget(self._rows)

    def show_sum(self, totals: Sequence[tuple[str, str, str]]) -> None:
        """Show (title, total, price) for each."""
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        for title, total, price in totals:
            cell = QVBoxLayout()
            cell.setSpacing(0)
            cell.addWidget(Words(self.look, title, "small", "ink-2"))
            cell.addWidget(Words(self.look, total, "number"))
            if price:
                cell.addWidget(Words(self.look, price, "body"))
            line.addLayout(cell, 1)
        self._rows.show_rows([row])
