"""Pictures of figures, kept once painted: thumbnails and plates."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable, Mapping, Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QImage, QPainter

from fitdoctor.desk.painter import FigureTones, paint
from fitdoctor.figure.choose import figure_of, symptom_drawing
from fitdoctor.figure.compose import Scene, compose
from fitdoctor.figure.reach import Box, fitted, framed
from fitdoctor.figure.shapes import Shape
from fitdoctor.knowledge.entries import Figure, Symptom
from fitdoctor.knowledge.knowledge import Knowledge

KEPT_BYTES = 96 * 1024 * 1024


class Pictures:
    """Paints scenes into images and keeps them by scene, part shown, size, pixel ratio and theme."""

    def __init__(self, figures: Mapping[str, Figure]) -> None:
        self.figures = figures
        self._kept: OrderedDict[Hashable, QImage] = OrderedDict()
        self._bytes = 0

    def picture(
        self,
        scene: Scene,
        size: tuple[int, int],
        dpr: float,
        tones: FigureTones,
        crop: Box | None = None,
        overlay: tuple[Shape, ...] = (),
    ) -> QImage:
        """The scene in `size` logical pixels; `crop` is the part of the figure shown, grown to the picture's ratio."""
        key = (scene.key(), size, dpr, tones.name, crop, overlay)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]
        image = self._paint(scene, size, dpr, tones, crop, overlay)
        self._keep(key, image)
        return image

    def _paint(
        self, scene: Scene, size: tuple[int, int], dpr: float, tones: FigureTones, crop: Box | None, overlay: tuple[Shape, ...]
    ) -> QImage:
        wide, high = max(1, round(size[0] * dpr)), max(1, round(size[1] * dpr))
        # Sixteen bits a channel: in eight, the thin layers of a soft edge round to tinted steps.
        image = QImage(wide, high, QImage.Format.Format_RGBA64_Premultiplied)
        image.fill(tones.colour("bg"))
        painter = QPainter(image)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        box = fitted(crop or scene.figure.box, wide / high)
        paint_scene(painter, (*compose(scene, self.figures), *overlay), QRectF(0, 0, wide, high), box, tones)
        painter.end()
        image = image.convertToFormat(QImage.Format.Format_RGB32)
        image.setDevicePixelRatio(dpr)
        return image

    def _keep(self, key: Hashable, image: QImage) -> None:
        self._kept[key] = image
        self._bytes += image.sizeInBytes()
        while self._bytes > KEPT_BYTES and len(self._kept) > 1:
            _, oldest = self._kept.popitem(last=False)
            self._bytes -= oldest.sizeInBytes()

    def symptom(
        self,
        knowledge: Knowledge,
        symptom: Symptom,
        garment: str,
        size: tuple[int, int],
        dpr: float,
        tones: FigureTones,
        facts: Mapping[str, str] | None = None,
    ) -> QImage | None:
        """A symptom as it looks on a garment, the part shown chosen for the size; None where it has no drawing."""
        figure, drawing = figure_of(knowledge, garment, symptom.view), symptom_drawing(knowledge, symptom, garment)
        if figure is None or drawing is None:
            return None
        scene = Scene(figure, (drawing,), facts={"garment": garment, **(facts or {})})
        return self.picture(scene, size, dpr, tones, framed(drawing, size[0] / size[1]))


def paint_scene(painter: QPainter, shapes: Sequence[Shape], target: QRectF, box: Box, tones: FigureTones) -> None:
    """Paint the shapes within `box` (mm) into a rectangle of the painter, as large as fits, in the middle."""
    x, y, wide, high = box
    scale = min(target.width() / wide, target.height() / high)
    painter.save()
    painter.setClipRect(target, Qt.ClipOperation.IntersectClip)
    painter.translate(target.center())
    painter.scale(scale, scale)
    painter.translate(-QPointF(x + wide / 2, y + high / 2))
    paint(painter, shapes, tones, scale)
    painter.restore()
