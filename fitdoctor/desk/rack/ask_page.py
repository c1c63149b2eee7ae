"""A garment at the rack: the question in hand or the answer at the left, how it stands at the right."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Page, ScrollColumn
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import emptied
from fitdoctor.desk.parts.text import Rule, Words
from fitdoctor.desk.rack.hand import RackHand
from fitdoctor.desk.rack.question_column import QuestionColumn
from fitdoctor.desk.rack.said import told_said
from fitdoctor.desk.rack.standing import Standing
from fitdoctor.desk.rack.verdict import VerdictColumn
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import count, tr

GUTTER, INSIDE = 44, 36
"Pixels before the rule between the columns, and after it."
LOW = 34.0
"Em of height below which a question is set smaller."
RIGHT = {3: 336, 2: 268}
"Pixels of the right column, by how many columns the page has."


class AskPage(Page):
    """Emits that the garment is to be fitted, kept, compared, and that one wants to note what shows."""

    step = "rack-ask"
    fitWanted = Signal()
    keepWanted = Signal()
    seeWanted = Signal()

    def __init__(self, look: Look, hand: RackHand) -> None:
        super().__init__(look, hand.job)
        self.hand = hand
        self._title = Words(look, "", "row", name="rack-garment")
        self._links = QWidget()
        self._new = Link(look, tr("Another garment"), "rack-another")
        self._compare = Link(look, "", "rack-compare")
        self._keep = Link(look, tr("Keep in the job book"), "rack-keep")
        flow = FlowLayout(self._links, 16)
        for link in (self._new, self._compare, self._keep):
            flow.addWidget(link)
        self._new.clicked.connect(hand.describe_new)
        self._compare.clicked.connect(lambda: hand.show("compare"))
        self._keep.clicked.connect(self.keepWanted.emit)
        self.question = QuestionColumn(look, hand.job)
        self.verdict = VerdictColumn(look, hand)
        self.standing = Standing(look, hand)
        self._working = Words(look, tr("Working it out."), "lead", "ink-2", "rack-working")
        self._listen()
        self._lay_out()

    def _listen(self) -> None:
        hand = self.hand
        self.question.answered.connect(self._answer)
        self.question.skipWanted.connect(hand.skip)
        for column in (self.question, self.verdict):
            column.backWanted.connect(hand.back)
            column.seeWanted.connect(self.seeWanted.emit)
        self.verdict.newWanted.connect(hand.describe_new)
        self.verdict.fitWanted.connect(self.fitWanted.emit)
        self.verdict.everythingWanted.connect(hand.ask_everything)
        self.standing.pricesWanted.connect(hand.describe_again)
        self.standing.takenBack.connect(hand.take_back)

    def _lay_out(self) -> None:
        top = QWidget()
        line = QHBoxLayout(top)
        line.setContentsMargins(0, 4, 0, 10)
        line.setSpacing(24)
        on_line = QVBoxLayout()
        on_line.setContentsMargins(0, 0, 0, 2)  # on one line with the words of the links
        on_line.addWidget(self._title, 0, Qt.AlignmentFlag.AlignBottom)
        line.addLayout(on_line, 1)
        line.addWidget(self._links, 0, Qt.AlignmentFlag.AlignBottom)
        self._left = QWidget()
        stack = QVBoxLayout(self._left)
        stack.setContentsMargins(0, 0, 0, 0)
        for part in (self._working, self.question, self.verdict):
            stack.addWidget(part)
        stack.addStretch(1)
        self._split = _Split(self.look)
        self._scroll = ScrollColumn("rack-ask-scroll")
        self._scroll.column.addWidget(top)
        self._scroll.column.addWidget(Rule(self.look))
        self._scroll.column.addSpacing(20)
        self._scroll.column.addWidget(self._split)
        self._scroll.column.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.addWidget(self._scroll)

    def arrange(self, columns: int) -> None:
        self.question.fold(columns, self._is_low())
        self._split.lay(self._left, self.standing, RIGHT.get(columns, 0))
        if not self.verdict.isHidden():
            self.show_job()

    def _is_low(self) -> bool:
        return self.height() < self.look.px(LOW)

    def fold(self, width: int) -> None:
        super().fold(width)
        self.question.fold(max(1, self.columns), self._is_low())

    # ---- showing

    def show_job(self) -> None:
        garment, answer, question = self.hand.garment, self.hand.answer(), self.hand.question()
        if garment is None:
            return
        price, hurry = self.hand.money.say(garment.price), tr("in a hurry") if garment.hurry else ""
        self._title.say(f"**{self.hand.title_of(garment)}, {price}** {hurry}".strip())
        others = len(self.hand.list.garments)
        self._compare.say(count(others, "", "Compare {number} garments") if others > 1 else "")
        self._working.setVisible(answer is None and self.question.isHidden() and self.verdict.isHidden())
        if answer is None:
            return
        self.question.setVisible(question is not None)
        self.verdict.setVisible(question is None)
        self.standing.show_answer(answer, garment.told, question is not None)
        if question is not None:
            self.question.show_question(len(garment.told) + 1, question, garment.garment)
        else:
            self.verdict.show_answer(answer, max(1, self.columns))
            self.verdict.show_back(bool(garment.told))

    def say_working(self) -> None:
        """Say that it takes a moment."""
        self._working.show()

    def forget(self) -> None:
        """Another garment comes: what is shown is not about it."""
        self.question.hide()
        self.verdict.hide()

    def _answer(self, value: str, title: str) -> None:
        question = self.hand.question()
        if question is not None and not self.hand.thinker.busy:
            self.hand.tell(value, told_said(self.hand.knowledge, question, title))

    # ---- keys and focus

    def take_key(self, text: str) -> bool:
        if self.question.isHidden():
            return False
        if text == "?":
            return self.question.answers.press(len(self.question.answers.buttons))
        return text.isdigit() and self.question.answers.press(int(text))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        self._scroll.verticalScrollBar().setValue(0)
        (self.verdict if self.question.isHidden() else self.question).focus_first(reason)


class _Split(QWidget):
    """Two columns with a rule between, or the second below the first."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._line = QHBoxLayout()
        self._below = QVBoxLayout()
        self._whole = QVBoxLayout(self)
        self._whole.setContentsMargins(0, 0, 0, 0)
        self._whole.setSpacing(24)
        self._whole.addLayout(self._line)
        self._whole.addLayout(self._below)
        self._right: QWidget | None = None

    def lay(self, first: QWidget, second: QWidget, right: int) -> None:
        """The second at the right, so many pixels wide with its gutter; 0: below."""
        emptied(self._line)
        emptied(self._below)
        self._line.setSpacing(GUTTER + INSIDE)
        self._line.addWidget(first, 1)
        self._right = second if right else None
        if right:
            second.setFixedWidth(right)
            self._line.addWidget(second, 0)
        else:
            second.setMinimumWidth(0)
            second.setMaximumWidth(16777215)
            self._below.addWidget(second)

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._right is None:
            return
        painter = QPainter(self)
        painter.setPen(QPen(self.look.colour("rule"), HAIR))
        x = self._right.x() - INSIDE
        painter.drawLine(x, 0, x, self.height())
        painter.end()
