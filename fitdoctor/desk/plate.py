"""A plate: an explaining picture in a column of text, with lettered call-outs."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from fitdoctor.desk.call_out import EM, CallOutText, ball_radius, draw_call_out, spread
from fitdoctor.desk.figure_tones import FigureTones
from fitdoctor.desk.pictures import Pictures
from fitdoctor.figure.compose import Scene
from fitdoctor.figure.reach import Box, fitted
from fitdoctor.figure.shapes import Shape


class Plate(QWidget):
    """Paints one scene, flush on its own tone; fix its height in em where it stands."""

    def __init__(self, pictures: Pictures, tones: FigureTones, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pictures, self.tones, self._em = pictures, tones, EM
        self._scene: Scene | None = None
        self._crop: Box | None = None
        self._overlay: tuple[Shape, ...] = ()
        self._call_outs: tuple[CallOutText, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_scene(
        self,
        scene: Scene | None,
        crop: Box | None = None,
        overlay: tuple[Shape, ...] = (),
        call_outs: Sequence[CallOutText] = (),
        says: str = "",
    ) -> None:
        """Show a scene, the part of it given by the crop, with what explains it; `says` is read to those who cannot see it."""
        self._scene, self._crop, self._overlay = scene, crop, overlay
        self._call_outs = tuple(sorted(call_outs, key=lambda text: text.at[1]))
        self.setAccessibleName(says)
        self.update()

    def set_tones(self, tones: FigureTones) -> None:
        """Change to the colours of another theme."""
        self.tones = tones
        self.update()

    def set_text_size(self, em: float) -> None:
        """Change the body size of the text, in pixels."""
        self._em = em
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(420, 264)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.fillRect(self.rect(), self.tones.colour("bg"))
        if self._scene is not None:
            size = (self.width(), self.height())
            image = self._pictures.picture(self._scene, size, self.devicePixelRatioF(), self.tones, self._crop, self._overlay)
            painter.drawImage(self.rect(), image)
            self._paint_call_outs(painter, self._crop or self._scene.figure.box)
        painter.end()

    def _paint_call_outs(self, painter: QPainter, crop: Box) -> None:
        """Balls at the left and right edges, each on the side of the place it means."""
        x, y, wide, high = fitted(crop, self.width() / self.height())
        scale, radius = self.width() / wide, ball_radius(self._em)
        for right in (False, True):
            side = [text for text in self._call_outs if (text.at[0] > x + wide / 2) == right]
            wanted = [(text.at[1] - y) * scale for text in side]
            heights = spread(wanted, 2 * radius + 6, radius + 6, high * scale - radius - 6)
            for text, height in zip(side, heights, strict=True):
                ball = (self.width() - radius - 12 if right else radius + 12, height)
                draw_call_out(painter, self.tones, text.label, ball, ((text.at[0] - x) * scale, (text.at[1] - y) * scale), self._em)
