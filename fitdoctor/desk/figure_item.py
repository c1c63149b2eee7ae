"""The painted figure in a view: one picture of what is in sight, painted anew once zooming or resizing has come to rest."""

from __future__ import annotations

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.pictures import Pictures
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.reach import Box
from fitdoctor.figure.shapes import Shape


class FigureItem(QGraphicsItem):
    """Holds the scene and its picture; between two paintings the old picture is stretched."""

    def __init__(self, pictures: Pictures, tones: FigureTones) -> None:
        super().__init__()
        self.pictures, self.tones = pictures, tones
        self.scene_shown: Scene | None = None
        self.overlay: tuple[Shape, ...] = ()
        self._image: QImage | None = None
        self._box = QRectF()
        self._whole = QRectF()
        self.setAcceptedMouseButtons(Qt.MouseButton.NoButton)

    def show_scene(self, scene: Scene | None, overlay: tuple[Shape, ...] = ()) -> None:
        """Take a new scene; it is seen after the next `refresh`."""
        self.prepareGeometryChange()
        self.scene_shown, self.overlay = scene, overlay
        self._whole = QRectF(*scene.figure.box) if scene else QRectF()

    def refresh(self, seen: QRectF, scale: float, dpr: float) -> None:
        """Paint the part in sight (mm) at so many pixels a mm."""
        box = seen.intersected(self._whole)
        if self.scene_shown is None or box.isEmpty():
            self._image = None
            self.update()
            return
        size = (max(1, round(box.width() * scale)), max(1, round(box.height() * scale)))
        crop: Box = (box.x(), box.y(), box.width(), box.height())
        self._image = self.pictures.picture(self.scene_shown, size, dpr, self.tones, crop, self.overlay)
        self._box = box
        self.update()

    def boundingRect(self) -> QRectF:
        return self._whole

    def paint(self, painter: QPainter, _option: QStyleOptionGraphicsItem, _widget: QWidget | None = None) -> None:
        if self._image is not None:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(self._box, self._image)
