"""The check in hand: the question, a picture, how it is done, the answers, and why this one."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.pages.said import check_needs, question_of
from fitdoctor.desk.parts.answers import AnswerRow
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.line_choice import Picture
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.rows import Rows, emptied
from fitdoctor.desk.parts.text import OneLine, SectionHead, Words
from fitdoctor.desk.words import lower_first, tr
from fitdoctor.diagnosis.next_checks import NextCheck
from fitdoctor.figure.diagrams import check_diagram
from fitdoctor.knowledge.entries import Check

PLATE = (196, 168)
PLATE_GROWN = 1.4


class CheckInHand(QWidget):
    """Works the answer into the case; `answered` tells how the focus came here, so that it can go on to the next question."""

    answered = Signal(Qt.FocusReason)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._wide = True
        self._ask: NextCheck | None = None
        self._head = SectionHead(look, tr("Next best check"), " ")
        self._remark = Words(look, "", "small", "ink-2", "narrow-remark")
        self._question = Words(look, "", "question", name="narrow-question")
        self._how = Rows("narrow-how")
        self._answers = Rows()
        self._why = Words(look, "", "small", "ink-2", "narrow-why")
        self._row: AnswerRow | None = None
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(0)
        self._parts = {
            "head": self._head,
            "remark": self._remark,
            "question": self._question,
            "how": self._how,
            "answers": self._answers,
            "why": self._why,
        }
        self.arrange(wide=True)

    def arrange(self, wide: bool) -> None:
        """In a narrow window the answers come before the way it is done, so that they stay in the first screen."""
        self._wide = wide
        emptied(self._column)
        order = ("head", "question", "how", "answers", "why") if wide else ("remark", "question", "answers", "why", "how")
        for name in order:
            self._column.addSpacing({"head": 0, "remark": 0, "question": 12 if wide else 0, "why": 9}.get(name, 14))
            self._column.addWidget(self._parts[name])
        for name, part in self._parts.items():
            part.setVisible(name in order)  # only now: shown without a parent it would be a window of its own
        if self._ask:
            self.show_check(self._ask)

    def show_check(self, ask: NextCheck) -> None:
        """Ask this."""
        self._ask = ask
        check = self.job.knowledge.checks.get(ask.id) if ask.kind == "check" else None
        needs = check_needs(check) if check else tr("A look is enough.")
        self._head.say(tr("Next best check"), needs)
        self._remark.say(tr("Next best check. {needs}", needs=needs) if not self._wide else "")
        self._question.say(question_of(self.job.knowledge, ask))
        self._how.show_rows([self._explained(ask, check)])
        self._show_answers(ask, check)
        self._why.say(tr("Why this one: {reason}", reason=lower_first(ask.because.text)))

    def _show_answers(self, ask: NextCheck, check: Check | None) -> None:
        yes, no = (check.yes, check.no) if check else (tr("Yes, it shows"), tr("No"))
        answers = [("yes", yes), ("no", no), ("not-known", tr("Cannot tell"))]
        self._row = AnswerRow(self.look, ask.id, answers, self.job.case.answers.get(ask.id, ""), "narrow-answer")
        self._row.answered.connect(self._take)
        self._answers.show_rows([self._row])

    def _take(self, question: str, answer: str) -> None:
        focused = QApplication.focusWidget()
        keyed = isinstance(focused, Control) and focused.ringed
        if self._ask and self._ask.kind == "check":
            self.job.answer(question, answer)
        else:
            self.job.answer_look(question, answer)
        self.answered.emit(Qt.FocusReason.TabFocusReason if keyed else Qt.FocusReason.OtherFocusReason)

    def _explained(self, ask: NextCheck, check: Check | None) -> QWidget:
        """The picture and the steps beside it."""
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(24)
        picture = self._picture(ask, check)
        if picture:
            scale = 1.0 if self._wide else PLATE_GROWN
            size = (round(PLATE[0] * scale), round(PLATE[1] * scale))
            line.addWidget(SmallPicture(self.look, picture, size, self._says(ask, check)), 0, Qt.AlignmentFlag.AlignTop)
        line.addWidget(self._steps(ask, check), 1, Qt.AlignmentFlag.AlignTop)
        return row

    def _says(self, ask: NextCheck, check: Check | None) -> str:
        return tr("Picture: {what}", what=check.title if check else ask.ask)

    def _picture(self, ask: NextCheck, check: Check | None) -> Picture | None:
        know, case, pictures, tones = self.job.knowledge, self.job.case, self.job.pictures, self.look.tones
        if check is None:
            symptom = know.symptoms[ask.id]
            return lambda size, dpr: pictures.symptom(know, symptom, case.garment, size, dpr, tones, case.facts)
        seen = [know.symptoms[symptom] for symptom in case.seen if symptom in know.symptoms]
        diagram = check_diagram(know, check, case.garment, self.job.facts, seen)
        return drawn(self.job, diagram, tones) if diagram else None

    def _steps(self, ask: NextCheck, check: Check | None) -> QWidget:
        if check is None:
            symptom = self.job.knowledge.symptoms[ask.id]
            return section(Words(self.look, symptom.title, "bold"), Words(self.look, symptom.look, "row"), gap=4)
        rows: list[QWidget] = []
        for number, text in enumerate(check.how, 1):
            row = QWidget()
            line = QHBoxLayout(row)
            line.setContentsMargins(0, 0, 0, 0)
            line.setSpacing(10)
            figure = OneLine(self.look, str(number), "order")
            figure.in_middle = False
            figure.setFixedWidth(self.look.px(1.05))
            line.addWidget(figure, 0, Qt.AlignmentFlag.AlignTop)
            line.addWidget(Words(self.look, text, "row"), 1)
            rows.append(row)
        if check.care:
            rows.append(Words(self.look, tr("Mind: {care}", care=check.care), "small", "care"))
        return section(*rows, gap=7)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the answers."""
        if self._row:
            self._row.focus_first(reason)

    def take_key(self, text: str) -> bool:
        """Y, N, ? or 1 to 3."""
        place = {"y": 0, "n": 1, "?": 2, "1": 0, "2": 1, "3": 2}.get(text.lower())
        if place is None or self._row is None:
            return False
        self._row.answer(place)
        return True
