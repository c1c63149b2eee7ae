"""One of several values, underlined like a link; a press opens the list of them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link


class Pick(Link):
    """Emits the value picked. Says its question and the value, ‘State: any’; bare, where the question stands beside it, the value alone."""

    picked = Signal(str)

    def __init__(
        self, look: Look, question: str, values: Sequence[tuple[str, str]], value: str, name: str, role: str = "small", bare: bool = False
    ) -> None:
        super().__init__(look, "", name, role)
        self.question, self.value, self.bare = question, value, bare
        self._values = tuple(values)
        self.clicked.connect(self.open)
        self.show_value(value)

    def show_value(self, value: str) -> None:
        """Show another value as the picked one."""
        self.value = value
        words = dict(self._values).get(value, "")
        self.say(words if self.bare else f"{self.question}: {words}")
        self.setAccessibleName(f"{self.question}: {words}")

    def show_values(self, values: Sequence[tuple[str, str]], value: str) -> None:
        """Offer other values."""
        self._values = tuple(values)
        self.show_value(value)

    def open(self) -> QMenu:
        """Open the list; arrows and letters go through it."""
        menu = QMenu(self)
        menu.setObjectName(f"{self.objectName()}-menu")
        menu.aboutToHide.connect(menu.deleteLater)
        for value, text in self._values:
            action = QAction(text, menu)
            action.setObjectName(f"{self.objectName()}-{value}")
            action.setCheckable(True)
            action.setChecked(value == self.value)
            action.triggered.connect(lambda _on=False, which=value: self._pick(which))
            menu.addAction(action)
        menu.popup(self.mapToGlobal(self.rect().bottomLeft()))
        chosen = next((action for action in menu.actions() if action.isChecked()), None)
        if chosen:
            menu.setActiveAction(chosen)
        return menu

    def _pick(self, value: str) -> None:
        self.show_value(value)
        self.picked.emit(value)
