"""Where an entry is written: file and line, to be copied or opened."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QUrl
from PySide6.QtGui import QDesktopServices, QGuiApplication
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.handbook.kinds import Key
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.knowledge import Knowledge, Place


class FileLine(QWidget):
    """Short in sight, whole on the clipboard."""

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self._place: Place | None = None
        self.setObjectName(name)
        self._where = Words(look, "", "small", "ink-2", f"{name}-where")
        self._open = Link(look, tr("Open the file"), f"{name}-open")
        self._copy = Link(look, tr("Copy the place"), f"{name}-copy")
        self._where.in_middle = True
        self._where.setMinimumHeight(self._open.sizeHint().height())
        self._open.clicked.connect(self._open_it)
        self._copy.clicked.connect(self._copy_it)
        flow = FlowLayout(self, 14)
        for widget in (self._where, self._open, self._copy):
            flow.addWidget(widget)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_place(self, knowledge: Knowledge, key: Key) -> None:
        """Show where this entry is written; one that was read from no file has no such line."""
        self._place = knowledge.places.get(key)
        self._where.say(f"{short_path(self._place.file, key[0])}:{self._place.line}" if self._place else "")
        self._open.say(tr("Open the file"))
        self._copy.say(tr("Copy the place"))
        for link in (self._open, self._copy):
            link.setVisible(self._place is not None)

    def _open_it(self) -> None:
        if self._place and not QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._place.file))):
            self._open.say(tr("Nothing here opens it; copy the place"))

    def _copy_it(self) -> None:
        if self._place:
            QGuiApplication.clipboard().setText(f"{self._place.file}:{self._place.line}")
            self._copy.say(tr("Copied"))


def short_path(file: Path, kind: str) -> str:
    """The path from the folder of its kind on; the file's name where it lies elsewhere."""
    parts = file.parts
    return "/".join(parts[parts.index(kind) :]) if kind in parts else file.name
