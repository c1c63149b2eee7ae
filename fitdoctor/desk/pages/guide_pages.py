"""The marking guides at full size: their pages to be looked at, and the ways to take them along."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import cast

from PySide6.QtCore import QLocale
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog, QVBoxLayout, QWidget
from shiboken6 import isValid

from fitdoctor.assess import Assessment
from fitdoctor.desk.at_work import LongWork
from fitdoctor.desk.background import Tell, nothing
from fitdoctor.desk.guide_paper import print_by_turns, sheet_image
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.page import Columns, section
from fitdoctor.desk.parts.button import Button, Link
from fitdoctor.desk.parts.control import ControlGroup
from fitdoctor.desk.parts.flow import FlowLayout
from fitdoctor.desk.parts.paper_page import PaperPage, SmallPage
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import SectionHead, Words
from fitdoctor.desk.taken_along import write_all
from fitdoctor.desk.words import count, tr
from fitdoctor.guides import Guide, Page, Paper, guide_sheets, guide_svg, guides_for, guides_pdf

GUTTER, LARGE, SMALL = 48, 560, 104
PAPERS: dict[Paper, str] = {"A4": "A4", "Letter": "US Letter"}


class GuidePages(QWidget):
    """Works the guides out in the background, anew whenever the amounts change."""

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__()
        self.look, self.job = look, job
        american = QLocale().measurementSystem() == QLocale.MeasurementSystem.ImperialUSSystem
        self.paper: Paper = "Letter" if american else "A4"
        self.guides: tuple[Guide, ...] = ()
        self.sheets: tuple[Page, ...] = ()
        self._asked: object = None
        self._note = Words(look, "", "reading", "ink-2", "guides-note")
        self._again = Link(look, "", "guides-again", "body", big=True)
        self._again.clicked.connect(self._draw_again)
        self._small = Rows("guides-small")
        self._large = Rows("guides-large")
        self._what = Rows("guides-list", 6)
        self._number = Words(look, "", "small", "ink-2", "guides-number")
        self._left = section(self._note, left(self._again), self._small, self._large, gap=12)
        self._ways = section(*self._buttons(), gap=10)
        head = SectionHead(look, tr("Take them along"))
        self._right = section(head, self._paper_choice(), self._ways, self._number, self._print_right(), self._what)
        self._columns = Columns(GUTTER)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._columns)

    def _paper_choice(self) -> QWidget:
        values = [(paper, tr(title)) for paper, title in PAPERS.items()]
        row = ChoiceRow(self.look, "paper", values, self.paper, "guides-paper", tr("Paper"))
        row.chosen.connect(self._take_paper)
        return row

    def _buttons(self) -> list[QWidget]:
        self.print_button = Button(self.look, tr("Print at full size"), "guides-print", "go")
        self.print_button.clicked.connect(self.print_guides)
        ways: tuple[tuple[str, str, Callable[[], None]], ...] = (
            ("guides-save-pdf", tr("Save marking guides as PDF"), lambda: self._ask_and_save("pdf")),
            ("guides-save-svg", tr("Save as pictures (SVG)"), lambda: self._ask_and_save("svg")),
        )
        rows = [left(self.print_button)]
        for name, text, act in ways:
            button = Button(self.look, text, name)
            button.clicked.connect(act)
            rows.append(left(button))
        return rows

    def _print_right(self) -> QWidget:
        text = tr("Print at 100 %, without fitting to the page. Measure the test squares on page 1 before you mark from a guide.")
        return Words(self.look, f"**{text}**", "small", name="guides-print-right")

    def arrange(self, columns: int) -> None:
        """Pages beside the buttons, or below them."""
        if columns > 1:
            self._columns.lay([[(self._left, 56), (self._right, 52)]])
        else:
            self._columns.lay([[(self._right, 1)], [(self._left, 1)]])

    # ---- working out

    def show_job(self, assessment: Assessment) -> None:
        """Show the guides of the amounts as they are now."""
        wanted = (assessment.amounts, self.paper)
        if wanted == self._asked:
            return
        self._asked = wanted
        know, shop, paper, title = self.job.knowledge, assessment.shop, self.paper, self._title(assessment)
        self._say(tr("Drawing the marking guides at full size."))
        self._show([], ())

        def make(tell: Tell) -> tuple[tuple[Guide, ...], tuple[Page, ...]]:
            guides = guides_for(know, assessment.amounts, shop)
            return guides, guide_sheets(guides, paper, title, tell) if guides else ()

        def then(made: tuple[tuple[Guide, ...], tuple[Page, ...]]) -> None:
            if isValid(self) and self._asked is wanted:
                self._say("" if made[0] else self._why_none(assessment))
                self._show(*made)

        def stopped() -> None:
            if isValid(self) and self._asked is wanted:
                self._say(tr("Drawing the guides was stopped."), tr("Draw them after all"))

        self.job.workWanted.emit(LongWork(tr("Drawing the marking guides"), make, then, self.job.failed.emit, stopped))

    def _say(self, note: str, again: str = "") -> None:
        self._note.say(note)
        self._again.say(again)

    def _draw_again(self) -> None:
        self._asked = None
        if self.job.assessment:
            self.show_job(self.job.assessment)

    def _title(self, assessment: Assessment) -> str:
        return assessment.case.title or self.job.knowledge.garment(assessment.case.garment).title

    def _why_none(self, assessment: Assessment) -> str:
        if any(worked.missing for worked in assessment.amounts):
            return tr("No guide yet: measure first, then there are lines to draw.")
        return tr("No guide is needed: what this work moves is marked with the rule alone.")

    def _show(self, guides: Sequence[Guide], sheets: Sequence[Page]) -> None:
        self.guides, self.sheets = tuple(guides), tuple(sheets)
        self._ways.setVisible(bool(guides))
        number = count(len(sheets), "1 page, {paper}", "{number} pages, {paper}", paper=tr(PAPERS[self.paper]))
        self._number.say(number if sheets else "")
        self._small.show_rows([self._strip()] if sheets else [])
        self._show_large(1 if len(sheets) > 1 else 0)
        self._what.show_rows(self._said())

    def _strip(self) -> QWidget:
        holder = QWidget()
        flow = FlowLayout(holder, 8)
        pages: list[SmallPage] = []
        for at, sheet in enumerate(self.sheets):
            says = tr("Page {n} of the marking guides", n=at + 1)
            image = sheet_image(sheet, self.look.grown(SMALL), self.devicePixelRatioF())
            page = SmallPage(self.look, image, at + 1, says, f"guides-page-{at + 1}")
            page.setChecked(at == 1)
            page.clicked.connect(lambda _on=False, which=at: self._show_large(which))
            flow.addWidget(page)
            pages.append(page)
        self._pages = ControlGroup(pages, exclusive=True)
        return holder

    def _show_large(self, at: int) -> None:
        for page in self.findChildren(SmallPage):
            page.setChecked(page.number == at + 1)
        if not self.sheets:
            self._large.show_rows([])
            return
        wide = min(LARGE, max(300, self._left.width() or LARGE))
        image = sheet_image(self.sheets[at], wide, self.devicePixelRatioF())
        self._large.show_rows([left(PaperPage(self.look, image, tr("Page {n} of the marking guides, large", n=at + 1)))])

    def _said(self) -> list[QWidget]:
        """Each guide and what it shows; where it rests on a standard block this says what to measure."""
        rows: list[QWidget] = [SectionHead(self.look, tr("What is on them"))] if self.guides else []
        for guide in self.guides:
            rows.append(Words(self.look, f"**{guide.letters}**  {guide.title}", "body"))
            rows += [Words(self.look, text, "small", "care" if "standard block" in text else "ink-2") for text in guide.says]
        return rows

    # ---- taking them along

    def _take_paper(self, _question: str, paper: str) -> None:
        self.paper = cast(Paper, paper)
        if self.job.assessment:
            self.show_job(self.job.assessment)

    def print_guides(self) -> None:
        """Print through the system's dialog."""
        if not self.sheets:
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        dialog = QPrintDialog(printer, self)
        dialog.setObjectName("guides-print-dialog")
        dialog.accepted.connect(lambda: self._print_on(printer))
        QDialog.open(dialog)

    def _print_on(self, printer: QPrinter) -> None:
        turns = print_by_turns(self.sheets, self.paper, printer)
        self.job.workWanted.emit(LongWork(tr("Printing the marking guides"), turns, nothing, self.job.failed.emit))

    def _ask_and_save(self, ending: str) -> None:
        offered = str(self.job.shop.sheet_path(f"marking-guides.{ending}"))
        path, _ = QFileDialog.getSaveFileName(self, tr("Save marking guides"), offered, f"*.{ending}")
        if path:
            self.save(Path(path))

    def save(self, path: Path) -> None:
        """Write the guides: one PDF, or one SVG for each guide, its letters behind the file's name."""
        assessment = self.job.assessment
        if assessment is None or not self.guides:
            return
        guides, paper, title = self.guides, self.paper, self._title(assessment)

        def make(tell: Tell) -> list[Path]:
            if path.suffix != ".svg":
                return write_all({path: guides_pdf(guides, paper, title, tell)})
            return write_all({path.with_stem(f"{path.stem}-{guide.letters}"): guide_svg(guide).encode() for guide in guides})

        def then(files: list[Path]) -> None:
            self.job.remarked.emit(tr("Written: {path}", path=", ".join(str(file) for file in files)))

        self.job.workWanted.emit(LongWork(tr("Writing the marking guides"), make, then, self.job.failed.emit))
