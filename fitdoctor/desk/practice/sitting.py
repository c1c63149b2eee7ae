"""What a trainee has in hand: the exercise, the question of it, the answer given, and what was answered before."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from fitdoctor.desk.background import run_in_background
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import Amount, Choice, Exercise, Feedback, Mark, Order, Question
from fitdoctor.practice.judging import judge
from fitdoctor.practice.keeping import Record, open_record
from fitdoctor.practice.making import Set, make_set
from fitdoctor.practice.progress import Answered, answered
from fitdoctor.practice.schedule import Schedule
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.session import pair_exercise, scheduled_exercise
from fitdoctor.shop import Shop

COUNT, PAIR_COUNT = 10, 4


class Sitting(QObject):
    """Says that something changed, and what failed. Exercises are made in the background."""

    changed = Signal()
    failed = Signal(object)

    def __init__(self, knowledge: Knowledge, shop: Shop, file: Path) -> None:
        super().__init__()
        self.knowledge, self.shop, self._file = knowledge, shop, file
        self.bench = Bench(knowledge, shop)
        self.note = ""
        self.record = self._opened()
        self.scope = Scope()
        self.set: Set | None = None
        self.pair: tuple[str, str] | None = None
        self._errand = 0
        self._begin(COUNT)

    def _opened(self) -> Record:
        try:
            record = open_record(self._file)
        except FitdoctorError as error:
            self.note = str(error)
            return Record(self._file)
        self.note = record.note
        return record

    def _begin(self, total: int) -> None:
        """Begin to count anew."""
        self.total = total
        self.marks: list[Mark] = []
        self.had: list[Exercise] = []
        self.exercise: Exercise | None = None
        self._at = 0
        self.said, self.feedback = "", None
        self.busy = self.finished = False

    # ---- what is in hand

    feedback: Feedback | None

    @property
    def question(self) -> Question | None:
        """The question in hand."""
        return self.exercise.questions[self._at] if self.exercise else None

    @property
    def number(self) -> int:
        """Which exercise of how many, from 1."""
        return len(self.had)

    @property
    def last_question(self) -> bool:
        """Whether the exercise in hand has no question after this one."""
        return self.exercise is None or self._at + 1 == len(self.exercise.questions)

    @property
    def schedule(self) -> Schedule:
        """When things come back."""
        return Schedule.of(self.record.answers)

    def today(self) -> tuple[Answered, ...]:
        """The answers of today."""
        now = datetime.now().astimezone().date()
        return tuple(answer for answer in self.record.answers if answer.when.astimezone().date() == now)

    # ---- beginning

    def start(self) -> None:
        """Ask something, where nothing is in hand."""
        if self.exercise is None and not self.busy and not self.finished:
            self._next()

    def practise(self, scope: Scope | None = None) -> None:
        """What is due, then new things."""
        self.scope, self.set, self.pair = scope or self.scope, None, None
        self._begin(COUNT)
        self._next()

    def practise_pair(self, ids: tuple[str, str]) -> None:
        """Two that are mixed up, several times."""
        self.set, self.pair = None, ids
        self._begin(PAIR_COUNT)
        self._next()

    def start_set(self, scope: Scope, seed: str, count: int) -> None:
        """A set for a class."""
        self.scope, self.pair = scope, None
        self._begin(count)
        self._make_set(scope, seed, count)

    def _make_set(self, scope: Scope, seed: str, count: int) -> None:
        bench, self.exercise = self.bench, None
        self._make(lambda: make_set(bench, scope, seed, count), self._take_set)

    def take(self, knowledge: Knowledge, shop: Shop) -> None:
        """Go on with this knowledge and these units; an exercise made of others is made again, from its first question."""
        read_anew = knowledge is not self.knowledge
        other_units = (self.shop.unit, self.shop.finest) != (shop.unit, shop.finest)
        self.knowledge, self.shop = knowledge, shop
        if not (read_anew or other_units):
            return
        self.bench = Bench(knowledge, shop)
        if self.exercise is None or (self.feedback is not None and not read_anew):
            return
        self.said, self.feedback = "", None
        self.had.pop()
        if self.set is not None:
            self._make_set(self.set.scope, self.set.seed, self.total)
        else:
            self._next()

    # ---- answering

    def answer(self, text: str) -> None:
        """Give an answer; it is judged, and kept."""
        question, exercise = self.question, self.exercise
        if question is None or exercise is None or self.feedback is not None:
            return
        try:
            feedback = judge(question, text, self.shop)
        except FitdoctorError as error:
            self.failed.emit(error)
            return
        self.said, self.feedback = text, feedback
        self.marks.append(feedback.mark)
        set_, seed = (self.set.scope.words, self.set.seed) if self.set else ("", "")
        self._keep(answered(exercise, question, feedback, _in_words(question, text), datetime.now(UTC), set_, seed))
        self.changed.emit()

    def _keep(self, answer: Answered) -> None:
        try:
            self.record = self.record.with_answer(answer)
        except FitdoctorError as error:
            self.record = replace(self.record, answers=(*self.record.answers, answer))
            self.failed.emit(error)
        if self.record.note:
            self.note, self.record = self.record.note, replace(self.record, note="")

    def go_on(self) -> None:
        """The next question of the exercise, or the next exercise, or the end."""
        if self.feedback is None:
            return
        self.said, self.feedback = "", None
        if not self.last_question:
            self._at += 1
            self.changed.emit()
        elif self.number >= self.total:
            self.exercise, self.finished = None, True
            self.changed.emit()
        else:
            self._next()

    # ---- making

    def _next(self) -> None:
        self.exercise, self._at = None, 0
        if self.set is not None:
            self._take(self.set.exercises[min(self.number, len(self.set.exercises) - 1)])
            return
        bench, scope, answers, pair, turn = self.bench, self.scope, self.record.answers, self.pair, self.number
        done = {exercise.skill for exercise in self.had}
        if pair is not None:
            turn += len(answers)
            self._make(lambda: pair_exercise(bench, Scope(), pair, turn), self._take)
        else:
            now = datetime.now(UTC)
            self._make(lambda: scheduled_exercise(bench, scope, answers, now, done), self._take)

    def _make(self, function: Callable[[], object], then: Callable[..., None]) -> None:
        """Make something in the background; what was asked for before it is no longer wanted."""
        self._errand += 1
        mine = self._errand
        self.busy = True

        def come_back(made: object) -> None:
            if mine == self._errand:
                self.busy = False
                then(made)

        def give_up(error: Exception) -> None:
            if mine == self._errand:
                self.busy, self.finished = False, True
                self.failed.emit(error)
                self.changed.emit()

        run_in_background(function, come_back, give_up)
        self.changed.emit()

    def _take_set(self, made: Set) -> None:
        self.set, self.total = made, len(made.exercises)
        self._next()

    def _take(self, exercise: Exercise | None) -> None:
        if exercise is None:
            self.finished = True
            self.failed.emit(FitdoctorError(tr("No exercise can be made there."), tr("Choose a wider place, or another kind.")))
        else:
            self.exercise, self._at = exercise, 0
            self.had.append(exercise)
        self.changed.emit()


def _in_words(question: Question, text: str) -> str:
    if isinstance(question, Choice):
        return question.option(text).text
    if isinstance(question, Order):
        ids = [id_ for id_, _ in question.steps]
        return " ".join("ABCDEFGH"[ids.index(id_)] for id_ in text.split())
    assert isinstance(question, Amount)
    return text
