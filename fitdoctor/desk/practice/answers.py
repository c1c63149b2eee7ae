"""The answers to an exercise: one to choose, an order to give, or a length to type."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.length_field import LengthField
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.tag import TagState
from fitdoctor.desk.practice.answer_choice import AnswerChoice
from fitdoctor.desk.words import tr
from fitdoctor.practice.exercise import Amount, Choice, Kind, Mark, Order, Question
from fitdoctor.shop import Shop

LETTERS = "ABCDEFGH"
GAP = 10
HERE: dict[Kind, str] = {
    "lines": "the line here",
    "cause": "the cause here",
    "check": "the right one",
    "amount": "the amount",
    "verdict": "so it is",
    "order": "in its place",
    "garment": "the matter here",
}


class Answers(Rows):
    """Emits the answer as it is judged: an id, ids with spaces between, or a length in mm."""

    answered = Signal(str)

    def __init__(self, look: Look) -> None:
        super().__init__("practise-answers", GAP)
        self.look = look
        self.choices: list[AnswerChoice] = []
        self.field: LengthField | None = None
        self._order: list[str] = []
        self._ready: Button | None = None
        self._question: Question | None = None

    def show_question(self, question: Question, shop: Shop) -> None:
        """Ask this."""
        self._question, self._order, self._ready, self.field = question, [], None, None
        self.choices = [
            AnswerChoice(self.look, letter, id_, text) for letter, (id_, text) in zip(LETTERS, _offered(question), strict=False)
        ]
        for choice in self.choices:
            choice.clicked.connect(lambda _on=False, who=choice: self._press(who))
        self.group = ControlGroup(self.choices)
        rows: list[QWidget] = list(self.choices)
        if isinstance(question, Amount):
            rows = [self._typed(shop)]
        if isinstance(question, Order):
            rows.append(left(self._order_button()))
        self.show_rows(rows)

    def _typed(self, shop: Shop) -> QWidget:
        self.field = LengthField(self.look, shop, "practise-amount", tr("The amount"))
        self.field.edit.returnPressed.connect(self._give_length)
        give = Button(self.look, tr("That much"), "practise-give")
        give.clicked.connect(self._give_length)
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(16)
        line.addWidget(self.field)
        line.addWidget(give, 0, Qt.AlignmentFlag.AlignVCenter)
        line.addStretch(1)
        return row

    def _order_button(self) -> Button:
        self._ready = Button(self.look, tr("In this order"), "practise-give")
        self._ready.clicked.connect(lambda: self.answered.emit(" ".join(self._order)))
        return self._ready

    # ---- answering

    def take(self, place: int) -> bool:
        """Press the answer at a place, as its key does; whether there is one."""
        if not 0 <= place < len(self.choices) or self.choices[place].settled:
            return False
        self._press(self.choices[place])
        return True

    def _press(self, choice: AnswerChoice) -> None:
        if isinstance(self._question, Order):
            self._give_place(choice)
        else:
            self.answered.emit(choice.answer)

    def _give_place(self, choice: AnswerChoice) -> None:
        """The next place, or its place taken back with those after it."""
        if choice.answer in self._order:
            self._order = self._order[: self._order.index(choice.answer)]
        else:
            self._order.append(choice.answer)
        for other in self.choices:
            place = self._order.index(other.answer) + 1 if other.answer in self._order else 0
            other.show_tag("yours" if place else None, tr("place {place}", place=place) if place else "")
        if len(self._order) == len(self.choices) and self._ready:
            self._ready.setFocus(Qt.FocusReason.TabFocusReason if choice.ringed else Qt.FocusReason.OtherFocusReason)

    def _give_length(self) -> None:
        if self.field is not None and self.field.mm is not None:
            self.answered.emit(f"{self.field.mm!r} mm")

    # ---- afterwards

    def show_judged(self, question: Question, said: str, mark: Mark) -> None:
        """Show what was right and what was said."""
        if isinstance(question, Choice):
            for choice in self.choices:
                self._show_option(choice, question, said)
        elif isinstance(question, Order):
            given = said.split()
            for choice in self.choices:
                place, right = given.index(choice.answer) + 1, question.order.index(choice.answer) + 1
                word = tr("place {place}", place=right) if place == right else tr("place {right}, not {place}", right=right, place=place)
                choice.show_tag("met" if place == right else "limit", word, settled=True)
        elif self.field is not None:
            self.field.setEnabled(False)
            self.field.setProperty("state", mark)
        for button in self.findChildren(Button, "practise-give"):
            button.hide()

    def _show_option(self, choice: AnswerChoice, question: Choice, said: str) -> None:
        mark, yours = question.option(choice.answer).mark, choice.answer == said
        state: TagState | None = None
        word = ""
        if mark == "right":
            state, word = "met", tr("your answer, right") if yours else tr(HERE[question.kind])
        elif yours:
            state, word = ("limit", tr("your answer, in part")) if mark == "part" else ("given", tr("your answer"))
        choice.show_tag(state, word, settled=True)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first answer, or on the field."""
        if self.field is not None:
            self.field.edit.setFocus(reason)
        elif self.choices:
            self.choices[0].setFocus(reason)


def _offered(question: Question) -> tuple[tuple[str, str], ...]:
    if isinstance(question, Order):
        return question.steps
    return tuple((option.id, option.text) for option in question.options) if isinstance(question, Choice) else ()
