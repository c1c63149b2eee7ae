"""The answers to one question in two columns, or in one where there is no room; ‘Cannot tell’ is always among them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.line_choice import Picture
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.rack.answer_button import RackAnswerButton
from fitdoctor.desk.words import count, tr
from fitdoctor.rack.question import CANNOT_TELL, AnswerChoice, RackQuestion

GAP = 16
MOST, FEW = 8, 5
"So many answers are shown together; of more, the likeliest few at first."
ACROSS_FROM = 13.5
"Em that two answers beside one another need each at least."


class RackAnswers(QWidget):
    """Emits value and words of the answer given."""

    answered = Signal(str, str)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._all = False
        self._question: RackQuestion | None = None
        self._pictures: dict[str, Picture] = {}
        self.buttons: list[RackAnswerButton] = []
        self.group = ControlGroup()
        self._rows = Rows("rack-answers", 12)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._rows)

    def show_question(self, question: RackQuestion, pictures: dict[str, Picture]) -> None:
        """Show the answers to another question."""
        if self._question is None or self._question.mark != question.mark:
            self._all = False
        self._question, self._pictures = question, pictures
        self._show()

    def _show(self) -> None:
        question = self._question
        if question is None:
            return
        shown = _shown(question.answers, self._all)
        cannot = AnswerChoice(CANNOT_TELL, tr("Cannot tell"), tr("It is not asked again."), 0.0)
        self.buttons = [self._button(number, one, question.ask) for number, one in enumerate((*shown, cannot), 1)]
        self.group = ControlGroup(self.buttons)
        rows: list[QWidget] = [_Grid(self.look, self.buttons)]
        more = len(question.answers) - len(_shown(question.answers, False))
        if more:
            words = tr("Show fewer") if self._all else count(more, "Show 1 more", "Show {number} more")
            link = Link(self.look, words, "rack-answers-more", "bold", big=True)
            link.clicked.connect(self._turn)
            rows.append(left(link))
        self._rows.show_rows(rows)

    def _button(self, number: int, one: AnswerChoice, ask: str) -> RackAnswerButton:
        picture = self._pictures.get(one.value)
        button = RackAnswerButton(self.look, number, one.value, one.title, "" if picture else one.look, ask, picture)
        if picture:
            button.setToolTip(one.look)
            button.setAccessibleDescription(f"{ask} {one.look}")
        button.clicked.connect(lambda: self.answered.emit(one.value, one.title))
        return button

    def _turn(self) -> None:
        self._all = not self._all
        self._show()
        self.buttons[FEW if self._all else 0].setFocus(Qt.FocusReason.OtherFocusReason)

    def press(self, number: int) -> bool:
        """Give the answer of a number; whether there is one."""
        there = 0 < number <= len(self.buttons)
        if there:
            self.buttons[number - 1].click()
        return there

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the first answer."""
        if self.buttons:
            self.buttons[0].setFocus(reason)


def _shown(answers: Sequence[AnswerChoice], everything: bool) -> tuple[AnswerChoice, ...]:
    """All the answers, in the order of the entry; of many, the likeliest few."""
    if everything or len(answers) <= MOST:
        return tuple(answers)
    return tuple(sorted(answers, key=lambda one: -one.chance)[:FEW])


class _Grid(QWidget):
    """Two in a row where each has room enough."""

    def __init__(self, look: Look, buttons: Sequence[RackAnswerButton]) -> None:
        super().__init__()
        self.look, self._buttons, self._across = look, buttons, 0
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(GAP)
        self._place(2)

    def _place(self, across: int) -> None:
        if across == self._across:
            return
        self._across = across
        for at, button in enumerate(self._buttons):
            self._grid.addWidget(button, at // across, at % across)
        for column in range(2):
            self._grid.setColumnStretch(column, 1 if column < across else 0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        each = (event.size().width() - GAP) / 2
        least = max([self.look.px(ACROSS_FROM), *(button.minimumSizeHint().width() for button in self._buttons)])
        self._place(2 if each >= least else 1)
