"""What was noted: its number, what, where, a small picture, and the way to take it back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QEnterEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.line_choice import Picture
from fitdoctor.desk.parts.picture import Ball, SmallPicture
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Rule, Words
from fitdoctor.desk.words import tr


@dataclass(frozen=True)
class NoteRow:
    """One thing noted."""

    entry: str
    number: str
    title: str
    where: str
    picture: Picture
    says: str


class _Row(QWidget):
    pointed = Signal(str)

    def __init__(self, look: Look, note: NoteRow, drop: Link) -> None:
        super().__init__()
        self.note = note
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(Words(look, note.title, "bold"))
        words.addWidget(Words(look, note.where, "small", "ink-2"))
        words.addWidget(drop, 0, Qt.AlignmentFlag.AlignLeft)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 10, 0, 8)
        row.setSpacing(12)
        row.addWidget(Ball(look, note.number), 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        row.addWidget(SmallPicture(look, note.picture, (84, 60), note.says), 0, Qt.AlignmentFlag.AlignTop)

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.pointed.emit(self.note.entry)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit("")


class NoteList(QWidget):
    """Emits the entry dropped, and the one pointed at (nothing when the pointer leaves)."""

    dropped = Signal(str)
    pointed = Signal(str)

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look = look
        self.setObjectName(name)
        self._rows = Rows()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)

    def show_notes(self, notes: Sequence[NoteRow]) -> None:
        """Show these in place of those before."""
        rows: list[QWidget] = []
        for note in notes:
            drop = Link(self.look, tr("Not this after all"), f"{self.objectName()}-drop-{note.entry}")
            drop.setAccessibleName(tr("Not this after all: {title}", title=note.title))
            drop.clicked.connect(lambda _on=False, entry=note.entry: self.dropped.emit(entry))
            row = _Row(self.look, note, drop)
            row.pointed.connect(self.pointed.emit)
            rows += [row, Rule(self.look)]
        self._rows.show_rows(rows)
