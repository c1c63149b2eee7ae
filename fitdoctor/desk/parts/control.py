"""What everything that can be pressed has: the ring of the keyboard's focus, hovering, and a place in a group."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QRectF, Qt
from PySide6.QtGui import QEnterEvent, QFocusEvent, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import QPushButton, QScrollArea, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.tokens import CORNER, FOCUS

KEYBOARD = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)
_BACK = (Qt.Key.Key_Left, Qt.Key.Key_Up)
_ON = (Qt.Key.Key_Right, Qt.Key.Key_Down)


class Control(QPushButton):
    """Something to press, painted by its heirs. Shows a ring only when the focus came by the keyboard."""

    def __init__(self, look: Look, name: str, says: str = "") -> None:
        super().__init__()
        self.look = look
        self.hovered = self.ringed = False
        self.stop: ControlGroup | None = None
        self.setObjectName(name)
        self.setAccessibleName(says)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def enterEvent(self, event: QEnterEvent) -> None:
        self.hovered = True
        super().enterEvent(event)
        self.update()

    def leaveEvent(self, event: QEvent) -> None:
        self.hovered = False
        super().leaveEvent(event)
        self.update()

    def focusInEvent(self, event: QFocusEvent) -> None:
        self.ringed = event.reason() in KEYBOARD
        super().focusInEvent(event)
        if self.stop:
            self.stop.focused(self)
        if self.ringed:
            bring_into_sight(self)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        self.ringed = False
        super().focusOutEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif self.stop and key in (*_BACK, *_ON):
            self.stop.step(self, -1 if key in _BACK else 1)
        elif key in (*_BACK, *_ON):
            event.ignore()
        else:
            super().keyPressEvent(event)

    def paint_ring(self, painter: QPainter, box: QRectF | None = None) -> None:
        """The ring of the focus, inside the edge, so that it moves nothing."""
        if not (self.ringed and self.hasFocus()):
            return
        ring(painter, self.look, box or QRectF(self.rect()))


def bring_into_sight(widget: QWidget) -> None:
    """Scroll the page so that the widget is seen."""
    above = widget.parentWidget()
    while above is not None and not isinstance(above, QScrollArea):
        above = above.parentWidget()
    if isinstance(above, QScrollArea):
        above.ensureWidgetVisible(widget, 24, 24)


def ring(painter: QPainter, look: Look, box: QRectF) -> None:
    """An ink frame with a line of paper within it, seen on every ground."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for inset, tone, width in ((FOCUS / 2, "ink", FOCUS), (FOCUS + 1, "paper", 2)):
        painter.setPen(QPen(look.colour(tone), width))
        painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), CORNER, CORNER)


def paint_edge(band: QWidget, look: Look, below: bool) -> None:
    """In high contrast all grounds are one: a line parts a band of the window from the page, below it or above."""
    if not look.tokens.high_contrast:
        return
    painter = QPainter(band)
    painter.fillRect(0, band.height() - 2 if below else 0, band.width(), 2, look.colour("edge"))
    painter.end()


class ControlGroup:
    """Several controls that are one stop of the Tab key; arrows go from one to the next."""

    def __init__(self, controls: Sequence[Control] = (), exclusive: bool = False) -> None:
        self.controls: list[Control] = []
        self.exclusive = exclusive
        for control in controls:
            self.add(control)

    def add(self, control: Control) -> None:
        """Take a control into the group."""
        control.stop = self
        self.controls.append(control)
        if self.exclusive:
            control.toggled.connect(lambda on, who=control: self._only(who) if on else None)
        self.rest()

    def rest(self) -> None:
        """Let the Tab key stop at the chosen one, or else the first."""
        at = next((c for c in self.controls if c.isChecked() and c.isEnabled()), None)
        here = at or next((c for c in self.controls if c.isEnabled()), None)
        for control in self.controls:
            control.setFocusPolicy(Qt.FocusPolicy.StrongFocus if control is here else Qt.FocusPolicy.ClickFocus)

    def focused(self, control: Control) -> None:
        """Remember where the focus is, so that the Tab key comes back here."""
        for other in self.controls:
            other.setFocusPolicy(Qt.FocusPolicy.StrongFocus if other is control else Qt.FocusPolicy.ClickFocus)

    def step(self, control: Control, by: int) -> None:
        """Move the focus within the group."""
        able = [c for c in self.controls if c.isEnabled() and not c.isHidden()]
        able[(able.index(control) + by) % len(able)].setFocus(Qt.FocusReason.TabFocusReason)

    def _only(self, chosen: Control) -> None:
        for control in self.controls:
            if control is not chosen and control.isChecked():
                control.setChecked(False)

