"""The page of an exercise: plate, question with its answers and what is said to them, margin."""

from __future__ import annotations

from datetime import UTC, datetime

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, Page, ScrollColumn, section
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.practice.answers import Answers
from fitdoctor.desk.practice.exercise_plate import ExercisePlate, can_show_both
from fitdoctor.desk.practice.feedback_note import Details, FeedbackNote
from fitdoctor.desk.practice.margin import Margin
from fitdoctor.desk.practice.sitting import Sitting
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import count, tr
from fitdoctor.practice.exercise import KIND_WORDS, POINTS, Feedback, Question
from fitdoctor.practice.schedule import in_words

_KEYS = {sign: at for signs in ("1234", "abcd") for at, sign in enumerate(signs)}


class ExercisePage(Page):
    """Emits the answer given, and what is wanted next."""

    step = "practise"
    answered = Signal(str)
    onWanted = Signal()
    moreWanted = Signal()
    pageWanted = Signal(object)

    def __init__(self, look: Look, job: Job, sitting: Sitting) -> None:
        super().__init__(look, job)
        self.sitting = sitting
        self._shown: Question | None = None
        self.plate = ExercisePlate(look, sitting, job.pictures)
        self.margin = Margin(look, sitting)
        self._number = Words(look, "", "small", "ink-2", "practise-number")
        self._ask = Words(look, "", "question", name="practise-question")
        self._given = Words(look, "", "small", name="practise-given")
        self._waiting = Words(look, tr("Making the next exercise."), "lead", "ink-2", "practise-waiting")
        self.answers = Answers(look)
        self.feedback, self.details = FeedbackNote(look), Details(look, sitting.knowledge)
        self.on = Button(look, "", "practise-next", "go")
        self._back = Words(look, "", "small", "ink-2", "practise-comes-back")
        self.answers.answered.connect(self.answered.emit)
        self.feedback.bothWanted.connect(self._show_both)
        self.feedback.pageWanted.connect(self.pageWanted.emit)
        self.on.clicked.connect(lambda: (self.moreWanted if sitting.finished else self.onWanted).emit())
        self._lay_out()

    def _lay_out(self) -> None:
        self._next = QWidget()
        row = QHBoxLayout(self._next)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(14)
        row.addWidget(self.on, 0, Qt.AlignmentFlag.AlignLeft)
        row.addWidget(self._back, 1, Qt.AlignmentFlag.AlignVCenter)
        self.question_column = QWidget()
        column = QVBoxLayout(self.question_column)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        head = section(self._number, self._ask, self._given, self._waiting, gap=4)
        for gap, part in ((0, head), (14, self.answers), (18, self.feedback), (18, self._next), (14, self.details)):
            column.addSpacing(gap)
            column.addWidget(part)
        self._body = Columns(GUTTER)
        self._scroll = ScrollColumn("practise-scroll")
        self._scroll.column.addWidget(self._body)
        self._scroll.column.addStretch(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.plate)
        whole.addWidget(self._scroll, 1)
        self._scroll.verticalScrollBar().rangeChanged.connect(lambda: self._show_way_on())  # what is said has its height only then

    def fold(self, width: int) -> None:
        self.plate.fold(width, self.look.columns(width))
        super().fold(width)

    def arrange(self, columns: int) -> None:
        both: list[tuple[QWidget, int]] = [(self.question_column, 520), (self.margin, 236)]
        self._body.lay([both] if columns > 2 else [[one] for one in both])

    # ---- showing

    def show_job(self) -> None:
        self.show_sitting()

    def show_sitting(self) -> None:
        """Show the sitting as it is now."""
        sitting, question = self.sitting, self.sitting.question
        self._waiting.setVisible(sitting.busy)
        self._number.say(self._where())
        for part in (self.answers, self._ask, self._given):
            part.setVisible(question is not None)
        if question is not None:
            self._show_question(question)
        elif sitting.finished:
            self._show_end()
        self._show_feedback(question, sitting.feedback)
        self.margin.show_progress()

    def _where(self) -> str:
        sitting = self.sitting
        if sitting.exercise is None:
            return ""
        asked = tr("Exercise {number} of {total}", number=sitting.number, total=sitting.total)
        kind = tr(KIND_WORDS[sitting.exercise.kind])
        return f"{asked} · {kind}"

    def _show_question(self, question: Question) -> None:
        exercise = self.sitting.exercise
        if question is self._shown or exercise is None:
            return
        self._shown = question
        self._ask.say(question.ask)
        known = question.given if question.picture.mechanism or not question.picture.seen else question.given[1:]
        self._given.say("\n".join(known))
        self.answers.show_question(question, self.sitting.shop)
        self.plate.show_picture(exercise.case.garment, question.picture, told=False)
        self._scroll.verticalScrollBar().setValue(0)

    def _show_feedback(self, question: Question | None, feedback: Feedback | None) -> None:
        exercise, sitting = self.sitting.exercise, self.sitting
        for part in (self.feedback, self.details):
            part.setVisible(feedback is not None)
        self._next.setVisible(feedback is not None or sitting.finished)
        if feedback is None or question is None or exercise is None:
            return
        self.answers.show_judged(question, sitting.said, feedback.mark)
        self.feedback.show_feedback(feedback, can_show_both(sitting, exercise.case.garment, feedback.told.confused))
        self.details.show_feedback(feedback)
        self.plate.show_picture(exercise.case.garment, feedback.shows, told=True)
        self.on.say(tr("Next exercise ›") if sitting.last_question else tr("Next question ›"))
        due, now = sitting.schedule.comes_back(question.skill.key), datetime.now(UTC)
        self._back.say(tr("This one comes back {when}.", when=tr(in_words(due, now))) if due else "")

    def _show_end(self) -> None:
        sitting = self.sitting
        self._shown = None
        got = sum(POINTS[mark] for mark in sitting.marks)
        asked = len(sitting.marks)
        self._number.say("")
        self._ask.setVisible(True)
        done = count(asked, "1 question answered, {got} right.", "{number} questions answered, {got} right.", got=f"{got:g}")
        self._ask.say(done if asked else tr("Nothing to ask there."))
        self.on.say(tr("More exercises ›"))
        self._back.say("")

    def _show_both(self) -> None:
        exercise, feedback = self.sitting.exercise, self.sitting.feedback
        if exercise is not None and feedback is not None:
            self.plate.show_both(exercise.case.garment, feedback.told.confused)

    def _show_way_on(self) -> None:
        """Scroll until the way on is in sight, but never past the beginning of what is said to the answer."""
        if self.sitting.feedback is None:
            return
        self._scroll.ensureWidgetVisible(self._next, 0, 12)
        bar, said = self._scroll.verticalScrollBar(), self.feedback.mapTo(self._scroll.content, QPoint(0, 0)).y()
        bar.setValue(min(bar.value(), max(0, said - 12)))

    # ---- keys and focus

    def take_key(self, text: str) -> bool:
        place = _KEYS.get(text.lower())
        return place is not None and self.sitting.feedback is None and self.answers.take(place)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self.sitting.feedback is not None or self.sitting.finished:
            self.on.setFocus(reason)
            self._show_way_on()
        else:
            self.answers.focus_first(reason)
