"""A view that can be enlarged and shifted: Ctrl and the wheel, + - 0, the middle button or the space bar and dragging."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt, QTimer
from PySide6.QtGui import QKeyEvent, QMouseEvent, QResizeEvent, QShowEvent, QWheelEvent
from PySide6.QtWidgets import QFrame, QGraphicsScene, QGraphicsView, QWidget

REST_MS = 60
"Milliseconds of rest after which what is in sight is painted anew."
ZOOM_STEP = 1.25
MOST_ZOOM = 8.0
ZOOM_KEYS = {Qt.Key.Key_Plus: ZOOM_STEP, Qt.Key.Key_Equal: ZOOM_STEP, Qt.Key.Key_Minus: 1 / ZOOM_STEP, Qt.Key.Key_0: 0.0}


class ZoomView(QGraphicsView):
    """Fits its whole content until the user enlarges it; `refresh` is called once movement has come to rest."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.content = QGraphicsScene(self)  # a view does not own its scene
        self.setScene(self.content)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorUnderMouse)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._zoom, self._hand = 1.0, False
        self._drag: QPointF | None = None
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(REST_MS)
        self._rest.timeout.connect(self.refresh)

    def refresh(self) -> None:
        """Paint anew what is in sight; for the heirs."""

    def margins_px(self) -> float:
        """Room kept free at the right and left, in pixels; for the heirs."""
        return 0.0

    def scale_now(self) -> float:
        """Pixels a mm."""
        return self.transform().m11() or 1.0

    def seen(self) -> QRectF:
        """What of the content is in sight, mm."""
        return self.mapToScene(self.viewport().rect()).boundingRect()

    def fit(self) -> None:
        """Show the whole content as large as fits, times the zoom."""
        box = self.content.sceneRect()
        if box.isEmpty() or self.viewport().width() < 2:
            return
        room = max(20.0, self.viewport().width() - self.margins_px())
        scale = min(room / box.width(), self.viewport().height() / box.height()) * self._zoom
        middle = self.seen().center() if self._zoom > 1 else box.center()
        self.resetTransform()
        self.scale(scale, scale)
        self.centerOn(middle)
        self._rest.start()

    def zoom(self, factor: float) -> None:
        """Enlarge or make smaller; 0 shows the whole again."""
        wanted = 1.0 if factor == 0 else min(MOST_ZOOM, max(1.0, self._zoom * factor))
        if wanted == 1.0:
            self._zoom = 1.0
            self.fit()
            return
        self.scale(wanted / self._zoom, wanted / self._zoom)
        self._zoom = wanted
        self._rest.start()

    def zoomed(self) -> float:
        """How far it is enlarged; 1 shows the whole."""
        return self._zoom

    def shift(self, dx: float, dy: float) -> None:
        """Move the content by pixels."""
        across, down = self.horizontalScrollBar(), self.verticalScrollBar()
        across.setValue(across.value() - round(dx))
        down.setValue(down.value() - round(dy))
        self._rest.start()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.fit()
        self.refresh()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(ZOOM_STEP if event.angleDelta().y() > 0 else 1 / ZOOM_STEP)
            event.accept()
        elif self._zoom > 1:
            self.shift(event.angleDelta().x() / 2, event.angleDelta().y() / 2)
            event.accept()
        else:
            event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = Qt.Key(event.key())
        if key in ZOOM_KEYS:
            self.zoom(ZOOM_KEYS[key])
        elif key == Qt.Key.Key_Space:
            self._hold_hand(True)
        else:
            event.ignore()

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._hold_hand(False)
        else:
            event.ignore()

    def _hold_hand(self, held: bool) -> None:
        self._hand = held
        if held:
            self.viewport().setCursor(Qt.CursorShape.OpenHandCursor)
        else:
            self.viewport().unsetCursor()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.MiddleButton or (self._hand and event.button() == Qt.MouseButton.LeftButton):
            self._drag = event.position()
            self.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            return
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._drag is None:
            super().mouseMoveEvent(event)
            return
        moved = event.position() - self._drag
        self._drag = event.position()
        self.shift(moved.x(), moved.y())

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._drag is not None:
            self._drag = None
            self._hold_hand(self._hand)
            return
        super().mouseReleaseEvent(event)

    def dragging(self) -> bool:
        """Whether the content is being shifted by hand."""
        return self._drag is not None or self._hand
