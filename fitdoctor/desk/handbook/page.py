"""The place Look it up: field and finds at the left, the page in the middle, its margin at the right."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QAction, QKeyEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.article import Article
from fitdoctor.desk.handbook.finds import Finds
from fitdoctor.desk.handbook.map_pane import MapPane
from fitdoctor.desk.handbook.margin import Margin
from fitdoctor.desk.handbook.narrowing import MakeChoices
from fitdoctor.desk.handbook.turns import Turns
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.style import lay_on
from fitdoctor.desk.tokens import MARGIN

if TYPE_CHECKING:
    from fitdoctor.handbook import Page
    from fitdoctor.knowledge.graph import EntryMap

_GUTTER = 32
_SCROLLED = 0.85
"Share of the height that a page key goes on."


class LookUpPage(QWidget):
    """Emits what the reader wants; what is shown it is told."""

    left = Signal()
    turned = Signal(int)
    mapWanted = Signal()

    def __init__(self, look: Look, job: Job, choices: MakeChoices) -> None:
        super().__init__()
        self.look, self.columns, self._knowledge = look, 0, job.knowledge
        self.setObjectName("page-look-up")
        lay_on(self, look, "paper")
        self.finds, self.article, self.margin = Finds(look, choices), Article(look, job), Margin(look, job)
        self.turns = Turns(look)
        self._page: Page | None = None
        self._hint = Words(look, "", "reading", name="look-up-hint")
        self._hint.setMaximumWidth(look.px(34))
        self._scroll = ScrollColumn("look-up-scroll")
        self._body = Columns(_GUTTER)
        for part in (self._hint, self._body):
            self._scroll.column.addWidget(part)
        self._scroll.column.addStretch(1)
        self.map = MapPane(look)
        self._right = QStackedWidget()
        self._right.addWidget(self._scroll)
        self._right.addWidget(self.map)
        self._beside = QWidget()
        self._over = QVBoxLayout(self._beside)
        self._over.setSpacing(0)
        self._over.addWidget(self.turns)
        self._over.addWidget(self._right, 1)
        self._whole = QHBoxLayout(self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(0)
        self._listen()

    def _listen(self) -> None:
        self.turns.turned.connect(self.turned.emit)
        self.turns.mapWanted.connect(self.mapWanted.emit)
        self._key("Alt+Left", lambda: self.turned.emit(-1))
        self._key("Alt+Right", lambda: self.turned.emit(1))
        self._key("Alt+M", self.mapWanted.emit)
        edit = self.finds.edit
        edit.moved.connect(self._move)
        edit.turned.connect(self._scroll_page)
        edit.left.connect(self.left.emit)
        edit.textChanged.connect(lambda: self._show_list())
        self.finds.only.changeWanted.connect(lambda: self._show_list())
        self.finds.narrowing.changed.connect(lambda _: self._show_list())

    def _key(self, keys: str, act: Callable[[], None]) -> None:
        action = QAction(self)
        action.setShortcut(QKeySequence(keys))
        action.triggered.connect(lambda _on=False: act())
        self.addAction(action)

    # ---- showing

    def show_hint(self, text: str) -> None:
        """What is said in the place of a page while none is open."""
        self._page = None
        self._hint.say(text)
        self._body.hide()

    def show_page(self, page: Page) -> None:
        """Set a page from its top."""
        self._page = page
        if self._right.isAncestorOf(self.focusWidget() or self):
            self.finds.edit.setFocus(Qt.FocusReason.OtherFocusReason)  # the link that led here goes with its page
        self._hint.say("")
        self._body.show()
        self._right.setCurrentWidget(self._scroll)
        self.article.show_page(page, self.columns != 1)
        self.margin.show_page(page)
        self._scroll.verticalScrollBar().setValue(0)
        if self.columns == 1:
            self._show_list(False)

    def show_map(self, page: Page, found: EntryMap) -> None:
        """Set the map of a page's entry in the page's place."""
        self._page = page
        focus = self.focusWidget()
        walks_on = focus is self.turns.map or (focus is not None and self._right.isAncestorOf(focus))
        self._right.setCurrentWidget(self.map)
        self.map.file.show_place(self._knowledge, (page.kind, page.id))
        if self.columns == 1:
            self._show_list(False)
        self.map.show_map(found)
        if walks_on:
            self.map.focus_current()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        columns = self.look.columns(event.size().width())
        if columns != self.columns:
            self.columns = columns
            self._arrange(columns)

    def _arrange(self, columns: int) -> None:
        """List beside the page, or above it; the margin beside the page, or below it."""
        beside = columns > 1
        self._whole.removeWidget(self.finds)
        self._whole.removeWidget(self._beside)
        self.finds.let_go(self._beside)
        self._whole.addWidget(self.finds, 0 if beside else 1)
        if beside:
            self.finds.stand_beside()
            self._whole.addWidget(self._beside, 1)
        else:
            self.finds.stand_above(self._beside)
        self._over.setContentsMargins(20 if beside else 0, 24 if beside else 8, 0, 0)
        edge = MARGIN if beside else 4
        self._scroll.column.setContentsMargins(0, 0, edge, 24)
        self.turns.setContentsMargins(0, 0, edge, 0)
        self.map.setContentsMargins(0, 0, edge, 0)
        self.map.fold(not beside)
        self.finds.list.setVisible(beside or self._page is None)
        self._beside.setVisible(beside or self._page is not None)
        self._body.lay([[(self.article, 53), (self.margin, 34)]] if columns > 2 else [[(self.article, 1)], [(self.margin, 1)]])
        if self._page and self._right.currentWidget() is self._scroll:
            self.article.show_page(self._page, beside)

    def _show_list(self, shown: bool = True) -> None:
        """In one column the finds take the page's room while one types."""
        if self.columns == 1:
            self.finds.list.setVisible(shown)
            self._beside.setVisible(not shown)

    # ---- keys

    def _move(self, by: int) -> None:
        self._show_list()
        self.finds.found.step(by)

    def _scroll_page(self, by: int) -> None:
        bar = self._scroll.verticalScrollBar()
        bar.setValue(bar.value() + by * round(self._scroll.viewport().height() * _SCROLLED))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
