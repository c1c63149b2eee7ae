"""The photos of a job as small pictures, turned as they were taken; a press shows one large."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QImageIOHandler, QImageReader, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QFileDialog, QSizePolicy, QVBoxLayout, QWidget

from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import Control, ControlGroup
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.rows import left
from fitdoctor.desk.parts.setting import Paragraph
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import HAIR
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.job import Photo
from fitdoctor.jobbook.photos import ENDINGS

SMALL = 96


def read_picture(path: Path, most: QSize) -> QImage:
    """A photo no larger than `most`, turned upright as its camera noted; an empty image where it cannot be shown."""
    reader = QImageReader(str(path))
    reader.setAutoTransform(True)
    size = reader.size()
    if size.isValid() and (size.width() > most.width() or size.height() > most.height()):
        turned = bool(reader.transformation() & QImageIOHandler.Transformation.TransformationRotate90)
        room = most.transposed() if turned else most
        reader.setScaledSize(size.scaled(room, Qt.AspectRatioMode.KeepAspectRatio))
    return reader.read()


class Thumb(Control):
    """One photo, small."""

    def __init__(self, look: Look, photo: Photo, path: Path, number: int) -> None:
        super().__init__(look, f"jobs-photo-{number}", tr("Photo {n}, {name}", n=number, name=photo.name))
        self.photo = photo
        side = look.grown(SMALL)
        self.image = read_picture(path, QSize(2 * side, 2 * side))
        self.setFixedSize(side, side)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.fillRect(self.rect(), self.look.colour("paper-2"))
        if self.image.isNull():
            words = Paragraph(self.look, self.photo.name, "small")
            words.paint(painter, QRectF(self.rect()).adjusted(6, 6, -6, -6), self.look.colour("ink-2"))
        else:
            size = self.image.size().scaled(self.size(), Qt.AspectRatioMode.KeepAspectRatio)
            box = QRectF((self.width() - size.width()) / 2, (self.height() - size.height()) / 2, size.width(), size.height())
            painter.drawImage(box, self.image)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(self.look.colour("ink" if self.hovered else "edge"), HAIR))
        painter.drawRect(QRectF(self.rect()).adjusted(0.75, 0.75, -0.75, -0.75))
        self.paint_ring(painter)
        painter.end()


class PhotoStrip(QWidget):
    """Emits the files to be copied in, and the photo to be shown large."""

    addWanted = Signal(list)
    opened = Signal(object)

    def __init__(self, look: Look, photos: Sequence[tuple[Photo, Path]]) -> None:
        super().__init__()
        self.look = look
        self.thumbs = [Thumb(look, photo, path, number) for number, (photo, path) in enumerate(photos, 1)]
        for thumb in self.thumbs:
            thumb.clicked.connect(lambda _on=False, which=thumb.photo: self.opened.emit(which))
        self.group = ControlGroup(self.thumbs)
        add = Link(look, tr("Add photos"), "jobs-photos-add", "body")
        add.clicked.connect(self._ask)
        told = Words(look, tr("Copied as they are: a photo may hold where and when it was taken."), "small", "ink-2", "jobs-photos-told")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        if self.thumbs:
            strip = QWidget()
            flow = FlowLayout(strip, 8)
            for thumb in self.thumbs:
                flow.addWidget(thumb)
            column.addWidget(strip)
        column.addWidget(left(add))
        column.addWidget(told)

    def _ask(self) -> None:
        kinds = " ".join(f"*{ending}" for ending in ENDINGS)
        paths, _ = QFileDialog.getOpenFileNames(self, tr("Add photos to the job"), "", tr("Photos ({kinds})", kinds=kinds))
        if paths:
            self.addWanted.emit([Path(path) for path in paths])
