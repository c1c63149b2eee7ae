"""What is said after an answer, beside a bar; and below, what speaks for and against, and who says so."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import VERDICT_BAR
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.exercise import Feedback
from fitdoctor.reason import Reason

_INDENT = 24


class FeedbackNote(QWidget):
    """Emits that both are to be shown side by side, and the handbook page wanted."""

    bothWanted = Signal()
    pageWanted = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._tone = "good"
        self.setObjectName("practise-feedback")
        self._headline = Words(look, "", "section-title", name="practise-headline")
        self._told = Rows("practise-told", 8)
        self._links = QWidget()
        self.both = Link(look, tr("See both side by side"), "practise-both", "body")
        self.page = Link(look, tr("Handbook page"), "practise-page", "body")
        flow = FlowLayout(self._links, 18)
        flow.addWidget(self.both)
        flow.addWidget(self.page)
        self.both.clicked.connect(self.bothWanted.emit)
        self.page.clicked.connect(lambda: self.pageWanted.emit(self._entry))
        self._entry: tuple[str, str] = ("", "")
        column = QVBoxLayout(self)
        column.setContentsMargins(_INDENT, 2, 0, 2)
        column.setSpacing(8)
        for part in (self._headline, self._told, self._links):
            column.addWidget(part)

    def show_feedback(self, feedback: Feedback, both: bool) -> None:
        """Say what there is to say; `both` where two can be shown side by side."""
        self._tone = "good" if feedback.mark == "right" else "care"
        self._entry = feedback.entry
        self._headline.say(feedback.headline)
        self._told.show_rows(Words(self.look, text, "row") for text in feedback.told.text)
        self.both.setVisible(both)
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        painter = QPainter(self)
        painter.fillRect(QRectF(0, 0, VERDICT_BAR, self.height()), self.look.colour(self._tone))
        painter.end()


class Details(Rows):
    """What speaks for an answer and against it, and who says so."""

    def __init__(self, look: Look, knowledge: Knowledge) -> None:
        super().__init__("practise-details", 4)
        self.look, self.knowledge = look, knowledge

    def show_feedback(self, feedback: Feedback) -> None:
        """Show what stands behind what was said."""
        self.show_rows(self._lines(feedback))

    def _lines(self, feedback: Feedback) -> Iterator[QWidget]:
        told = feedback.told
        yield from self._reasoned(tr("Speaks for your answer"), told.speaks_for, told.text)
        yield from self._reasoned(tr("Speaks against it"), told.speaks_against, told.text)
        lines = [self.knowledge.source_line(source) for source in feedback.sources]
        if lines:
            yield Words(self.look, tr("Who says so: {sources}.", sources="; ".join(lines)), "small", "ink-2", "practise-sources")

    def _reasoned(self, head: str, reasons: Sequence[Reason], said: Sequence[str]) -> Iterator[QWidget]:
        texts = [reason.text for reason in reasons if reason.text not in said]
        if texts:
            yield Words(self.look, f"**{head}:** {' '.join(texts)}", "small")
