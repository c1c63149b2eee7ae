"""Front, back, side: one chosen; a view that was looked over has a dot and says so."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QBoxLayout, QSizePolicy, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import tr

VIEW_WORDS = {"front": "Front", "back": "Back", "side": "Side"}
HIGH = 44


class ViewButton(Control):
    """One view; ink-filled while it is shown."""

    def __init__(self, look: Look, view: str) -> None:
        super().__init__(look, f"shows-view-{view}")
        self.view, self.looked_over = view, False
        self.first = self.level = False
        self.setCheckable(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_looked(self, looked: bool) -> None:
        """Show whether the view was looked over."""
        self.looked_over = looked
        words = tr(VIEW_WORDS[self.view])
        self.setAccessibleName(tr("{view}, looked over", view=words) if looked else words)
        self.update()

    def sizeHint(self) -> QSize:
        wide = self.look.metrics("bold").horizontalAdvance(tr(VIEW_WORDS[self.view]))
        return QSize(ceil(wide + (36 if self.level else 46)), self.look.grown(HIGH))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def clipped(self) -> bool:
        """Whether its word is out of sight."""
        return self.width() < self.look.metrics("bold").horizontalAdvance(tr(VIEW_WORDS[self.view])) + 16

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        look, on = self.look, self.isChecked()
        painter.fillRect(self.rect(), look.colour("ink" if on else "paper-2" if self.hovered else "paper"))
        painter.setPen(QPen(look.colour("ink"), HAIR))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        frame = QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75)
        painter.drawRect(frame if self.first else frame.adjusted(-1.5 if self.level else 0, 0 if self.level else -1.5, 0, 0))
        painter.setFont(look.font("bold" if on else "body"))
        colour = look.colour("paper" if on else "ink")
        painter.setPen(colour)
        dot = 16 if self.looked_over else 0
        words = QRectF(0, 0, self.width() - dot, self.height()) if self.level else QRectF(14, 0, self.width() - 14, self.height())
        where = Qt.AlignmentFlag.AlignCenter if self.level else Qt.AlignmentFlag.AlignVCenter
        painter.drawText(words, int(where), tr(VIEW_WORDS[self.view]))
        if self.looked_over:
            painter.setBrush(colour)
            painter.drawEllipse(QPointF(self.width() - 14, self.height() / 2), 4, 4)
        self.paint_ring(painter)
        painter.end()


class ViewSwitch(QWidget):
    """Emits the view wanted. Upright beside a figure, level above it where room is small."""

    viewWanted = Signal(str)

    def __init__(self, look: Look, views: Sequence[str], level: bool = False) -> None:
        super().__init__()
        self.setObjectName("shows-view")
        self.buttons = [ViewButton(look, view) for view in views]
        self.buttons[0].first = True
        self.group = ControlGroup(self.buttons, exclusive=True)
        way = QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom
        row = QBoxLayout(way, self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        for button in self.buttons:
            button.clicked.connect(lambda _on=False, who=button: self._press(who))
            row.addWidget(button)

    def turn(self, level: bool) -> None:
        """Lay it level or upright."""
        row = self.layout()
        for button in self.buttons:
            button.level = level
        if isinstance(row, QBoxLayout):
            row.setDirection(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom)

    def _press(self, button: ViewButton) -> None:
        button.setChecked(True)
        self.viewWanted.emit(button.view)

    def show_view(self, view: str, looked: Collection[str]) -> None:
        """Show which view is open and which were looked over."""
        for button in self.buttons:
            button.setChecked(button.view == view)
            button.show_looked(button.view in looked)
        self.group.rest()
