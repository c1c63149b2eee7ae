"""What is being done and how far, in a bar above the foot, with a button that stops it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import MARGIN, THREAD_LINE
from fitdoctor.desk.words import tr


class WorkBar(QWidget):
    """A sentence, and a line of thread along the upper edge that grows with the work."""

    stopWanted = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self._says, self._share = "", 0.0
        self.setObjectName("work")
        self.words = Words(look, "", "body", name="work-words")
        self.stop = Button(look, tr("Stop"), "work-stop")
        self.stop.clicked.connect(self.stopWanted.emit)
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        row.setSpacing(16)
        row.addWidget(self.words, 1, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.stop, 0, Qt.AlignmentFlag.AlignVCenter)
        self.hide()

    def show_work(self, says: str, done: int, of: int) -> None:
        """Show what is being done; of = 0 where it cannot be counted."""
        self._says = says
        self.stop.setEnabled(True)
        self.show_far(done, of)
        self.show()

    def show_far(self, done: int, of: int) -> None:
        """Show how far it is."""
        self._share = done / of if of else 0.0
        far = tr("{what}: {done} of {all}.", what=self._says, done=done, all=of) if of else f"{self._says}."
        self.words.say(far)
        self.setAccessibleName(far)
        self.stop.setAccessibleName(tr("Stop: {what}", what=self._says))
        self.update()

    def show_stopping(self) -> None:
        """Say that it ends after the piece in hand."""
        self.stop.setEnabled(False)
        self.words.say(tr("{what}: stopping.", what=self._says))

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.look.colour("table"))
        painter.fillRect(0, 0, self.width(), 1, self.look.colour("edge"))
        painter.fillRect(0, 0, round(self.width() * self._share), round(THREAD_LINE), self.look.colour("thread"))
        painter.end()
