"""The kinds of garment as pictures to choose from, at the table and at the rack."""

from __future__ import annotations

from typing import Protocol

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from fitdoctor.case import Case
from fitdoctor.desk.look import Look
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.line_choice import LineChoice, Picture
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import SectionHead
from fitdoctor.desk.pictures import Pictures
from fitdoctor.desk.words import tr
from fitdoctor.figure.choose import figure_of
from fitdoctor.figure.compose import Scene
from fitdoctor.knowledge.entries import Garment
from fitdoctor.knowledge.knowledge import Knowledge

PICTURE = (112, 148)
ONE = (84, 96)


class OfAKind(Protocol):
    """What has a kind of garment that can be chosen."""

    @property
    def knowledge(self) -> Knowledge: ...

    @property
    def pictures(self) -> Pictures: ...

    @property
    def case(self) -> Case: ...

    def choose_garment(self, garment: str) -> None: ...


def kinds_in_order(knowledge: Knowledge) -> list[Garment]:
    """The kinds of garment that have a drawing: wider kinds before their narrower ones, and like beside like."""

    def key(garment: Garment) -> tuple[str, bool, str]:
        return garment.kind_of or garment.id, bool(garment.kind_of), garment.title

    drawn = [g for g in knowledge.garments.values() if figure_of(knowledge, g.id, "front") or figure_of(knowledge, g.id, "back")]
    return sorted(drawn, key=key)


class Kinds(QWidget):
    """The kinds of garment as small pictures; once one is chosen the others wait behind a link."""

    chosen = Signal(str)

    def __init__(self, look: Look, job: OfAKind, name: str = "garment") -> None:
        super().__init__()
        self.look, self.job, self._name = look, job, name
        self._open = False
        self._shown: tuple[object, ...] = ()
        self._other = Link(look, tr("Another kind"), f"{name}-other-kind")
        self._other.clicked.connect(self._turn)
        self._head = SectionHead(look, tr("Kind of garment"), self._other)
        self._body = Rows(f"{name}-kinds")
        self.choices: list[LineChoice] = []
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(12)
        column.addWidget(self._head)
        column.addWidget(self._body)

    def _turn(self) -> None:
        self._open = not self._open
        self.show_job()

    def show_job(self) -> None:
        """Show the chosen kind, or all of them."""
        know, garment = self.job.knowledge, self.job.case.garment
        known = garment in know.garments
        everything = self._open or not known
        other = tr("Keep this kind") if self._open else tr("Another kind")
        self._other.say(other if known else "")
        state = (everything, garment)
        if state == self._shown:
            return
        self._shown = state
        kinds = kinds_in_order(know) if everything else [know.garments[garment]]
        self.choices = [self._choice(kind, one=not everything) for kind in kinds]
        self.group = ControlGroup(self.choices)
        holder = QWidget()
        flow = FlowLayout(holder, 16)
        for choice in self.choices:
            flow.addWidget(choice)
        self._body.show_rows([holder])

    def _choice(self, kind: Garment, one: bool) -> LineChoice:
        remark = ", ".join(kind.also_called) if one else ""
        choice = LineChoice(self.look, kind.id, kind.title, remark, self._picture(kind.id), f"{self._name}-kind-{kind.id}")
        choice.set_picture(ONE if one else (max(PICTURE[0], self.look.px(6.2)), PICTURE[1]), beside=one)
        choice.setChecked(kind.id == self.job.case.garment)
        choice.clicked.connect(lambda: self._choose(kind.id))
        return choice

    def _choose(self, kind: str) -> None:
        self._open = False
        self.job.choose_garment(kind)
        self.show_job()
        self.chosen.emit(kind)

    def _picture(self, kind: str) -> Picture:
        know, pictures, tones = self.job.knowledge, self.job.pictures, self.look.tones
        figure = figure_of(know, kind, "front") or figure_of(know, kind, "back")
        if figure is None:
            return lambda _size, _dpr: None
        scene = Scene(figure, facts={"garment": kind})
        return lambda size, dpr: pictures.picture(scene, size, dpr, tones)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        """Put the focus on the kinds."""
        if self.choices:
            self.choices[0].setFocus(reason)
