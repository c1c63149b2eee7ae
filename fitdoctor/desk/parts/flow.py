"""A layout that sets its items one beside another and goes to the next line where there is no room."""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Keeps the items' own sizes; an item wider than the line gets the whole line."""

    def __init__(self, parent: QWidget | None = None, gap: int = 8) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap = gap
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._place(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        self._place(rect, move=True)

    def sizeHint(self) -> QSize:
        wide = sum(item.sizeHint().width() + self._gap for item in self._shown())
        high = max((item.sizeHint().height() for item in self._shown()), default=0)
        return QSize(max(0, wide - self._gap), high)

    def minimumSize(self) -> QSize:
        wide = max((item.minimumSize().width() for item in self._shown()), default=0)
        high = max((item.minimumSize().height() for item in self._shown()), default=0)
        return QSize(wide, high)

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _place(self, rect: QRect, move: bool) -> int:
        x, y, line = rect.x(), rect.y(), 0
        for item in self._shown():
            wide = min(item.sizeHint().width(), rect.width())
            high = item.heightForWidth(wide) if item.hasHeightForWidth() else item.sizeHint().height()
            if x > rect.x() and x + wide > rect.x() + rect.width():
                x, y, line = rect.x(), y + line + self._gap, 0
            if move:
                item.setGeometry(QRect(QPoint(x, y), QSize(wide, high)))
            x, line = x + wide + self._gap, max(line, high)
        return y + line - rect.y()
