"""Step 1: the garment, whom it is for, and what is known of it. Facts are asked when the work turns on them."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout

from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.facts import Facts
from fitdoctor.desk.pages.figure_plate import FigurePlate
from fitdoctor.desk.pages.kinds import Kinds
from fitdoctor.desk.pages.page import Columns, Page, ScrollColumn, section
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.text import PageTitle, Words
from fitdoctor.desk.tokens import GUTTER
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.job import check_wearer


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
        """Initials are kept as they are typed; of a name nothing is kept."""
        why = ""
        try:
            check_wearer(wearer)
        except FitdoctorError as error:
            why = str(error)
        self._show_no_name(why)
        self.job.name_wearer("" if why else wearer)

    def _show_no_name(self, why: str) -> None:
        self._wearer.show_wrong(bool(why))
        self._no_name.say(why)

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self.job.case.garment in self.job.knowledge.garments:
            self._facts.focus_first(reason) or self._name.edit.setFocus(reason)
        else:
            self._kinds.focus_first(reason)
