"""The place Job book: the jobs at the left, the chosen one on one look at the right."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.ask_back import AskBack
from fitdoctor.desk.jobbook.change import ChangeForm
from fitdoctor.desk.jobbook.job_list import JobList
from fitdoctor.desk.jobbook.one_look import Chosen, OneLook
from fitdoctor.desk.jobbook.photos import PhotoStrip
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import TOP, Page, ScrollColumn, section
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import left
from fitdoctor.desk.parts.text import PageTitle, Upright
from fitdoctor.desk.tokens import MARGIN
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.finding import Sought

_LIST, _ONE, _SIDE = 856, 392, 24
"Shares of the width, and the room at the rule between them."
_LINKS = (
    ("figures", "Figures and learning"),
    ("out-csv", "Write out as a table"),
    ("out-json", "Write out for another book"),
    ("in", "Bring jobs in"),
)


class JobBookPage(Page):
    """Emits what is wanted of the whole book: new, figures, out-csv, out-json, in."""

    step = "job-book"
    wanted = Signal(str)
    photosWanted = Signal(list)
    photoOpened = Signal(object)
    left = Signal()

    def __init__(self, look: Look, job: Job, sought: Sought) -> None:
        super().__init__(look, job)
        self.changing = self.looking = self._empty = False
        self._helps = "new"
        self._new = Button(look, tr("New garment"), "jobs-new")
        self._new.clicked.connect(lambda: self.wanted.emit("new"))
        self.list = JobList(look, sought)
        self._book = section(self.list, self._links(), gap=0)
        self.one, self.form, self.ask = OneLook(look, job), ChangeForm(look), AskBack(look)
        self._to_list = Link(look, tr("‹ All jobs"), "jobs-to-list", "bold", big=True)
        self._to_list.clicked.connect(lambda: self.look_at_one(False))
        self.empty = EmptyNote(look, "", "jobs-empty", tr("New garment"))
        self.empty.pressed.connect(self._help)
        self._left, self._right = ScrollColumn("jobs-left"), ScrollColumn("jobs-right", 0)
        for widget, gap in ((self._top(), 16), (self.empty, 0), (self._book, 0)):
            self._left.column.addWidget(widget)
            self._left.column.addSpacing(gap)
        for widget in (left(self._to_list), self.one, self.ask, self.form):
            self._right.column.addWidget(widget)
        for scroll in (self._left, self._right):
            scroll.column.addStretch(1)
        self._rule = Upright(look)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self._left, _LIST)
        whole.addWidget(self._rule)
        whole.addWidget(self._right, _ONE)

    def _top(self) -> QWidget:
        top = QWidget()
        line = QHBoxLayout(top)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(PageTitle(self.look, tr("Job book"), "jobs-page-title"), 1)
        line.addWidget(self._new)
        return top

    def _links(self) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(holder, 22)
        for want, text in _LINKS:
            link = Link(self.look, tr(text), f"jobs-{want}", "body")
            link.clicked.connect(lambda _on=False, which=want: self.wanted.emit(which))
            flow.addWidget(link)
        return holder

    def _help(self) -> None:
        self.wanted.emit(self._helps)

    # ---- showing

    def show_trouble(self, text: str, button: str, helps: str) -> None:
        """Say why there is nothing to show, and what helps."""
        self._helps = helps
        self.empty.say(text, button)
        self.empty.setVisible(bool(text))
        self._book.setVisible(not text)
        self._empty = bool(text)
        self.arrange(self.columns or 3)

    @contextmanager
    def scroll_kept(self) -> Iterator[None]:
        """Rows that are built anew do not move what is in sight."""
        bar = self._left.verticalScrollBar()
        value = bar.value()
        with self.focus_kept():
            yield
        bar.setValue(value)

    def show_chosen(self, chosen: Chosen | None, strip: PhotoStrip | None) -> None:
        """Show a job on one look, or the form it is changed in."""
        if strip:
            strip.addWanted.connect(self.photosWanted.emit)
            strip.opened.connect(self.photoOpened.emit)
        with self.scroll_kept():
            self.one.show_job(chosen, strip)
            if chosen:
                self.form.show_job(chosen.job)
            self._show_right(chosen is not None)

    def _show_right(self, chosen: bool) -> None:
        self.one.setVisible(chosen and not self.changing)
        self.form.setVisible(chosen and self.changing)

    def change(self, changing: bool) -> None:
        """Turn the right column into the form, or back."""
        self.changing = changing
        self.ask.drop()
        self._show_right(True)
        if changing:
            self.form.focus_first(Qt.FocusReason.TabFocusReason)

    def changed(self) -> None:
        """The form is done with: back to the job on one look, with the focus where the form was opened."""
        self.change(False)
        again = self.one.findChild(Link, "jobs-change")
        if isinstance(again, Link):
            again.setFocus(Qt.FocusReason.TabFocusReason)

    def look_at_one(self, looking: bool) -> None:
        """In one column the chosen job takes the place of the list."""
        self.looking = looking
        self.arrange(self.columns or 3)
        if looking and self.columns == 1:
            self._to_list.setFocus(Qt.FocusReason.TabFocusReason)
            self._right.verticalScrollBar().setValue(0)

    def arrange(self, columns: int) -> None:
        beside = columns > 1
        one = not self._empty and (beside or self.looking)
        self._left.setVisible(beside or not one)
        self._right.setVisible(one)
        self._rule.setVisible(beside and one)
        self._to_list.setVisible(not beside)
        edge = MARGIN if not beside else _SIDE
        self._left.column.setContentsMargins(MARGIN, TOP, edge, TOP)
        self._right.column.setContentsMargins(edge, TOP, MARGIN, TOP)

    def show_job(self) -> None:
        """The place shows what is in the book."""

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self.empty.isVisibleTo(self):
            self.empty.button.setFocus(reason)
        else:
            self.list.focus_first(reason)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self.changing:
            self.changed()
        elif event.key() == Qt.Key.Key_Escape and self.looking:
            self.look_at_one(False)
            self.list.focus_first(Qt.FocusReason.TabFocusReason)
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)
