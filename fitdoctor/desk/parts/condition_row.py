"""What the work needs: its state as a tag, what was found, why, and an answer in place where it is not known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.reason_note import ReasonNote, WhoSays
from fitdoctor.desk.parts.tag import StateTag, TagState
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr

TAG_EM = 8.4
_NARROW_EM = 26


@dataclass(frozen=True)
class Need:
    """A condition as it is shown."""

    id: str
    tag: TagState
    word: str
    effect: str
    needs: str
    found: str
    why: str
    who: tuple[WhoSays, ...]
    instead: str = ""
    may_pass: bool = False
    passed: bool = False


class ConditionRow(QWidget):
    """Emits that the limit is passed this once (or no longer), and that the note was opened."""

    passedChanged = Signal(str, bool)
    noteOpened = Signal(str)

    def __init__(self, look: Look, need: Need, questions: Sequence[QWidget], name: str) -> None:
        super().__init__()
        self.look, self.need, self._name = look, need, name
        self.setObjectName(name)
        self.setProperty("state", need.tag)
        self.setAccessibleName(f"{need.needs}: {need.word}")
        self._note: ReasonNote | None = None
        self.why = Link(look, tr("why"), f"{name}-why")
        self.why.setAccessibleName(tr("Why: {needs}", needs=need.needs))
        self.why.clicked.connect(self.toggle_note)
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._columns.setContentsMargins(0, 9, 0, 9)
        self._columns.setSpacing(16)
        self._state = self._state_column()
        self._columns.addWidget(self._state, 0, Qt.AlignmentFlag.AlignTop)
        self._body = self._body_column(questions)
        self._columns.addLayout(self._body, 1)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _state_column(self) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        column.addWidget(StateTag(self.look, self.need.tag, self.need.word))
        if self.need.effect:
            column.addWidget(Words(self.look, self.need.effect, "small", "ink-2"))
        return holder

    def _body_column(self, questions: Sequence[QWidget]) -> QVBoxLayout:
        head = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        head.setSpacing(12)
        head.addWidget(Words(self.look, self.need.needs, "bold"), 1)
        head.addWidget(self.why, 0, Qt.AlignmentFlag.AlignTop)
        column = QVBoxLayout()
        column.setSpacing(1)
        column.addLayout(head)
        column.addWidget(Words(self.look, self.need.found, "small", "ink-2"))
        for question in questions:
            column.addSpacing(7)
            column.addWidget(question)
        return column

    def toggle_note(self) -> None:
        """Open or close the note in the margin."""
        if self._note:
            self._note.hide()
            self._note.deleteLater()
            self._note = None
            self.why.setFocus(Qt.FocusReason.OtherFocusReason)
            return
        self._note = ReasonNote(self.look, self.need.why, self.need.who, self.need.instead, self._presses())
        self._body.addSpacing(8)
        self._body.addWidget(self._note)
        self.noteOpened.emit(self.need.id)

    def note_is_open(self) -> bool:
        """Whether the note is open."""
        return self._note is not None

    def _presses(self) -> list[QWidget]:
        close = Link(self.look, tr("Close the note"), f"{self._name}-close", "bold", big=True)
        close.clicked.connect(self.toggle_note)
        if not self.need.may_pass:
            return [close]
        text = tr("Hold to the limit") if self.need.passed else tr("Go past it this once")
        go_past = Button(self.look, text, f"{self._name}-pass")
        go_past.clicked.connect(lambda: self.passedChanged.emit(self.need.id, not self.need.passed))
        return [go_past, close]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_W and not event.modifiers():
            self.toggle_note()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(_NARROW_EM)
        self._columns.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._columns.setSpacing(16 if level else 4)
        self._state.setFixedWidth(self.look.px(TAG_EM)) if level else self._state.setMaximumWidth(16777215)
