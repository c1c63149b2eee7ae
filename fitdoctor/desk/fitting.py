"""Fit a garment: the seven pages in the window, bound to the job in hand."""

from __future__ import annotations

from PySide6.QtCore import QObject, Qt

from fitdoctor.desk.job import Job
from fitdoctor.desk.pages.done import DonePage
from fitdoctor.desk.pages.garment import GarmentPage
from fitdoctor.desk.pages.measure import MeasurePage
from fitdoctor.desk.pages.narrow import NarrowPage
from fitdoctor.desk.pages.page import Page
from fitdoctor.desk.pages.plan import PlanPage
from fitdoctor.desk.pages.sheet import SheetPage
from fitdoctor.desk.pages.shows import ShowsPage
from fitdoctor.desk.shelf import Kept
from fitdoctor.desk.step_names import STEPS, TITLES
from fitdoctor.desk.steps import step_states
from fitdoctor.desk.window import Window
from fitdoctor.desk.words import tr
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.trouble import ChangedElsewhere

PAGES: tuple[type[Page], ...] = (GarmentPage, ShowsPage, NarrowPage, MeasurePage, DonePage, PlanPage, SheetPage)


class Fitting(QObject):
    """Keeps window and job in step."""

    def __init__(self, window: Window, job: Job) -> None:
        super().__init__(window)
        self.window, self.job = window, job
        self.pages: dict[str, Page] = {}
        self._said = ""
        job.changed.connect(self.show)
        job.stepWanted.connect(self.open_step)
        job.failed.connect(self._failed)
        job.remarked.connect(self._remark)
        job.workWanted.connect(window.at_work.start)
        window.stepWanted.connect(job.go_to)
        window.undoWanted.connect(self._undo)
        window.redoWanted.connect(self._redo)
        window.newWanted.connect(self.new_garment)
        window.summaryWanted.connect(lambda: self.page().show_summary())
        window.printWanted.connect(self._print)
        window.keyTyped.connect(lambda text: self._open() and self.page().take_key(text))
        window.placeWanted.connect(lambda place: self.open_step(job.kept.step) if place == "fit" else None)
        window.fills.append(self.fill)
        self.fill()

    def fill(self) -> None:
        """Put the pages into the window, in its look."""
        window = self.window
        self.pages = {kind.step: kind(window.look, self.job) for kind in PAGES}
        for page in self.pages.values():
            window.pages.addWidget(page)
            if isinstance(page, PlanPage):
                page.guidesWanted.connect(self.show_guides)
        window.foot.back.connect(lambda: self._turn(-1))
        window.foot.on.connect(lambda: self._turn(1))
        self.open_step(self.job.kept.step)

    def page(self) -> Page:
        """The page in hand."""
        return self.pages[self.job.kept.step]

    def open_step(self, step: str) -> None:
        """Open a page, with the focus on its first question."""
        page = self.pages[step]
        self._said = ""
        self.show()
        self.window.show_place("fit", page)
        self._show_foot()
        page.open_at_top(Qt.FocusReason.OtherFocusReason)

    def show(self) -> None:
        """Show the case as it is now."""
        kept = self.job.kept
        self.window.tape.show_steps(step_states(self.job.knowledge, kept, self.job.assessment), kept.step)
        with self.page().focus_kept():
            self.page().show_job()
        self._show_foot()

    def _show_foot(self) -> None:
        at = STEPS.index(self.job.kept.step)
        back = tr(TITLES[STEPS[at - 1]]) if at else ""
        on = tr(TITLES[STEPS[at + 1]]) if at + 1 < len(STEPS) else ""
        foot = self.window.foot
        foot.show_turns(back, on)
        foot.show_kept(self._said or self._where_kept(), bool(self._said))
        foot.show_summary(self.page().summary())

    def _where_kept(self) -> str:
        if self.job.shelf.book is None:
            return tr("{title}. Not kept: the job book is not open.", title=self._title())
        return tr("{title}. Kept in the job book as you go.", title=self._title())

    def _title(self) -> str:
        case = self.job.case
        garment = self.job.knowledge.garments.get(case.garment)
        return case.title or (garment.title if garment else tr("A new garment"))

    def _failed(self, error: FitdoctorError) -> None:
        if isinstance(error, ChangedElsewhere):
            self.window.message.say(str(error), button=tr("Show it as it stands there"), act=self.job.look_again)
        else:
            self.window.say(error)

    def _remark(self, text: str) -> None:
        self._said = text
        self._show_foot()

    def _turn(self, by: int) -> None:
        at = STEPS.index(self.job.kept.step) + by
        if 0 <= at < len(STEPS):
            self.job.go_to(STEPS[at])

    def _open(self) -> bool:
        return self.window.place == "fit"

    def _undo(self) -> None:
        self._said = ""
        if self._open():
            self.job.undo()

    def _redo(self) -> None:
        self._said = ""
        if self._open():
            self.job.redo()

    def show_guides(self) -> None:
        """Show the marking guides where they can be printed."""
        sheet = self.pages["sheet"]
        if isinstance(sheet, SheetPage):
            sheet.show_paper("guides")
            self.job.go_to("sheet")

    def _print(self) -> None:
        sheet = self.pages["sheet"]
        if self._open() and isinstance(sheet, SheetPage):
            self.job.go_to("sheet")
            sheet.print_sheet()

    # ---- other garments

    def open_kept(self, kept: Kept) -> None:
        """Take another garment in hand, where one left off."""
        self.job.open(kept)
        self.open_step(kept.step)

    def new_garment(self) -> None:
        """Begin with another garment."""
        from fitdoctor.case import Case

        self.open_kept(Kept(case=Case(garment="")))
