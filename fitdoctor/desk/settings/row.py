"""One setting: its name, what sets it, and a remark; a sentence in its place where what was typed cannot be used."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.text import Words


class SettingRow(QWidget):
    """Names are bold above what sets them."""

    def __init__(self, look: Look, name: str, title: str, controls: Sequence[QWidget], remark: str = "") -> None:
        super().__init__()
        self.setObjectName(name)
        self._remark = remark
        self.title = Words(look, title, "bold")
        self.note = Words(look, "", "small", "ink-2", f"{name}-note")
        holder = QWidget()
        flow = FlowLayout(holder, 12)
        for control in controls:
            flow.addWidget(control)
        policy = holder.sizePolicy()
        policy.setHeightForWidth(True)
        holder.setSizePolicy(policy)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        for widget in (self.title, holder, self.note):
            column.addWidget(widget, 0, Qt.AlignmentFlag.AlignTop)
        self.note.say(remark)

    def say(self, remark: str) -> None:
        """Change the remark."""
        self._remark = remark
        self.show_wrong("")

    def show_wrong(self, wrong: str) -> None:
        """Say why what was typed cannot be used; nothing brings the remark back."""
        self.note.tone = "stop" if wrong else "ink-2"
        self.note.say(wrong or self._remark)
