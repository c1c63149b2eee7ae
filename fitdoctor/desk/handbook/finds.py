"""The left of the look-up: the field, what the finds are narrowed to, and what was found."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.find_field import FindEdit, FindField
from fitdoctor.desk.handbook.found import Found
from fitdoctor.desk.handbook.narrowing import MakeChoices, Narrowing, OnlyLine
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import MARGIN
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.search import Hit

_LIST_EM = 16.5
_UNBOUND = 16777215


class Finds(QWidget):
    """Beside the page it keeps its width; above it, in a narrow window, it holds the page as well."""

    def __init__(self, look: Look, choices: MakeChoices) -> None:
        super().__init__()
        self.look = look
        self.field = FindField(look, "look-up-field", tr("Find in the handbook"), tr("Find in the handbook"))
        self._said = Words(look, "", "small", "ink-2", "look-up-said")
        self.found = Found(look)
        self.only, self.narrowing = OnlyLine(look), Narrowing(look, choices)
        self.only.changeWanted.connect(self.narrowing.turn)
        self.only.clearWanted.connect(self.narrowing.clear)
        self.narrowing.opened.connect(self._show_only)
        self.narrowing.changed.connect(lambda _: self._show_only())
        self.list = ScrollColumn("look-up-finds", 0)
        self.list.column.setContentsMargins(0, 8, 4, 20)
        self.list.column.addWidget(self.narrowing)
        over = QHBoxLayout()
        over.setContentsMargins(12, 0, 0, 0)
        over.addWidget(self._said)
        self.list.column.addLayout(over)
        self.list.column.addWidget(self.found)
        self.list.column.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.setSpacing(6)
        self._column.addWidget(self.field)
        self._column.addWidget(self.only)
        self._column.addWidget(self.list, 1)

    @property
    def edit(self) -> FindEdit:
        """What is typed in."""
        return self.field.edit

    def show_filter(self, only: Filter) -> None:
        """What the finds are narrowed to."""
        self.narrowing.show_filter(only)
        self._show_only()

    def _show_only(self, opened: bool | None = None) -> None:
        self.only.show_only(self.narrowing.named(), self.narrowing.isVisible() if opened is None else opened)
        if opened:
            self._order_stops()
        elif opened is False:
            self.only.focus_change()

    def show_found(self, hits: Sequence[Hit], typed: str) -> None:
        """The finds, how many there are, and what to do where there are none."""
        self.found.show_hits(hits)
        self._order_stops()
        asked = typed or self.narrowing.only
        self.field.remark.say(tr("{n} found", n=len(hits)) if asked and hits else "")
        self._said.say(self._nothing(typed) if asked and not hits else tr("On the garment in hand") if hits and not asked else "")

    def _order_stops(self) -> None:
        for before, stop in pairwise([self.edit, *self.only.stops(), *self.narrowing.stops(), *self.found.rows]):
            self.setTabOrder(before, stop)

    def _nothing(self, typed: str) -> str:
        if not self.narrowing.only:
            return tr("Nothing under ‘{typed}’. Try the part of the garment, or what the cloth does there.", typed=typed)
        if not typed:
            return tr("Nothing is of all these at once. Take one of them back.")
        return tr("Nothing under ‘{typed}’ among what is shown. Show everything, or try other words.", typed=typed)

    def stand_beside(self) -> None:
        """Keep to a column at the left."""
        self.setFixedWidth(self.look.px(_LIST_EM) + MARGIN + 12)
        self._column.setContentsMargins(MARGIN, 24, 12, 0)

    def stand_above(self, page: QWidget) -> None:
        """Take the whole width, the page below the field."""
        self.setMinimumWidth(0)
        self.setMaximumWidth(_UNBOUND)
        self._column.setContentsMargins(MARGIN, 16, MARGIN, 0)
        self._column.addWidget(page, 1)

    def let_go(self, page: QWidget) -> None:
        """Give the page up again."""
        self._column.removeWidget(page)
