"""Settings: reached from the head and by a key, each change held and kept at once, and taken back on the page."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.settings.changes import Change, Changes
from fitdoctor.desk.settings.page import SettingsPage
from fitdoctor.desk.window import Window

PLACE = "settings"


class Settings(QObject):
    """Keeps the page in step with the shop. It stands before the handbook is read, for the handbook's folder is set here."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self.window = window
        self.changes = Changes()
        self._from, self._focus = "fit", ""
        self._open = False
        "Whether the page was open when the window was built anew."
        window.placeWanted.connect(lambda place: self.open() if place == PLACE else None)
        window.shopChanged.connect(lambda _fields: self._show())
        window.undoWanted.connect(lambda: self.undo() if window.place == PLACE else None)
        window.redoWanted.connect(lambda: self.redo() if window.place == PLACE else None)
        window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Put the page into the window, in its look."""
        self._open = self.window.place == PLACE
        self.page = SettingsPage(self.window.look, self.window.shop)
        self.window.pages.addWidget(self.page)
        self.page.wanted.connect(self.set)
        self.page.undone.connect(self.undo)
        self.page.left.connect(self.leave)
        self._show()

    def open(self) -> None:
        """Come here, with the focus on the first setting."""
        if not self._open and self.window.place != PLACE:
            focus = self.window.focusWidget()
            self._from, self._focus = self.window.place, focus.objectName() if focus else ""
        self._open = False
        self.window.show_place(PLACE, self.page)
        self.page.focus_first(Qt.FocusReason.OtherFocusReason)

    def leave(self) -> None:
        """Go back to where one was."""
        self.window.placeWanted.emit(self._from)
        if self.window.place == PLACE:
            self.window.show_place("fit", self.window.waiting)  # nothing is read yet
        found = self.window.findChild(QWidget, self._focus) if self._focus else None
        if found and found.isVisible():
            found.setFocus(Qt.FocusReason.OtherFocusReason)

    def set(self, values: Mapping[str, Any], said: str, key: str = "") -> None:
        """Set what is wanted, and remember how it was."""
        if self.changes.note(self.window.shop, values, said, key):
            self.window.change(**values)

    def undo(self) -> None:
        """Back to what was set before."""
        self._make(self.changes.back(), back=True)

    def redo(self) -> None:
        """Forward again."""
        self._make(self.changes.on(), back=False)

    def _make(self, change: Change | None, back: bool) -> None:
        if change:
            self.window.change(**(change.before if back else change.after))

    def _show(self) -> None:
        last = self.changes.last()
        self.page.show_shop(self.window.shop, last.said if last else "")
