"""The right of the job book: the chosen job on one look, and what can be done with it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.assess import Assessment
from fitdoctor.desk.handbook.plates import symptom_diagram
from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.days import day_words, due_words
from fitdoctor.desk.jobbook.lines import causes_of, state_tag, title_of
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.label_row import LabelRow
from fitdoctor.desk.parts.pick import Pick
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.tag import StateTag
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.plate import Plate
from fitdoctor.desk.words import and_list, count, lower_first, tr, upper_first
from fitdoctor.jobbook.job import STATE_WORDS, Photo, minutes_spent
from fitdoctor.jobbook.job import Job as BookJob
from fitdoctor.jobbook.reading import Reading
from fitdoctor.sheet import duration

_PLATE_HIGH = 196


@dataclass(frozen=True)
class Chosen:
    """A job with all that is shown of it; `assessment` is what is thought of it now, None where its garment is not known."""

    job: BookJob
    readings: tuple[Reading, ...]
    photos: tuple[Photo, ...]
    assessment: Assessment | None


class OneLook(Rows):
    """Emits what is wanted of the chosen job: open, close, reopen, change, history, minutes, delete; and its new state."""

    wanted = Signal(str)
    stateWanted = Signal(str)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__("jobs-one", 0)
        self.look, self.job = look, job

    def show_job(self, chosen: Chosen | None, photos: QWidget | None = None) -> None:
        """Show a job, or nothing."""
        self.show_rows(list(self._rows(chosen, photos)) if chosen else [])

    def _rows(self, chosen: Chosen, photos: QWidget | None) -> Iterator[QWidget]:
        job = chosen.job
        yield Words(self.look, self._days(job), "small", "ink-2", "jobs-days")
        yield Words(self.look, title_of(self.job.knowledge, job), "section-title", name="jobs-title-chosen")
        yield _gap(8)
        plate = self._plate(chosen)
        if plate:
            yield plate
            yield _gap(4)
        for label, text in self._facts(chosen):
            yield LabelRow(self.look, label, text, f"jobs-says-{label.lower()}")
        yield LabelRow(self.look, tr("State"), self._state(job))
        yield _gap(12)
        yield self._buttons(job)
        yield _gap(10)
        yield self._links(chosen)
        if job.case.notes:
            yield _gap(12)
            yield Words(self.look, job.case.notes, "small", name="jobs-says-notes")
        if photos:
            yield _gap(14)
            yield photos

    def _days(self, job: BookJob) -> str:
        """‘M. Came in today, due Thursday.’"""
        today = date.today()
        came = tr("came in {day}", day=day_words(job.brought, today)) if job.brought else ""
        days = upper_first(", ".join(part for part in (came, due_words(job.due, today)) if part))
        return " · ".join(part for part in (job.case.wearer, days) if part)

    def _plate(self, chosen: Chosen) -> Plate | None:
        know, case = self.job.knowledge, chosen.job.case
        signs = (know.symptoms[id_] for id_ in case.seen if id_ in know.symptoms)
        sign = next(((s, d) for s in signs if (d := symptom_diagram(know, s, case.garment))), None)
        if sign is None:
            return None
        plate = Plate(self.job.pictures, self.look.tones)
        plate.setObjectName("jobs-plate")
        plate.set_text_size(self.look.em)
        plate.setFixedHeight(_PLATE_HIGH)
        plate.show_scene(sign[1].scene, sign[1].crop, sign[1].overlay, says=sign[0].look)
        return plate

    def _facts(self, chosen: Chosen) -> Iterator[tuple[str, str]]:
        know, job = self.job.knowledge, chosen.job
        last = chosen.readings[-1] if chosen.readings else None
        seen = [know.symptoms[id_].title.rstrip(".") for id_ in job.case.seen if id_ in know.symptoms]
        yield tr("Seen"), "; ".join([seen[0], *map(lower_first, seen[1:])]) if seen else tr("nothing noted yet")
        found = chosen.assessment.treat if chosen.assessment and not job.outcome else causes_of(job, last)
        titles = [know.causes[id_].title.rstrip(".") for id_ in found if id_ in know.causes]
        yield tr("Found"), upper_first(and_list([lower_first(title) for title in titles])) or tr("not narrowed down yet")
        methods = chosen.assessment.methods if chosen.assessment else last.methods if last else ()
        work = [know.methods[id_].title for id_ in methods if id_ in know.methods]
        if work:
            yield tr("Work"), "; ".join(work)
        yield tr("Time"), self._time(chosen)

    def _time(self, chosen: Chosen) -> str:
        spent = minutes_spent(chosen.job)
        so_far = tr("{time} spent", time=duration(spent)) if spent is not None else ""
        plan = chosen.assessment.plan if chosen.assessment else None
        likely = tr("{time} likely", time=duration(plan.minutes[1])) if plan and plan.operations else ""
        return ", ".join(part for part in (so_far, likely) if part) or tr("none written down")

    def _state(self, job: BookJob) -> QWidget:
        if job.outcome:
            return left(StateTag(self.look, *state_tag(job), "jobs-state-tag"))
        states = [(state, tr(words)) for state, words in STATE_WORDS.items()]
        pick = Pick(self.look, tr("State"), states, job.state, "jobs-stands", "row", bare=True)
        pick.picked.connect(self.stateWanted.emit)
        return left(pick)

    def _buttons(self, job: BookJob) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(holder, 12)
        closing = ("reopen", tr("Take up again")) if job.outcome else ("close", tr("Close the job"))
        for want, text in (("open", tr("Open")), closing):
            button = Button(self.look, text, f"jobs-{want}", "go" if want == "open" else "plain")
            button.clicked.connect(lambda _on=False, which=want: self.wanted.emit(which))
            flow.addWidget(button)
        return holder

    def _links(self, chosen: Chosen) -> QWidget:
        number = len(chosen.readings)
        links = [
            ("change", tr("Change what is written down")),
            ("minutes", tr("Write down minutes")),
            ("history", count(number, "History: 1 reading", "History: {number} readings") if number else ""),
            ("delete", tr("Delete for good")),
        ]
        rows = Rows("", 4)
        rows.show_rows([left(self._link(want, text)) for want, text in links if text])
        return rows

    def _link(self, want: str, text: str) -> Link:
        link = Link(self.look, text, f"jobs-{want}", "body")
        link.clicked.connect(lambda: self.wanted.emit(want))
        return link


def _gap(px: int) -> QWidget:
    gap = QWidget()
    gap.setFixedHeight(px)
    return gap
