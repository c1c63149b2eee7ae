"""The foot: one page back, where the case is kept, one page on. The next step is named on the button."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.control import paint_edge
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import MARGIN
from fitdoctor.desk.words import tr

HIGH = 60
_ROOMY_EM = 48


class PageFoot(QWidget):
    """Emits back and on; a summary that left the page in a narrow window comes here as a button."""

    back = Signal()
    on = Signal()
    undo = Signal()
    summary = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look = look
        self.setObjectName("foot")
        self.setAutoFillBackground(True)
        self.setFixedHeight(max(HIGH, look.target() + 16))
        self._back = Link(look, "", "foot-back", "bold", big=True)
        self._summary = Button(look, "", "foot-summary")
        self._summary.hide()
        self._kept = Words(look, "", "small", "ink-2", "foot-kept")
        self._kept.align = Qt.AlignmentFlag.AlignHCenter
        self._undo = Link(look, tr("Undo"), "foot-undo", "small")
        self._undo.hide()
        self._on = Button(look, "", "foot-on", "go")
        self._back.clicked.connect(self.back.emit)
        self._summary.clicked.connect(self.summary.emit)
        self._undo.clicked.connect(self.undo.emit)
        self._on.clicked.connect(self.on.emit)
        row = QHBoxLayout(self)
        row.setContentsMargins(MARGIN, 8, MARGIN, 8)
        row.setSpacing(16)
        middle = QWidget()  # keeps its room when there is nothing to say
        words = QHBoxLayout(middle)
        words.setContentsMargins(0, 0, 0, 0)
        words.addWidget(self._kept, 1, Qt.AlignmentFlag.AlignVCenter)
        for widget, stretch in ((self._back, 0), (self._summary, 0), (middle, 1), (self._undo, 0), (self._on, 0)):
            row.addWidget(widget, stretch, Qt.AlignmentFlag.AlignVCenter)

    def show_turns(self, back: str, on: str) -> None:
        """Name the page before and the page after; an empty name takes the button away."""
        self._back.say(f"‹ {back}" if back else "")
        self._on.setVisible(bool(on))
        self._on.say(f"{on} ›" if on else "")

    def show_kept(self, text: str, undoable: bool = False) -> None:
        """Say where the case is kept, or what was just done and can be undone."""
        self._kept.say(text)
        self._undo.setVisible(undoable)

    def show_summary(self, text: str) -> None:
        """A button for what left the page; no text takes it away."""
        self._summary.say(text)
        self._summary.setVisible(bool(text))
        self.refold()

    def refold(self) -> None:
        """In a narrow window the summary takes the place of the way back, and where the case is kept is left out."""
        roomy = self.width() > self.look.px(_ROOMY_EM)
        self._back.setVisible(bool(self._back.words) and (roomy or not self._summary.words))
        self._kept.setVisible(bool(self._kept.said()) and (roomy or self._undo.isVisibleTo(self)))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.refold()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        paint_edge(self, self.look, below=False)
