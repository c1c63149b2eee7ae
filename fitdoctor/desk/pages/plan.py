"""Step 6: the operations in order, with the marks of the one in hand and the time they take."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal

from fitdoctor.assess import Assessment
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.pages.step_marks import StepMarks
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.operation_list import OperationList, Stage, Step
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.sum_row import SumRow
from fitdoctor.desk.parts.text import PageTitle, Rule, Words
from fitdoctor.desk.step_names import TITLES
from fitdoctor.desk.words import and_list, count, lower_first, tr
from fitdoctor.plan import STAGE_WORDS
from fitdoctor.sheet import duration, in_minutes

GUTTER = 48


class PlanPage(Page):
    """The list at the left, the marks at the right."""

    step = "plan"
    guidesWanted = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self._in_hand = ""
        self._lacking = "shows"
        self._title = PageTitle(look, tr("Plan and marks"), "plan-title")
        self._empty = EmptyNote(look, "", "plan-empty", " ")
        self._empty.pressed.connect(lambda: job.go_to(self._lacking))
        self._list = OperationList(look, "plan-step")
        self._list.ticked.connect(job.tick)
        self._list.takenInHand.connect(self._take)
        self._marks = StepMarks(look, job)
        self._marks.guidesWanted.connect(self.guidesWanted.emit)
        self._sum = SumRow(look, "plan-sum")
        self._lining = Rows("plan-lining", 6)
        self._right = section(self._marks, self._sum, Rule(look), self._lining, gap=14)
        self._columns = Columns(GUTTER)
        self._scroll = self.stand(self._title, self._empty, self._columns, gap=10)

    def arrange(self, columns: int) -> None:
        if columns > 1:
            self._columns.lay([[(self._list, 68), (self._right, 49)]])
        else:
            self._columns.lay([[(self._list, 1)], [(self._right, 1)]])

    def show_job(self) -> None:
        assessment = self.job.assessment
        ready = assessment is not None and bool(assessment.plan.operations)
        self._empty.setVisible(not ready)
        self._columns.setVisible(ready)
        self._title.remark(self._lead(assessment) if ready and assessment else "")
        if not ready or assessment is None:
            self._show_empty(assessment)
            return
        operations = assessment.plan.operations
        ids = [operation.id for operation in operations]
        done = self.job.case.done
        if self._in_hand not in ids:
            self._in_hand = next((id_ for id_ in ids if id_ not in done), ids[0])
        self._list.show_stages(self._stages(assessment), done, self._in_hand)
        number = ids.index(self._in_hand)
        self._marks.show_step(assessment, operations[number], number + 1)
        self._show_sum(assessment)
        self._show_lining(assessment)

    def _show_empty(self, assessment: Assessment | None) -> None:
        if assessment is not None and assessment.choices:
            self._lacking = "done"
            undone = tr("What is chosen cannot be done, so no work is planned.")
            text = undone if assessment.verdict.level == "CANNOT" else tr("The way that is chosen has no work in it.")
        elif assessment is not None and assessment.left_alone:
            self._lacking = "done"
            text = tr("It is left alone by choice, so there is nothing to plan.")
        elif self.job.case.seen:
            self._lacking = "narrow"
            text = tr("No cause stands out yet, so there is no work to plan.")
        else:
            self._lacking = "shows"
            text = tr("No work to plan yet. Note what shows first.")
        self._empty.say(text, tr("Go to {step}", step=tr(TITLES[self._lacking])))

    def _lead(self, assessment: Assessment) -> str:
        stages = list(dict.fromkeys(STAGE_WORDS[stage] for stage, _ in assessment.plan.stages()))
        if len(stages) < 2:
            tries = sum(operation.try_on for operation in assessment.plan.operations)
            steps = count(len(assessment.plan.operations) - tries, "{number} step", "{number} steps")
            return tr("{steps}, {tries}.", steps=steps, tries=count(tries, "{number} try-on", "{number} try-ons"))
        order = and_list([stages[0], *(lower_first(title) for title in stages[1:])])
        return tr("In this order: {stages}. Each change alters the next reading.", stages=lower_first(order))

    def _stages(self, assessment: Assessment) -> list[Stage]:
        seam = self.job.knowledge.seam_title
        numbers = {operation.id: number for number, operation in enumerate(assessment.plan.operations, 1)}
        return [
            Stage(
                tr(STAGE_WORDS[stage]),
                duration(sum(operation.minutes[1] for operation in operations)),
                tuple(
                    Step(
                        id=operation.id,
                        number=numbers[operation.id],
                        text=operation.text,
                        seam=", ".join(seam(s) for s in operation.opens),
                        minutes=in_minutes(operation.minutes[1]),
                        try_on=operation.try_on,
                        care=operation.care,
                    )
                    for operation in operations
                ),
            )
            for stage, operations in assessment.plan.stages()
        ]

    def _take(self, operation: str) -> None:
        self._in_hand = operation
        self.show_job()
        row = next((row for row in self._list.step_rows() if row.step.id == operation), None)
        if row:
            row.setFocus(Qt.FocusReason.TabFocusReason if self._list.keyed else Qt.FocusReason.OtherFocusReason)

    def _show_sum(self, assessment: Assessment) -> None:
        minutes, shop = assessment.plan.minutes, self.job.shop
        titles = (tr("At best"), tr("Likely"), tr("At worst"))
        self._sum.show_sum([(title, duration(time), shop.money(time)) for title, time in zip(titles, minutes, strict=True)])

    def _show_lining(self, assessment: Assessment) -> None:
        methods = [self.job.knowledge.methods[m] for m in assessment.methods]
        said = [(tr("Lining"), m.lining) for m in methods if m.lining] + [(tr("Pressing"), m.pressing) for m in methods if m.pressing]
        rows = [Words(self.look, f"**{title}.** {text}", "small") for title, text in dict.fromkeys(said)]
        self._lining.setVisible(bool(rows))
        self._lining.show_rows(rows)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self._empty.isVisibleTo(self):
            self._empty.button.setFocus(reason)
            return
        row = next((row for row in self._list.step_rows() if row.step.id == self._in_hand), None)
        if row:
            row.setFocus(reason)

    def summary(self) -> str:
        shown = self.columns < 2 and self._columns.isVisibleTo(self)
        return tr("Marks and time") if shown else ""

    def show_summary(self) -> None:
        self._scroll.bring_up(self._right)
