"""Step 1: the garment, whom it is for, and what is known of it. Facts are asked when the work turns on them."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.facts import Facts
from fitdoctor.desk.pages.figure_plate import FigurePlate
from fitdoctor.desk.pages.page import Columns, Page, ScrollColumn, section
from fitdoctor.desk.parts.button import Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.line_choice import LineChoice, Picture
from fitdoctor.desk.parts.rows import Rows
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.choose import figure_of
from fitdoctor.figure.compose import Scene
from fitdoctor.knowledge.entries import Garment
from fitdoctor.knowledge.knowledge import Knowledge

PICTURE = (112, 148)
ONE = (84, 96)


def kinds_in_order(knowledge: Knowledge) -> list[Garment]:
    """The kinds of garment that have a drawing: wider kinds before their narrower ones, and like beside like."""

    def key(garment: Garment) -> tuple[str, bool, str]:
        return garment.kind_of or garment.id, bool(garment.kind_of), garment.title

    drawn = [g for g in knowledge.garments.values() if figure_of(knowledge, g.id, "front") or figure_of(knowledge, g.id, "back")]
    return sorted(drawn, key=key)


class GarmentPage(Page):
    """The plate shows the garment as far as it is known."""

    step = "garment"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self.plate = FigurePlate(look, job, "garment", asks=False)
        self._title = PageTitle(look, tr("The garment"), "garment-title")
        self._kinds = Kinds(look, job)
        self._name = Field(look, "garment-name", tr("The garment in a few words"), tr("Grey flannel trousers"))
        self._wearer = Field(look, "garment-wearer", tr("Whom it is for: initials or a number"), tr("Initials or a number"))
        self._name.edit.textEdited.connect(job.name)
        self._wearer.edit.textEdited.connect(self._name_wearer)
        self._no_name = Words(look, "", "small", "stop", "garment-no-name")
        self._of = job.kept.id
        self._fields = Columns(GUTTER)
        self._facts = Facts(look, job)
        self._scroll = ScrollColumn("garment-scroll")
        column = self._scroll.column
        column.addWidget(self._title)
        for gap, widget in ((14, self._kinds), (18, self._fields), (22, self._facts)):
            column.addSpacing(gap)
            column.addWidget(widget)
        column.addStretch(1)
        whole = QHBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.plate)
        whole.addWidget(self._scroll, 1)

    def fold(self, width: int) -> None:
        super().fold(width)
        self.plate.fold(width, self.columns)

    def arrange(self, columns: int) -> None:
        name = section(Words(self.look, tr("What it is called"), "small", "ink-2"), self._name, gap=4)
        wearer = section(Words(self.look, tr("For"), "small", "ink-2"), self._wearer, self._no_name, gap=4)
        self._fields.lay([[(name, 3), (wearer, 2)]] if columns > 1 else [[(name, 1)], [(wearer, 1)]])

    def show_job(self) -> None:
        known = self.job.case.garment in self.job.knowledge.garments
        self._title.remark(tr("Not known is an answer too.") if known else tr("What has come to the table?"))
        self.plate.show_garment()
        self._kinds.show_job()
        self._fields.setVisible(known)
        self._facts.setVisible(known)
        if self._of != self.job.kept.id:
            self._of = self.job.kept.id
            self._show_no_name("")
        for field, text in ((self._name, self.job.case.title), (self._wearer, self.job.case.wearer)):
            if field.edit.text() != text and not field.wrong:
                field.edit.setText(text)
        if known:
            self._facts.show_job()

    def _name_wearer(self, wearer: str) -> None:
        try:
            self._show_no_name("")
            self.job.name_wearer(wearer)
        except FitdoctorError as error:
            self._show_no_name(str(error))

    def _show_no_name(self, why: str) -> None:
        self._wearer.show_wrong(bool(why))
        self._no_name.say(why)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self.job.case.garment in self.job.knowledge.garments:
            self._facts.focus_first(reason) or self._name.edit.setFocus(reason)
        else:
            self._kinds.focus_first(reason)


class Kinds(QWidget):
    """The kinds of garment as small pictures; once one is chosen the others wait behind a link."""

    chosen = Signal(str)

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        self._open = False
        self._shown: tuple[object, ...] = ()
        self._other = Link(look, tr("Another kind"), "garment-other-kind")
        self._other.clicked.connect(self._turn)
        self._head = SectionHead(look, tr("Kind of garment"), self._other)
        self._body = Rows("garment-kinds")
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
        choice = LineChoice(self.look, kind.id, kind.title, remark, self._picture(kind.id), f"garment-kind-{kind.id}")
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
