"""The question in hand: large, with a picture beside it, its answers, and the ways round it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.rack.answers import RackAnswers
from fitdoctor.desk.rack.plates import answer_pictures, question_picture
from fitdoctor.desk.rack.said import asked
from fitdoctor.desk.words import tr
from fitdoctor.rack.question import RackQuestion

PLATES = {3: (212, 226), 2: (160, 170), 1: (0, 0)}
"Pixels, by how many columns the page has; in one the picture gives way to the answers."
ROLES = {3: "rack-question", 2: "page-title", 1: "question"}


class QuestionColumn(QWidget):
    """Emits the answer given, and that one wants back, on, or to note what one sees."""

    answered = Signal(str, str)
    backWanted = Signal()
    skipWanted = Signal()
    seeWanted = Signal()

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._columns, self._low = 3, False
        self._shown: tuple[int, RackQuestion, str] | None = None
        self._remark = Words(look, "", "small", "ink-2", "rack-remark")
        self._question = Rows("rack-question-rows")
        self._how = Words(look, "", "lead", "ink-2", "rack-how-below")
        self.answers = RackAnswers(look)
        self.answers.answered.connect(self.answered.emit)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for gap, part in ((0, self._remark), (6, self._question), (22, self.answers), (10, self._ways())):
            column.addSpacing(gap)
            column.addWidget(part)
        column.addSpacing(6)
        column.addWidget(self._how)

    def _ways(self) -> QWidget:
        ways = QWidget()
        flow = FlowLayout(ways, 28)
        self._back = Link(self.look, tr("Back one question"), "rack-back", "bold", big=True)
        skip = Link(self.look, tr("Skip this one"), "rack-skip", "bold", big=True)
        see = Link(self.look, tr("Note what shows"), "rack-see", "bold", big=True)
        for link, signal in ((self._back, self.backWanted), (skip, self.skipWanted), (see, self.seeWanted)):
            link.clicked.connect(signal.emit)
            flow.addWidget(link)
        return ways

    def fold(self, columns: int, low: bool) -> None:
        """Set the question for a page of so many columns; in a low window smaller, so that the answers stay in sight."""
        before = self._columns, self._low
        self._columns, self._low = columns, low
        if self._shown and before != (columns, low):
            self.show_question(*self._shown)

    def show_question(self, number: int, question: RackQuestion, garment: str) -> None:
        """Ask this."""
        self._shown = (number, question, garment)
        self._remark.say(asked(number, question))
        wide = self._columns > 1
        parts: list[QWidget] = [Words(self.look, question.ask, ROLES[1 if self._low else self._columns], name="rack-question")]
        if wide and question.how:
            parts.append(Words(self.look, question.how, "lead", "ink-2", "rack-how"))
        self._how.say("" if wide else question.how)
        self._question.show_rows([self._beside(section(*parts, gap=12), question, garment)])
        self.answers.show_question(question, answer_pictures(self.job, self.look, question, garment))
        self._back.setVisible(number > 1)

    def _beside(self, words: QWidget, question: RackQuestion, garment: str) -> QWidget:
        """The words, and a picture at their right where there is one."""
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(32)
        line.addWidget(words, 1, Qt.AlignmentFlag.AlignTop)
        size, picture = PLATES[self._columns], question_picture(self.job, self.look, question, garment)
        if picture and size[0]:
            says = tr("Picture: {what}", what=question.ask)
            line.addWidget(SmallPicture(self.look, picture, size, says), 0, Qt.AlignmentFlag.AlignTop)
        return row

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the answers."""
        self.answers.focus_first(reason)
