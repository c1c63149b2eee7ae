"""The answers to one question: equal in width and weight, none of them ready-made."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.control import ControlGroup

GAP = 12
_MOST_LINES = 2


class AnswerRow(QWidget):
    """Emits the question's id and the answer's; a second press on the given answer takes it back (an empty answer)."""

    answered = Signal(str, str)

    def __init__(self, look: Look, question: str, answers: Sequence[tuple[str, str]], given: str, name: str) -> None:
        super().__init__()
        self.look, self.question = look, question
        self.setObjectName(name)
        self.buttons: list[Button] = []
        self._row = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(GAP)
        for answer, words in answers:
            button = Button(look, words, f"{name}-{answer}", "answer")
            button.setChecked(answer == given)
            button.clicked.connect(lambda _on=False, said=answer: self._say(said))
            self._row.addWidget(button, 1)
            self.buttons.append(button)
        self._answers = [answer for answer, _ in answers]
        self.group = ControlGroup(self.buttons)

    def _say(self, answer: str) -> None:
        given = self.buttons[self._answers.index(answer)].isChecked()
        self.answered.emit(self.question, answer if given else "")

    def answer(self, place: int) -> None:
        """Give the answer at a place, as its key does."""
        if 0 <= place < len(self.buttons):
            self.buttons[place].click()

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the row."""
        if self.buttons:
            self.buttons[0].setFocus(reason)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        each = (event.size().width() - GAP * (len(self.buttons) - 1)) // max(1, len(self.buttons))
        roomy = all(self._fits(button, each) for button in self.buttons)
        way = QBoxLayout.Direction.LeftToRight if roomy else QBoxLayout.Direction.TopToBottom
        if self._row.direction() != way:
            self._row.setDirection(way)

    def _fits(self, button: Button, width: int) -> bool:
        lines = (button.heightForWidth(width) - 16) / self.look.line("bold")
        return button.minimumSizeHint().width() <= width and lines < _MOST_LINES + 1.5

    def minimumSizeHint(self) -> QSize:
        size = super().minimumSizeHint()
        size.setWidth(max((button.minimumSizeHint().width() for button in self.buttons), default=0))
        return size
