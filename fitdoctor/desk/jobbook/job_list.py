"""The left of the job book: the field to search in, what is shown of all jobs, in which order, and the jobs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Any, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.jobbook.job_row import Heads, JobRow
from fitdoctor.desk.jobbook.lines import RowWords
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.pick import Pick
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.switch import Switch
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import count, tr
from fitdoctor.jobbook.finding import Order, Sought
from fitdoctor.jobbook.job import STATE_WORDS, State

_FIELD_EM = 14
_WHICH: dict[str, bool | None] = {"all": None, "open": True, "closed": False}
_DUE = {"": None, "today": 0, "week": 7}
_ORDERS: dict[str, tuple[Order, bool, str]] = {
    "due": ("due", False, "due first"),
    "changed": ("changed", True, "last in hand first"),
    "brought": ("brought", True, "last brought first"),
    "title": ("title", False, "by garment"),
    "wearer": ("wearer", False, "by wearer"),
    "state": ("state", False, "by state"),
}


class JobList(QWidget):
    """Emits what is sought, the job come to, pressed, to be opened, and that earlier jobs are wanted too."""

    soughtChanged = Signal()
    came = Signal(str)
    pressed = Signal(str)
    opened = Signal(str)
    moreWanted = Signal()
    left = Signal()

    def __init__(self, look: Look, sought: Sought) -> None:
        super().__init__()
        self.look, self.sought = look, sought
        self.rows: list[JobRow] = []
        self._field = Field(look, "jobs-find", tr("Find in the job book"), tr("Garment, wearer or what was found"))
        self._field.edit.setText(sought.words)
        self._field.edit.textChanged.connect(lambda text: self._seek(words=text))
        self._field.edit.left.connect(self._leave_field)
        which = next(name for name, value in _WHICH.items() if value is sought.open)
        self._which = Switch(look, [("all", tr("All")), ("open", tr("Open")), ("closed", tr("Closed"))], which, "jobs-which")
        self._which.chosen.connect(lambda value: self._seek(open=_WHICH[value]))
        self._picks = self._make_picks()
        self._heads, self._column = Heads(look), Rows("jobs-list")
        self._said = Words(look, "", "reading", name="jobs-said")
        self._more = Link(look, "", "jobs-more", "body")
        self._more.clicked.connect(self.moreWanted.emit)
        self._lay_out()

    def _make_picks(self) -> tuple[Pick, Pick, Pick, Pick]:
        states = [("", tr("any")), *((state, tr(words)) for state, words in STATE_WORDS.items())]
        state = Pick(self.look, tr("State"), states, next(iter(self.sought.states), ""), "jobs-state")
        state.picked.connect(lambda value: self._seek(states=(cast(State, value),) if value else ()))
        garment = Pick(self.look, tr("Garment"), [("", tr("any"))], next(iter(self.sought.garments), ""), "jobs-garment")
        garment.picked.connect(lambda value: self._seek(garments=(value,) if value else ()))
        due = Pick(
            self.look,
            tr("Due"),
            [("", tr("any day")), ("today", tr("today or before")), ("week", tr("within a week"))],
            next(value for value in _DUE if _due_by(value) == self.sought.due_by),
            "jobs-due",
        )
        due.picked.connect(lambda value: self._seek(due_by=_due_by(value)))
        orders = [(name, tr(words)) for name, (_, _, words) in _ORDERS.items()]
        order = Pick(self.look, tr("Order"), orders, self.sought.order, "jobs-order")
        order.picked.connect(lambda value: self._seek(order=_ORDERS[value][0], backwards=_ORDERS[value][1]))
        return state, garment, due, order

    def _lay_out(self) -> None:
        top = QWidget()
        self._top = QBoxLayout(QBoxLayout.Direction.LeftToRight, top)
        self._top.setContentsMargins(0, 0, 0, 0)
        self._top.setSpacing(14)
        self._top.addWidget(self._field, 1)
        self._top.addWidget(self._which)
        picks = QWidget()
        line = FlowLayout(picks, 22)
        for pick in self._picks:
            line.addWidget(pick)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget, gap in ((top, 10), (picks, 12), (self._heads, 0), (self._column, 14), (self._said, 0), (left(self._more), 14)):
            column.addWidget(widget)
            column.addSpacing(gap)

    def _leave_field(self) -> None:
        """Escape takes back what was typed; where nothing was, it leaves the place."""
        if self._field.edit.text():
            self._field.edit.clear()
        else:
            self.left.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = self.look.px(_FIELD_EM) + self._which.sizeHint().width() < event.size().width()
        self._top.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)

    def _seek(self, **changed: Any) -> None:
        self.sought = replace(self.sought, **changed)
        self.soughtChanged.emit()

    # ---- showing

    def show_rows(self, rows: Sequence[RowWords], chosen: str, earlier: int, nothing: str) -> None:
        """Show these jobs in place of those before; `earlier` more wait, `nothing` is said where there are none."""
        self.rows = [JobRow(self.look, words) for words in rows]
        for row in self.rows:
            row.came.connect(self.came.emit)
            row.clicked.connect(lambda _on=False, job=row.job: self.pressed.emit(job))
            row.opened.connect(self.opened.emit)
        self._column.show_rows(self.rows)
        self.group = ControlGroup(self.rows)
        self._heads.setVisible(bool(rows))
        self._said.say("" if rows else nothing)
        self._more.say(count(earlier, "Show 1 earlier job", "Show {number} earlier jobs") if earlier else "")
        self.show_chosen(chosen)

    def show_counts(self, all_: int, open_: int) -> None:
        """How many jobs there are of each kind."""
        words = ((tr("All"), all_), (tr("Open"), open_), (tr("Closed"), all_ - open_))
        for button, (text, number) in zip(self._which.buttons, words, strict=True):
            button.say(f"{text} {number}")

    def show_garments(self, garments: Sequence[tuple[str, str]]) -> None:
        """The kinds of garment that occur in the book."""
        self._picks[1].show_values([("", tr("any")), *garments], next(iter(self.sought.garments), ""))

    def show_chosen(self, chosen: str) -> None:
        """Show which job is looked at."""
        for row in self.rows:
            row.show_chosen(row.job == chosen)
            if row.job == chosen:
                self.group.focused(row)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the job looked at, or into the field where there is none."""
        row = next((row for row in self.rows if row.chosen), None)
        (row or self._field.edit).setFocus(reason)


def _due_by(value: str) -> date | None:
    days = _DUE[value]
    return None if days is None else date.today() + timedelta(days=days)
