"""The map in its frame: larger and smaller, shifted by hand, or folded to a list."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.file_line import FileLine
from fitdoctor.desk.handbook.map_sheet import MapSheet
from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import bring_into_sight
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr
from fitdoctor.desk.zoom_view import ZOOM_KEYS, ZOOM_STEP

if TYPE_CHECKING:
    from fitdoctor.knowledge.graph import EntryMap

LEAST_ZOOM, MOST_ZOOM = 0.64, 2.45


class MapPane(QWidget):
    """Emits the entry wanted; the one the map is drawn round means its page."""

    wanted = Signal(object)

    def __init__(self, look: Look) -> None:
        super().__init__()
        self.look, self._zoom = look, 1.0
        self._found: EntryMap | None = None
        self._drag: QPoint | None = None
        self.setObjectName("look-up-map-pane")
        self.sheet = MapSheet()
        self.sheet.wanted.connect(self.wanted.emit)
        self.sheet.installEventFilter(self)
        self.frame = QScrollArea()
        self.frame.setObjectName("look-up-map-scroll")
        self.frame.setFrameShape(QFrame.Shape.NoFrame)
        self.frame.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.frame.setWidget(self.sheet)
        self.frame.viewport().setAutoFillBackground(False)
        self.sheet.setAutoFillBackground(False)
        self.file = FileLine(look, "look-up-map-file")
        self._lay_out()

    def _lay_out(self) -> None:
        hint = tr("Arrows and Enter walk; Enter on the entry itself opens its page.")
        self._hint = Words(self.look, hint, "small", "ink-2", "look-up-map-hint")
        self._hint.in_middle = True
        self._fold = self._link("", "look-up-map-fold", self._turn)
        row = QHBoxLayout()
        row.setSpacing(16)
        row.addWidget(self._hint, 1)
        row.addWidget(self._link(tr("Larger"), "look-up-map-larger", lambda: self.zoom(ZOOM_STEP)))
        row.addWidget(self._link(tr("Smaller"), "look-up-map-smaller", lambda: self.zoom(1 / ZOOM_STEP)))
        row.addWidget(self._fold)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 12)
        whole.setSpacing(10)
        whole.addLayout(row)
        whole.addWidget(self.frame, 1)
        whole.addWidget(self.file)
        self._say()

    def _link(self, text: str, name: str, act: Callable[[], None]) -> Link:
        link = Link(self.look, text, name)
        link.clicked.connect(lambda _on=False: act())
        return link

    def show_map(self, found: EntryMap) -> None:
        """Show a map; the focus stays on the map if it was there."""
        focus = self.window().focusWidget()
        here = focus is not None and self.sheet.isAncestorOf(focus)
        self._found = found
        self._show()
        if here:
            self.focus_current()

    def focus_current(self) -> None:
        """Put the focus on the entry the map is drawn round."""
        self.sheet.current().setFocus(Qt.FocusReason.TabFocusReason)

    def fold(self, as_list: bool) -> None:
        """Fold the map to a list, or unfold it."""
        self.sheet.as_list = as_list
        self._say()
        self._lay()

    def zoom(self, factor: float) -> None:
        """Enlarge or make smaller; 0 goes back to the size of the text."""
        self._zoom = 1.0 if factor == 0 else min(MOST_ZOOM, max(LEAST_ZOOM, self._zoom * factor))
        ringed = self.sheet.isAncestorOf(self.window().focusWidget() or self)
        if self._found:
            self._show()
            if ringed:
                self.focus_current()

    def _show(self) -> None:
        if self._found:
            dark = self.look.tokens.name == "dark"
            self.sheet.show_map(look_of(dark, round(self.look.percent * self._zoom), self.look.faces), self._found)
            self._lay()

    def _lay(self) -> None:
        bar = self.frame.verticalScrollBar().sizeHint().width()  # room kept for it, so that its coming pushes nothing aside
        self.sheet.lay(self.frame.width() - bar, self.frame.height())
        if self.sheet.nodes:
            bring_into_sight(self.sheet.current())

    def _turn(self) -> None:
        self.fold(not self.sheet.as_list)

    def _say(self) -> None:
        self._fold.say(tr("As a map") if self.sheet.as_list else tr("As a list"))

    # ---- keys and the hand

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._lay()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in ZOOM_KEYS and not event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(ZOOM_KEYS[key])
        else:
            super().keyPressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(ZOOM_STEP if event.angleDelta().y() > 0 else 1 / ZOOM_STEP)
        else:
            super().wheelEvent(event)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The bare sheet is shifted by hand."""
        if isinstance(event, QMouseEvent):
            at = event.globalPosition().toPoint()
            if event.type() == QEvent.Type.MouseButtonPress:
                self._drag = at
                self.sheet.setCursor(Qt.CursorShape.ClosedHandCursor)
            elif event.type() == QEvent.Type.MouseMove and self._drag is not None:
                self._shift(self._drag - at)
                self._drag = at
            elif event.type() == QEvent.Type.MouseButtonRelease:
                self._drag = None
                self.sheet.unsetCursor()
        return super().eventFilter(watched, event)

    def _shift(self, by: QPoint) -> None:
        for bar, pixels in ((self.frame.horizontalScrollBar(), by.x()), (self.frame.verticalScrollBar(), by.y())):
            bar.setValue(bar.value() + pixels)
