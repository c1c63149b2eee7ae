"""One photo of a job as large as there is room, and the way to take it out for good."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.jobbook.ask_back import AskBack
from fitdoctor.desk.jobbook.photos import read_picture
from fitdoctor.desk.jobbook.view import View
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import section
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.rows import left
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.words import tr
from fitdoctor.jobbook.job import Photo


class PhotoPage(View):
    """Emits that the photo is to be deleted and that it is meant."""

    deleteMeant = Signal()

    def __init__(self, look: Look, job: Job, photo: Photo, path: Path, room: QSize) -> None:
        super().__init__(look, job, "photo", photo.name)
        image = read_picture(path, room)
        not_shown = tr("A photo of this kind cannot be shown here. It is kept, and is written out with the job.")
        shown = Words(look, not_shown, "reading", name="photo-not-shown") if image.isNull() else left(_Picture(image, photo.name))
        told = Words(
            look,
            tr("It is kept as it was taken in, with what the camera wrote into it: often the time, at times the place."),
            "small",
            "ink-2",
        )
        out = Link(look, tr("Delete this photo for good"), "photo-delete", "body")
        self.ask = AskBack(look)
        out.clicked.connect(lambda: self.ask.ask(tr("Delete the photo ‘{name}’ for good? It cannot be taken back.", name=photo.name)))
        self.ask.meant.connect(self.deleteMeant.emit)
        self.lay((section(shown, told, left(out), self.ask, gap=12), 1))


class _Picture(QWidget):
    def __init__(self, image: QImage, says: str) -> None:
        super().__init__()
        self._image = image
        self.setObjectName("photo-large")
        self.setAccessibleName(says)
        self.setFixedSize(image.size())

    def paintEvent(self, _event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.drawImage(self.rect(), self._image)
        painter.end()
