"""Which of the finds are shown: by kind, garment, region, cloth. What is left out is said in words, with one press to have it back."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.drawer import Drawer
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.knowledge.filters import Filter

_INDENT = 12
EVERYTHING = Filter()


@dataclass(frozen=True)
class Choices:
    """A field of the filter, its title, and the values it may have with their titles."""

    field: str
    title: str
    values: tuple[tuple[str, str], ...]


MakeChoices = Callable[[], Sequence[Choices]]


class OnlyLine(QWidget):
    """Says what is shown alone. Emits that the choice is to be opened or closed, and that all is to be shown again."""

    changeWanted = Signal()
    clearWanted = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._words = Words(look, "", "small", name="look-up-only")
        self._change = Link(look, tr("Narrow the finds"), "look-up-narrow")
        self._clear = Link(look, "", "look-up-clear")
        self._change.clicked.connect(self.changeWanted.emit)
        self._clear.clicked.connect(self.clearWanted.emit)
        column = QVBoxLayout(self)
        column.setContentsMargins(_INDENT, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._words)
        row = QHBoxLayout()
        row.setSpacing(16)
        row.addWidget(self._change)
        row.addWidget(self._clear)
        row.addStretch(1)
        column.addLayout(row)

    def show_only(self, named: Sequence[str], opened: bool) -> None:
        """Say what the finds are narrowed to; `opened` while the choice stands open."""
        self._words.say(f"**{tr('Only:')}** {', '.join(map(lower_first, named))}" if named else "")
        self._change.say(tr("Done") if opened else tr("Change") if named else tr("Narrow the finds"))
        self._clear.say(tr("Show everything") if named else "")

    def stops(self) -> list[QWidget]:
        """What the Tab key goes through, in order."""
        return [self._change, self._clear]

    def focus_change(self) -> None:
        """Put the focus on what opens the choice."""
        self._change.setFocus(Qt.FocusReason.TabFocusReason)


class Narrowing(QWidget):
    """The choice itself: a drawer for each field, built when first opened. Emits the filter."""

    changed = Signal(object)
    opened = Signal(bool)

    def __init__(self, look: Look, choices: MakeChoices) -> None:
        super().__init__()
        self.look, self._make = look, choices
        self.only = EVERYTHING
        self.setObjectName("look-up-narrowing")
        self._choices: tuple[Choices, ...] = ()
        self.drawers: list[Drawer] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(_INDENT, 0, 0, 12)
        self._column.setSpacing(0)
        self.hide()

    def show_filter(self, only: Filter) -> None:
        """Show this filter as the one that holds."""
        self.only = only
        if only:
            self._build()
        for drawer in self.drawers:
            drawer.show_value(getattr(only, drawer.field))

    def named(self) -> list[str]:
        """The values that hold, by their titles."""
        return [title for c in self._choices for value, title in c.values if value and value == getattr(self.only, c.field)]

    def stops(self) -> list[QWidget]:
        """What the Tab key goes through, in order."""
        return [stop for drawer in self.drawers for stop in (drawer.head, *drawer.row.choices)]

    def turn(self) -> None:
        """Open the choice, or close it."""
        self._build()
        opened = self.isHidden()
        self.setVisible(opened)
        if opened:
            self.drawers[0].head.setFocus(Qt.FocusReason.TabFocusReason)
        self.opened.emit(opened)

    def clear(self) -> None:
        """Let everything pass again."""
        self._change(EVERYTHING)

    def _build(self) -> None:
        if self.drawers:
            return
        self._choices = tuple(self._make())
        for choices in self._choices:
            drawer = Drawer(self.look, choices.field, choices.title, choices.values)
            drawer.chosen.connect(lambda field, value: self._change(replace(self.only, **{field: value})))
            drawer.opened.connect(self._open_only)
            self.drawers.append(drawer)
            self._column.addWidget(drawer)

    def _open_only(self, field: str) -> None:
        for drawer in self.drawers:
            if drawer.field != field:
                drawer.close_it()

    def _change(self, only: Filter) -> None:
        self.show_filter(only)
        self.changed.emit(only)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.turn()
        else:
            super().keyPressEvent(event)
