"""The place Look it up: field and finds at the left, the page in the middle, its margin at the right."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.article import Article
from fitdoctor.desk.handbook.find_field import FindField
from fitdoctor.desk.handbook.found import Found
from fitdoctor.desk.handbook.margin import Margin
from fitdoctor.desk.handbook.turns import Turns
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.tokens import MARGIN
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.search import Hit

if TYPE_CHECKING:
    from fitdoctor.handbook import Page

_LIST_EM = 16.5
_GUTTER = 32


class LookUpPage(QWidget):
    """Emits what the reader wants; what is shown it is told."""

    left = Signal()
    turned = Signal(int)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.columns = look, 0
        self.setObjectName("page-look-up")
        lay_on(self, look, "paper")
        self.field = FindField(look, "look-up-field", tr("Find in the handbook"), tr("Find in the handbook"))
        self.said = Words(look, "", "small", "ink-2", "look-up-said")
        self.found, self.article, self.margin = Found(look), Article(look, job), Margin(look, job)
        self.turns = Turns(look)
        self.turns.turned.connect(self.turned.emit)
        self._page: Page | None = None
        self._hint = Words(look, "", "reading", name="look-up-hint")
        self._hint.setMaximumWidth(look.px(34))
        self._lay()
        self._key("Alt+Left", -1)
        self._key("Alt+Right", 1)
        self.field.edit.moved.connect(self._move)
        self.field.edit.turned.connect(self._scroll_page)
        self.field.edit.left.connect(self.left.emit)
        self.field.edit.textChanged.connect(self._show_list)

    def _lay(self) -> None:
        self._finds = ScrollColumn("look-up-finds", 0)
        self._finds.column.setContentsMargins(0, 8, 4, 20)
        over = QHBoxLayout()
        over.setContentsMargins(12, 0, 0, 0)
        over.addWidget(self.said)
        self._finds.column.addLayout(over)
        self._finds.column.addWidget(self.found)
        self._finds.column.addStretch(1)
        self._side = QWidget()
        side = QVBoxLayout(self._side)
        side.setContentsMargins(MARGIN, 24, 12, 0)
        side.setSpacing(6)
        side.addWidget(self.field)
        side.addWidget(self._finds, 1)
        self._scroll = ScrollColumn("look-up-scroll")
        self._scroll.column.setContentsMargins(20, 24, MARGIN, 24)
        self._body = Columns(_GUTTER)
        for part in (self.turns, self._hint, self._body):
            self._scroll.column.addWidget(part)
        self._scroll.column.addStretch(1)
        self._whole = QHBoxLayout(self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(0)

    def _key(self, keys: str, by: int) -> None:
        action = QAction(self)
        action.setShortcut(QKeySequence(keys))
        action.triggered.connect(lambda _on=False: self.turned.emit(by))
        self.addAction(action)

    # ---- showing

    def show_hint(self, text: str) -> None:
        """What is said in the place of a page while none is open."""
        self._page = None
        self._hint.say(text)
        self._body.hide()

    def show_found(self, hits: Sequence[Hit], typed: str) -> None:
        """The finds, how many there are, and what to do where there are none."""
        self.found.show_hits(hits)
        for before, row in pairwise([self.field.edit, *self.found.rows]):
            self.setTabOrder(before, row)
        self.field.remark.say(tr("{n} found", n=len(hits)) if typed and hits else "")
        nothing = tr("Nothing under ‘{typed}’. Try the part of the garment, or what the cloth does there.", typed=typed)
        self.said.say("" if typed and hits else nothing if typed else tr("On the garment in hand") if hits else "")

    def show_page(self, page: Page) -> None:
        """Set a page from its top."""
        self._page = page
        if self._scroll.isAncestorOf(self.focusWidget() or self):
            self.field.edit.setFocus(Qt.FocusReason.OtherFocusReason)  # the link that led here goes with its page
        self._hint.say("")
        self._body.show()
        self.article.show_page(page, self.columns != 1)
        self.margin.show_page(page)
        self._scroll.verticalScrollBar().setValue(0)
        if self.columns == 1:
            self._finds.hide()
            self._scroll.show()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        columns = self.look.columns(event.size().width())
        if columns != self.columns:
            self.columns = columns
            self._arrange(columns)

    def _arrange(self, columns: int) -> None:
        """List beside the page, or above it; the margin beside the page, or below it."""
        side = self._side.layout()
        assert side is not None
        for part in (self._side, self._scroll):
            self._whole.removeWidget(part)
        if columns == 1:
            self._side.setMaximumWidth(16777215)
            side.setContentsMargins(MARGIN, 16, MARGIN, 0)
            self._side_column().addWidget(self._scroll, 1)
            self._whole.addWidget(self._side, 1)
        else:
            self._side.setFixedWidth(self.look.px(_LIST_EM) + MARGIN + 12)
            self._whole.addWidget(self._side)
            self._whole.addWidget(self._scroll, 1)
        self._scroll.column.setContentsMargins(20 if columns > 1 else 0, 24 if columns > 1 else 8, MARGIN if columns > 1 else 4, 24)
        self._finds.setVisible(columns > 1 or self._page is None)
        self._scroll.setVisible(columns > 1 or self._page is not None)
        self._body.lay([[(self.article, 53), (self.margin, 34)]] if columns > 2 else [[(self.article, 1)], [(self.margin, 1)]])
        if self._page:
            self.article.show_page(self._page, columns != 1)

    def _side_column(self) -> QVBoxLayout:
        column = self._side.layout()
        assert isinstance(column, QVBoxLayout)
        return column

    def _show_list(self) -> None:
        """In one column the finds take the page's room while one types."""
        if self.columns == 1:
            self._finds.show()
            self._scroll.hide()

    # ---- keys

    def _move(self, by: int) -> None:
        self._show_list()
        self.found.step(by)

    def _scroll_page(self, by: int) -> None:
        bar = self._scroll.verticalScrollBar()
        bar.setValue(bar.value() + by * round(self._scroll.viewport().height() * 0.85))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
