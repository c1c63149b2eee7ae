"""One answer to an exercise: its letter, its words, and after it was judged what it was worth."""

from __future__ import annotations

from math import ceil

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control
from fitdoctor.desk.parts.setting import Paragraph, plain
from fitdoctor.desk.parts.tag import TagState, paint_tag, state_tag_size
from fitdoctor.desk.tokens import CHOSEN, CORNER, HAIR
from fitdoctor.desk.words import tr

LEAST = 54
PAD = 14
_LETTER, _ROOM = 1.9, 13.0
"In em: room of the letter; least room of the words beside a tag."


class AnswerChoice(Control):
    """Emits its click. A tag says its place in an order, or what it was worth; the edge says the same."""

    def __init__(self, look: Look, letter: str, answer: str, text: str) -> None:
        super().__init__(look, f"practise-answer-{letter.lower()}")
        self.letter, self.answer, self.words = letter, answer, text
        self.tag: TagState | None = None
        self.tag_word = ""
        self.settled = False
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.show_tag(None)

    def show_tag(self, state: TagState | None, word: str = "", settled: bool = False) -> None:
        """Show a tag, or none; once settled it is no more to be pressed."""
        self.tag, self.tag_word, self.settled = state, word, settled
        self.setProperty("state", state or "")
        self.setEnabled(not settled)
        said = tr("{letter}. {answer}", letter=self.letter, answer=plain(self.words))
        self.setAccessibleName(f"{said}: {word}" if word else said)
        self.updateGeometry()
        self.update()

    def _paragraph(self) -> Paragraph:
        return Paragraph(self.look, self.words, "bold" if self.tag else "row")

    def _tag_size(self) -> QSize:
        return state_tag_size(self.look, self.tag, self.tag_word) if self.tag else QSize(0, 0)

    def _indent(self) -> float:
        return PAD + self.look.em * _LETTER

    def _beside(self, width: int) -> bool:
        """Whether the tag has room beside the words."""
        return width - self._indent() - 2 * PAD - self._tag_size().width() >= self.look.em * _ROOM

    def _room(self, width: int) -> float:
        tag = self._tag_size().width() + PAD if self.tag and self._beside(width) else 0
        return max(1.0, width - self._indent() - PAD - tag)

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        below = self._tag_size().height() + 4 if self.tag and not self._beside(width) else 0
        return max(self.look.grown(LEAST), ceil(self._paragraph().height(self._room(width)) + below + 22))

    def sizeHint(self) -> QSize:
        return QSize(self.look.px(20), self.heightForWidth(self.look.px(28)))

    def minimumSizeHint(self) -> QSize:
        words = max(self._paragraph().least_width(), float(self._tag_size().width()))
        return QSize(ceil(self._indent() + words + PAD + 1), self.look.grown(LEAST))

    def clipped(self) -> bool:
        """Whether some of the words are out of sight."""
        return self.width() < self.minimumSizeHint().width() or self.height() < self.heightForWidth(self.width())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self._paint_frame(painter)
        room = self._room(self.width())
        text = self._paragraph()
        high = text.height(room)
        tag, beside = self._tag_size(), self._beside(self.width())
        top = (self.height() - high - (0 if beside or not self.tag else tag.height() + 4)) / 2
        letter = Paragraph(self.look, self.letter, "order")
        letter.paint(painter, QRectF(PAD, top, self.look.em * _LETTER, high), self.look.colour("ink-2"))
        text.paint(painter, QRectF(self._indent(), top, room, high), self.look.colour("ink"))
        if self.tag and beside:
            box = QRectF(self.width() - PAD - tag.width(), (self.height() - tag.height()) / 2, tag.width(), tag.height())
            paint_tag(painter, self.look, box, self.tag, self.tag_word)
        elif self.tag:
            paint_tag(painter, self.look, QRectF(self._indent(), top + high + 4, tag.width(), tag.height()), self.tag, self.tag_word)
        self.paint_ring(painter)
        painter.end()

    def _paint_frame(self, painter: QPainter) -> None:
        tones: dict[TagState, str] = {"met": "good", "yours": "thread", "limit": "care"}
        edge = tones.get(self.tag, "ink") if self.tag else "edge"
        width = CHOSEN if self.tag else HAIR
        hot = self.hovered and self.isEnabled()
        painter.setBrush(self.look.colour("thread-tint" if self.tag == "yours" else "paper-2" if hot or self.isDown() else "paper"))
        painter.setPen(QPen(self.look.colour(edge), width))
        painter.drawRoundedRect(QRectF(self.rect()).adjusted(width / 2, width / 2, -width / 2, -width / 2), CORNER, CORNER)
