"""A column of rows that is shown anew whenever the case changes."""

from __future__ import annotations

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLayout, QSizePolicy, QVBoxLayout, QWidget


class Rows(QWidget):
    """Holds rows one under another; `show_rows` puts others in their place."""

    def __init__(self, name: str = "", gap: int = 0) -> None:
        super().__init__()
        self.setObjectName(name)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(gap)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_rows(self, rows: Iterable[QWidget]) -> None:
        """Show these rows in place of those before."""
        for widget in emptied(self._column):
            widget.hide()
            widget.setObjectName("")
            widget.setParent(None)
            widget.deleteLater()
        shown = list(rows)
        for row in shown:
            self._column.addWidget(row)
        if not shown or self.parent():
            self.setVisible(bool(shown))  # an empty column would still take the spaces round it

    def rows(self) -> list[QWidget]:
        """The rows shown, in order."""
        items = (self._column.itemAt(at) for at in range(self._column.count()))
        return [widget for item in items if item is not None and (widget := item.widget()) is not None]


def emptied(layout: QLayout) -> list[QWidget]:
    """Take everything out of a layout; its widgets, in order.

    `takeAt` would leave the old item registered with its widget, and the next layout would work with heights of before.
    """
    items = [item for at in range(layout.count()) if (item := layout.itemAt(at)) is not None]
    widgets = [widget for item in items if (widget := item.widget()) is not None]
    for item in items:
        if item.widget() is None:
            layout.removeItem(item)
    for widget in widgets:
        layout.removeWidget(widget)
    return widgets


def left(widget: QWidget) -> QWidget:
    """The widget at the left of a row, at its own width."""
    row = QWidget()
    column = QVBoxLayout(row)
    column.setContentsMargins(0, 0, 0, 0)
    column.addWidget(widget, 0, Qt.AlignmentFlag.AlignLeft)
    return row
