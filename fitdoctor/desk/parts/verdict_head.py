"""The verdict: a bar, a sign, its words, one sentence."""

from __future__ import annotations

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.message_bar import SignBox
from fitdoctor.desk.parts.signs import Sign
from fitdoctor.desk.parts.tag import TagState
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import VERDICT_BAR
from fitdoctor.verdict import LEVEL_WORDS, Level

SHOWN: dict[Level, tuple[Sign, str]] = {
    "CAN": ("tick", "good"),
    "CAN_WITHIN_LIMITS": ("care", "care"),
    "NEEDS_CARE": ("care", "care"),
    "CANNOT": ("cross", "stop"),
    "NOT_KNOWN": ("query", "care"),
    "LEAVE_ALONE": ("leave", "ink"),
}
TAGS: dict[Level, TagState] = {
    "CAN": "met",
    "CAN_WITHIN_LIMITS": "limit",
    "NEEDS_CARE": "care",
    "CANNOT": "stops",
    "NOT_KNOWN": "not-known",
    "LEAVE_ALONE": "plain",
}


class VerdictHead(QWidget):
    """Shows one of the six verdicts."""

    def __init__(self, look: Look, name: str) -> None:
        super().__init__()
        self.look, self._tone = look, "ink"
        self.setObjectName(name)
        self._sign = SignBox(look, "query", "care", 1.5)
        self._words = Words(look, "", "verdict", name=f"{name}-words")
        self._sentence = Words(look, "", "body", name=f"{name}-sentence")
        top = QHBoxLayout()
        top.setSpacing(12)
        top.addWidget(self._sign)
        top.addWidget(self._words, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(VERDICT_BAR + 18, 0, 0, 4)
        column.setSpacing(4)
        column.addLayout(top)
        column.addWidget(self._sentence)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def show_verdict(self, level: Level, sentence: str) -> None:
        """Show a verdict and its sentence."""
        self._sign.sign, self._tone = SHOWN[level]
        self._sign.tone = self._tone
        self._words.say(LEVEL_WORDS[level])
        self._sentence.say(sentence)
        self.setProperty("state", level)
        self.setAccessibleName(f"{LEVEL_WORDS[level]}. {sentence}")
        self._sign.update()
        self.update()

    def minimumSizeHint(self) -> QSize:
        return QSize(self.look.px(12), super().minimumSizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(0, 0, VERDICT_BAR, self.height(), self.look.colour(self._tone))
        painter.end()
