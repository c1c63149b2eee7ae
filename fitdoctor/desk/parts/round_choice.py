"""The round of a single choice, and a row of words to choose one of."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR


def paint_round(painter: QPainter, look: Look, box: QRectF, on: bool) -> None:
    """A circle; filled where chosen."""
    painter.setPen(QPen(look.colour("ink"), HAIR))
    painter.setBrush(look.colour("paper"))
    painter.drawEllipse(box.adjusted(1, 1, -1, -1))
    if on:
        inset = box.width() * 0.26
        painter.setPen(QPen(look.colour("thread"), 0))
        painter.setBrush(look.colour("thread"))
        painter.drawEllipse(box.adjusted(inset, inset, -inset, -inset))


class WordChoice(Control):
    """A few words with a round; chosen it has a thread edge."""

    def __init__(self, look: Look, name: str, value: str, text: str, says: str = "") -> None:
        super().__init__(look, name, says or plain(text))
        self.value, self.words = value, text
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _paragraph(self) -> Paragraph:
        return Paragraph(self.look, self.words, "bold" if self.isChecked() else "row")

    def _widest(self) -> float:
        return max(Paragraph(self.look, self.words, role).natural_width() for role in ("bold", "row"))

    def _indent(self) -> float:
        return self.look.px(1.1) + 18

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return max(self.look.target(), ceil(self._paragraph().height(max(1.0, width - self._indent() - 12)) + 14))

    def sizeHint(self) -> QSize:
        return QSize(ceil(self._widest() + self._indent() + 13), self.look.target())

    def minimumSizeHint(self) -> QSize:
        return QSize(ceil(Paragraph(self.look, self.words, "bold").least_width() + self._indent() + 13), self.look.target())

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        width = CHOSEN if on else HAIR
        painter.setBrush(look.colour("thread-tint" if on else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("thread" if on else "edge"), width))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
        size = look.px(1.1)
        paint_round(painter, look, QRectF(10, (self.height() - size) / 2, size, size), on)
        text, room = self._paragraph(), self.width() - self._indent() - 12
        high = text.height(max(1.0, room))
        text.paint(painter, QRectF(self._indent(), (self.height() - high) / 2, max(1.0, room + 1), high), look.colour("ink"))
        self.paint_ring(painter)
        painter.end()


class ChoiceRow(QWidget):
    """One of several words; emits the question's id and the value."""

    chosen = Signal(str, str)

    def __init__(self, look: Look, question: str, values: Sequence[tuple[str, str]], chosen: str, name: str, asked: str = "") -> None:
        super().__init__()
        self.question = question
        self.setObjectName(name)
        self.choices: list[WordChoice] = []
        flow = FlowLayout(self, 8)
        for value, text in values:
            choice = WordChoice(look, f"{name}-{value}", value, text, f"{asked} {text}".strip())
            choice.setChecked(value == chosen)
            choice.clicked.connect(lambda _on=False, who=choice: self._press(who))
            flow.addWidget(choice)
            self.choices.append(choice)
        self.group = ControlGroup(self.choices, exclusive=True)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _press(self, choice: WordChoice) -> None:
        choice.setChecked(True)
        self.chosen.emit(self.question, choice.value)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the chosen answer, or else the first."""
        chosen = next((choice for choice in self.choices if choice.isChecked()), self.choices[0])
        chosen.setFocus(reason)
