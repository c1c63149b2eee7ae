"""Closing a job: which causes were right, how it hangs now, the amounts used, the minutes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.minutes import MinutesSpent, minutes_field, typed_minutes
from fitdoctor.desk.jobbook.typed_row import TypedRow
from fitdoctor.desk.jobbook.used import AmountsUsed
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.parts.text_box import TextBox
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.job import RESULT_WORDS
from fitdoctor.jobbook.job import Job as BookJob
from fitdoctor.jobbook.lessons import OperationMinutes
from fitdoctor.jobbook.reading import MarkThen
from fitdoctor.plan import PlannedOperation


@dataclass(frozen=True)
class Draft:
    """How a job came out, as far as it was said.

    Attributes:
        right: causes that were right; nothing_known: it was none of those the handbook knows.
        result: how it hangs now, empty until it was said; minutes: of the whole job.
    """

    right: tuple[str, ...] = ()
    nothing_known: bool = False
    result: str = ""
    used_mm: dict[str, float] = field(default_factory=dict)
    minutes: float | None = None
    note: str = ""
    all_causes: bool = False

    def lacks(self) -> str:
        """What has still to be said before the job can be closed."""
        if not self.right and not self.nothing_known:
            return tr("Tick what was right, or that it was nothing the handbook knows.")
        return "" if self.result else tr("Say how it hangs now.")


@dataclass(frozen=True)
class ToClose:
    """The job to be closed, with what was thought and planned of it last, and what its operations took in other jobs."""

    job: BookJob
    title: str
    causes: tuple[str, ...]
    operations: tuple[PlannedOperation, ...]
    marks: tuple[MarkThen, ...]
    timed: Mapping[str, OperationMinutes]


class ClosingPage(View):
    """Emits each field of the draft that changes, the minutes of an operation, and that the job is to be closed."""

    drafted = Signal(str, object)
    spent = Signal(str, object)
    closeWanted = Signal()

    def __init__(self, look: Look, job: Job, closing: ToClose, draft: Draft) -> None:
        super().__init__(look, job, "closing", tr("Close the job"), closing.title)
        self._closing, self.draft = closing, draft
        self._causes = Rows("closing-causes", 0)
        self._show_causes()
        results = [(result, tr(words)) for result, words in RESULT_WORDS.items()]
        self._result = ChoiceRow(look, "result", results, draft.result, "closing-result", tr("How it hangs now:"))
        self._result.chosen.connect(lambda _question, value: self._say("result", value))
        note = TextBox(look, "closing-note", tr("What to remember of it"), 3)
        note.show_text(draft.note)
        note.edited.connect(lambda text: self._say("note", text))
        used = AmountsUsed(look, job.shop, closing.marks, draft.used_mm)
        used.used.connect(self._use)
        minutes = MinutesSpent(look, closing.operations, closing.job.minutes, closing.timed)
        minutes.spent.connect(self.spent.emit)
        self._lacking = Words(look, "", "small", "care", "closing-lacking")
        self._close = Button(look, tr("Close the job"), "closing-close", "go")
        self._close.clicked.connect(self._try)
        what = (SectionHead(look, tr("How it hangs now")), self._result, SectionHead(look, tr("What to remember of it")), note)
        first = section(self._causes_section(), *what, left(self._close), self._lacking, gap=14)
        self.lay((first, 50), (section(used, minutes, self._whole(), gap=18), 50))

    def _causes_section(self) -> QWidget:
        head = SectionHead(self.look, tr("Which causes were right"))
        return section(
            head, Words(self.look, tr("As it turned out once the work was done. Several can be."), "small", "ink-2"), self._causes, gap=6
        )

    def _whole(self) -> TypedRow:
        entry = minutes_field(self.look, "closing-minutes", tr("Minutes for the whole job"), "")
        row = TypedRow(self.look, tr("The whole job"), tr("In place of the minutes above, if it was timed as one."), entry, typed_minutes)
        if self.draft.minutes is not None:
            row.show_text(f"{self.draft.minutes:g}")
        row.typed.connect(lambda value: self._say("minutes", value))
        return row

    # ---- the causes

    def _show_causes(self) -> None:
        know = self.job.knowledge
        shown = self._listed()
        ticks = [self._tick(id_, know.causes[id_].title.rstrip("."), id_ in self.draft.right) for id_ in shown]
        ticks.append(self._tick("", tr("Nothing that the handbook knows"), self.draft.nothing_known))
        self._group = ControlGroup(ticks)
        rows: list[QWidget] = [*ticks]
        if not self.draft.all_causes:
            more = Link(self.look, tr("Something else: show every cause of this garment"), "closing-all-causes")
            more.clicked.connect(lambda: self._say_and_show("all_causes", True))
            rows.append(left(more))
        self._causes.show_rows(rows)

    def _listed(self) -> Sequence[str]:
        know = self.job.knowledge
        every = sorted(know.causes_of(self._closing.job.case.garment), key=lambda id_: know.causes[id_].title)
        listed = dict.fromkeys((*self._closing.causes, *self.draft.right, *(every if self.draft.all_causes else ())))
        return [id_ for id_ in listed if id_ in know.causes]

    def _tick(self, cause: str, text: str, on: bool) -> TickBox:
        tick = TickBox(self.look, text, f"closing-cause-{cause or 'none'}")
        tick.setChecked(on)
        tick.clicked.connect(lambda now=False: self._judge(cause, now))
        return tick

    def _judge(self, cause: str, right: bool) -> None:
        """A cause that was right and ‘nothing known’ exclude each other."""
        if not cause:
            self._say("right", () if right else self.draft.right)
            self._say_and_show("nothing_known", right)
            return
        rest = tuple(id_ for id_ in self.draft.right if id_ != cause)
        self._say("nothing_known", False)
        self._say_and_show("right", (*rest, cause) if right else rest)

    def _say_and_show(self, name: str, value: Any) -> None:
        self._say(name, value)
        with self.focus_kept():
            self._show_causes()

    # ---- saying

    def _use(self, mark: str, mm: float | None) -> None:
        rest = {id_: used for id_, used in self.draft.used_mm.items() if id_ != mark}
        self._say("used_mm", rest if mm is None else {**rest, mark: mm})

    def _say(self, name: str, value: Any) -> None:
        self.drafted.emit(name, value)
        self._lacking.say(self.draft.lacks() if self._lacking.said() else "")

    def _try(self) -> None:
        self._lacking.say(self.draft.lacks())
        if not self.draft.lacks():
            self.closeWanted.emit()

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self._group.controls[0].setFocus(reason)
