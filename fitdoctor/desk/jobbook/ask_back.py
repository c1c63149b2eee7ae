"""The one thing that is asked back, in place and not in a box: whether something is to be deleted for good."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr


class AskBack(Rows):
    """Emits that it is meant. The focus comes to the harmless answer."""

    meant = Signal()

    def __init__(self, look: Look) -> None:
        super().__init__("jobs-ask-back", 12)
        self.look = look

    def ask(self, question: str) -> None:
        """Ask; the answer takes the question away."""
        keep, gone = (
            Button(self.look, tr("Keep it"), "jobs-ask-back-keep"),
            Button(self.look, tr("Delete for good"), "jobs-ask-back-delete"),
        )
        keep.clicked.connect(self.drop)
        gone.clicked.connect(self._mean)
        answers = QWidget()
        flow = FlowLayout(answers, 12)
        flow.addWidget(keep)
        flow.addWidget(gone)
        self.show_rows([Words(self.look, question, "body", "stop", "jobs-ask-back-words"), answers])
        keep.setFocus(Qt.FocusReason.TabFocusReason)

    def drop(self) -> None:
        """Take the question away."""
        self.show_rows([])

    def _mean(self) -> None:
        self.drop()
        self.meant.emit()
