"""A page of the job book beside the list, with the way back to it."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, Page
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.field import Edit
from fitdoctor.desk.parts.rows import left
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr

_GUTTER = 48


class View(Page):
    """Two columns side by side, or one below the other. Emits that one goes back."""

    back = Signal()

    def __init__(self, look: Look, job: Job, step: str, title: str, lead: str = "") -> None:
        self.step = step
        super().__init__(look, job)
        self.to_list = Link(look, tr("‹ Job book"), f"{step}-back", "bold", big=True)
        self.to_list.clicked.connect(self.back.emit)
        self.title = Words(look, title, "page-title", name=f"{step}-title")
        self.lead = Words(look, lead, "lead", "ink-2", f"{step}-lead")
        self._columns = Columns(_GUTTER)
        self._parts: Sequence[tuple[QWidget, int]] = ()

    def lay(self, *parts: tuple[QWidget, int], below: Sequence[QWidget] = ()) -> None:
        """Set the page: columns with their shares of the width, and below them what takes the whole."""
        self._parts = parts
        self.stand(left(self.to_list), self.title, self.lead, self._columns, *below, gap=4)
        for widget in (self.lead, self._columns, *below):
            widget.setContentsMargins(0, 12, 0, 0)
        self.arrange(self.columns or 2)
        for edit in self.findChildren(Edit):
            edit.left.connect(self.back.emit)

    def arrange(self, columns: int) -> None:
        if columns > 1:
            self._columns.lay([list(self._parts)])
        else:
            self._columns.lay([[(part, 1)] for part, _ in self._parts])

    def show_job(self) -> None:
        """A view shows what it was made with, and what is typed into it."""

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self.to_list.setFocus(reason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.back.emit()
        else:
            super().keyPressEvent(event)
