"""What is said differently of one matter, side by side with a rule between; one below the other where there is no room."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.handbook.kinds import Key, key_of
from fitdoctor.desk.handbook.plates import RATIO, plate_of
from fitdoctor.desk.job import Job, drawn
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.text import SectionHead, Upright, Words
from fitdoctor.desk.words import tr, upper_first
from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE

if TYPE_CHECKING:
    from fitdoctor.handbook import Page, SideBySide
    from fitdoctor.handbook.opposed import Said

_MIDDLE = 20
_PICTURE = 210


class Opposed(QWidget):
    """One matter. Emits the entry wanted."""

    wanted = Signal(object)

    def __init__(self, look: Look, job: Job, page: Page, matter: SideBySide, number: int, wide: bool) -> None:
        super().__init__()
        self.look, self.job, self._page = look, job, page
        self.setObjectName(f"look-up-beside-{number}")
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(12)
        self._column.addWidget(SectionHead(look, tr(matter.matter)))
        here = job.knowledge.symptoms.get(page.id) if page.kind == "symptoms" else None
        if here:
            for said in matter.said:
                self._tell_apart(here, said, wide)
        else:
            level = wide and len(matter.said) == 2
            self._set([self._side(said) for said in matter.said], level)

    def _tell_apart(self, here: Symptom, said: Said, wide: bool) -> None:
        other = self.job.knowledge.symptoms[said.entry]
        sides = [self._sign(here, None), self._sign(other, ("symptoms", other.id))]
        self._set(sides, wide)
        decides = Words(self.look, f"**{tr('What tells them apart:')}** {said.says}", "body")
        decides.setContentsMargins(0, 0, 0, 8)
        self._column.addWidget(decides)

    def _sign(self, symptom: Symptom, key: Key | None) -> QWidget:
        holder, column = _holder()
        found = plate_of(self.job.knowledge, symptom, self.job.case.garment)
        if found:
            wide = self.look.grown(_PICTURE)
            paint = drawn(self.job, found[0], self.look.tones)
            column.addWidget(SmallPicture(self.look, paint, (wide, round(wide / RATIO)), symptom.look))
        column.addWidget(self._title(symptom.title, key))
        column.addWidget(Words(self.look, symptom.look, "small"))
        column.addStretch(1)
        return holder

    def _side(self, said: Said) -> QWidget:
        holder, column = _holder()
        key = key_of(self.job.knowledge, said.entry)
        column.addWidget(self._title(said.title, None if said.entry == self._page.id else key))
        cited = [self.job.knowledge.source_line(s) for s in said.sources if s != COMMON_PRACTICE]
        column.addWidget(Words(self.look, cited[0] if cited else tr("Common practice, no source"), "small", "ink-2"))
        column.addWidget(Words(self.look, upper_first(said.says), "small"))
        column.addStretch(1)
        return holder

    def _title(self, title: str, key: Key | None) -> QWidget:
        if key is None:
            return Words(self.look, title, "bold")
        link = Link(self.look, title, f"look-up-side-{key[1]}", "bold")
        link.clicked.connect(lambda _on=False: self.wanted.emit(key))
        return link

    def _set(self, sides: list[QWidget], level: bool) -> None:
        row = QWidget()
        line = QBoxLayout(QBoxLayout.Direction.LeftToRight if level else QBoxLayout.Direction.TopToBottom, row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(_MIDDLE if level else 14)
        for number, side in enumerate(sides):
            if number and level:
                line.addWidget(Upright(self.look, "ink"))
            line.addWidget(side, 1)
        self._column.addWidget(row)


def _holder() -> tuple[QWidget, QVBoxLayout]:
    holder = QWidget()
    column = QVBoxLayout(holder)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(4)
    column.setAlignment(Qt.AlignmentFlag.AlignTop)
    return holder, column
