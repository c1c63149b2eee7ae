"""The right of the job book while what is written down is changed: each change is kept as it is typed."""

from __future__ import annotations

from datetime import date, timedelta

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.jobbook.days import day_words, typed_day
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.field import Edit, Field
from fitdoctor.desk.parts.rows import left
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.text_box import TextBox
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import Job, check_wearer

_STEPS = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}


class _DayEdit(Edit):
    """Up and Down go one day on and back."""

    stepped = Signal(int)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = _STEPS.get(Qt.Key(event.key()))
        if step:
            self.stepped.emit(step)
        else:
            super().keyPressEvent(event)


class _DayField(Field):
    edit: _DayEdit

    def _make_edit(self) -> Edit:
        return _DayEdit()


class Asked(QWidget):
    """A field with what it is above it, and below it why what is typed cannot be used."""

    def __init__(self, look: Look, title: str, field: QWidget, name: str) -> None:
        super().__init__()
        self.wrong = Words(look, "", "small", "stop", f"{name}-wrong")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for widget in (Words(look, title, "small", "ink-2"), field, self.wrong):
            column.addWidget(widget)


class ChangeForm(QWidget):
    """Emits the field changed and its value: title, wearer, brought, due, notes; and that it is done."""

    changed = Signal(str, object)
    done = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.setObjectName("jobs-change-form")
        self._job = ""
        self._title = Field(look, "jobs-title", tr("The garment in a few words"))
        self._title.edit.textEdited.connect(lambda text: self.changed.emit("title", text))
        self._wearer = Field(look, "jobs-wearer", tr("Whom it is for: initials or a number"), tr("Initials or a number"))
        self._wearer.edit.textEdited.connect(self._name_wearer)
        self._days = {
            name: self._day_field(name, says) for name, says in (("brought", tr("The day it came in")), ("due", tr("The day it is due")))
        }
        self._notes = TextBox(look, "jobs-notes", tr("Notes"))
        self._notes.edited.connect(lambda text: self.changed.emit("notes", text))
        self._asked = {
            "title": Asked(look, tr("What it is called"), self._title, "jobs-title"),
            "wearer": Asked(look, tr("For: initials or a ticket number only"), self._wearer, "jobs-wearer"),
            "brought": Asked(look, tr("Came in"), self._days["brought"], "jobs-brought"),
            "due": Asked(look, tr("Due"), self._days["due"], "jobs-due-day"),
            "notes": Asked(look, tr("Notes"), self._notes, "jobs-notes"),
        }
        for field in (self._title, self._wearer, *self._days.values()):
            field.edit.left.connect(self.done.emit)
        done = Button(look, tr("Back to the job"), "jobs-change-done")
        done.clicked.connect(self.done.emit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        for asked in self._asked.values():
            column.addWidget(asked)
        column.addWidget(left(done))

    def _day_field(self, name: str, says: str) -> _DayField:
        field = _DayField(self.look, f"jobs-{name}-day", says, tr("3 Dec, Thursday, +7"))
        field.edit.textEdited.connect(lambda text: self._type_day(name, text))
        field.edit.stepped.connect(lambda by: self._step_day(name, by))
        return field

    # ---- showing

    def show_job(self, job: Job) -> None:
        """Show what is written down; a field one types in, or whose text cannot be used, is left as it is."""
        other, self._job = job.id != self._job, job.id
        self._show(self._title, job.case.title, other)
        self._show(self._wearer, job.case.wearer, other)
        self._notes.show_text(job.case.notes)
        for name, day in (("brought", job.brought), ("due", job.due)):
            field = self._days[name]
            self._show(field, day.isoformat() if day else "", other)
            field.remark.say(day_words(day, date.today()) if day else "")

    def _show(self, field: Field, text: str, other: bool) -> None:
        if other or not (field.edit.hasFocus() or field.wrong):
            field.edit.setText(text)
        if other:
            self._say_wrong(field, "")

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first field."""
        self._title.edit.setFocus(reason)

    # ---- typing

    def _name_wearer(self, wearer: str) -> None:
        try:
            check_wearer(wearer)
        except FitdoctorError as error:
            self._say_wrong(self._wearer, str(error))
            self.changed.emit("wearer", "")
            return
        self._say_wrong(self._wearer, "")
        self.changed.emit("wearer", wearer)

    def _type_day(self, name: str, text: str) -> None:
        try:
            day = typed_day(text, date.today())
        except FitdoctorError as error:
            self._say_wrong(self._days[name], str(error))
            return
        self._say_wrong(self._days[name], "")
        self.changed.emit(name, day)

    def _step_day(self, name: str, by: int) -> None:
        field, today = self._days[name], date.today()
        try:
            now = typed_day(field.edit.text(), today)
        except FitdoctorError:
            now = None
        day = (now or today) + timedelta(days=by)
        field.edit.setText(day.isoformat())
        self._type_day(name, day.isoformat())

    def _say_wrong(self, field: Field, why: str) -> None:
        field.show_wrong(bool(why))
        named = {"title": self._title, "wearer": self._wearer, **self._days}
        self._asked[next(name for name, each in named.items() if each is field)].wrong.say(why)
