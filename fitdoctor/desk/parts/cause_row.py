"""A cause: its name, bar and word, one sentence; opened it shows what speaks for it, against it, and what was not looked at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.bar import LikelihoodBar
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.message_bar import SignBox
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.signs import Sign
from fitdoctor.desk.parts.text import OneLine, Words
from fitdoctor.desk.words import tr
from fitdoctor.diagnosis.ranking import RULED_OUT, chance_word

_NARROW_EM = 24


@dataclass(frozen=True)
class CauseShown:
    """A cause as it is shown. `chance` None: ruled out. `before`: its chance before the last answer."""

    id: str
    title: str
    word: str
    sentence: str
    chance: float | None
    before: float | None = None
    speaks_for: tuple[str, ...] = ()
    speaks_against: tuple[str, ...] = ()
    not_looked: tuple[str, ...] = ()


def _word_width(look: Look) -> int:
    """Room for the widest of the fixed words, so that all bars stand in one column."""
    words = {chance_word(tenth / 10) for tenth in range(11)} | {RULED_OUT}
    return max(OneLine(look, tr(word), "bold").sizeHint().width() for word in words)


class _Name(Control):
    """The cause's name; a press opens the row."""

    def __init__(self, look: Look, text: str, name: str) -> None:
        super().__init__(look, name, plain(text))
        self.words = text
        self.setCheckable(True)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _paragraph(self) -> Paragraph:
        return Paragraph(self.look, self.words, "bold" if self.isChecked() else "row")

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return round(self._paragraph().height(width)) + 8

    def sizeHint(self) -> QSize:
        return QSize(round(Paragraph(self.look, self.words, "bold").natural_width()) + 2, round(self.look.line("row")) + 8)

    def minimumSizeHint(self) -> QSize:
        return QSize(round(Paragraph(self.look, self.words, "bold").least_width()) + 2, round(self.look.line("row")) + 8)

    def clipped(self) -> bool:
        """Whether some of its words are out of sight."""
        return self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        tone = "thread" if self.hovered else "ink"
        self._paragraph().paint(painter, QRectF(0, 4, self.width(), self.height()), self.look.colour(tone))
        self.paint_ring(painter)
        painter.end()


class CauseRow(QWidget):
    """Emits that it was pressed; the page opens one row at a time. `more` stands below the three columns."""

    pressed = Signal(str)

    def __init__(self, look: Look, cause: CauseShown, opened: bool, more: Sequence[QWidget], name: str) -> None:
        super().__init__()
        self.look, self.cause = look, cause
        self.setObjectName(name)
        self.name = _Name(look, cause.title, f"{name}-name")
        self.name.setChecked(opened)
        self.name.setAccessibleName(tr("{title}, {word}, {state}", title=cause.title, word=cause.word, state=self._state(opened)))
        self.name.clicked.connect(lambda: self.pressed.emit(cause.id))
        bar = LikelihoodBar(look, cause.chance, cause.word, f"{name}-bar", cause.before)
        word = OneLine(look, cause.word, "bold", name=f"{name}-word")
        word.setFixedWidth(_word_width(look))
        self._measure = QWidget()
        scale = QHBoxLayout(self._measure)
        scale.setContentsMargins(0, 4, 0, 0)
        scale.setSpacing(14)
        scale.addWidget(bar, 0, Qt.AlignmentFlag.AlignVCenter)
        scale.addWidget(word)
        self._top = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._top.setSpacing(14)
        self._top.addWidget(self.name, 1)
        self._top.addWidget(self._measure, 0, Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 6, 0, 8)
        column.setSpacing(0)
        column.addLayout(self._top)
        column.addWidget(Words(look, cause.sentence, "small", "ink-2"))
        if opened:
            column.addSpacing(10)
            column.addWidget(_ForAndAgainst(look, cause))
            for widget in more:
                column.addSpacing(8)
                column.addWidget(widget)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def _state(self, opened: bool) -> str:
        return tr("open") if opened else tr("press to see why")

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(_NARROW_EM)
        self._top.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._top.setSpacing(14 if level else 2)


class _ForAndAgainst(QWidget):
    """Three columns; one under another where room is small."""

    def __init__(self, look: Look, cause: CauseShown) -> None:
        super().__init__()
        self.look = look
        self._columns = QBoxLayout(QBoxLayout.Direction.LeftToRight, self)
        self._columns.setContentsMargins(0, 0, 0, 0)
        self._columns.setSpacing(20)
        parts: tuple[tuple[Sign, str, tuple[str, ...], str], ...] = (
            ("plus", tr("Speaks for"), cause.speaks_for, tr("Nothing yet.")),
            ("minus", tr("Speaks against"), cause.speaks_against, tr("Nothing yet.")),
            ("query", tr("Not looked at"), cause.not_looked, tr("Nothing left.")),
        )
        for sign, title, items, nothing in parts:
            self._columns.addWidget(self._column(sign, title, items or (nothing,)), 1, Qt.AlignmentFlag.AlignTop)

    def _column(self, sign: Sign, title: str, items: Sequence[str]) -> QWidget:
        holder = QWidget()
        column = QVBoxLayout(holder)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(3)
        head = QHBoxLayout()
        head.setSpacing(7)
        head.addWidget(SignBox(self.look, sign, "ink", 0.78))
        head.addWidget(OneLine(self.look, title, "bold"), 1)
        column.addLayout(head)
        for item in items:
            column.addWidget(Words(self.look, item, "small"))
        return holder

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        level = event.size().width() > self.look.px(28)
        self._columns.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)
        self._columns.setSpacing(20 if level else 10)
