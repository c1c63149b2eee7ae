"""Step 7: the sheet and the marking guides as they will print, what to leave out, and the ways to take them along."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QFileDialog, QWidget
from shiboken6 import isValid

from fitdoctor.assess import Assessment
from fitdoctor.desk.at_work import LongWork
from fitdoctor.desk.background import Turns
from fitdoctor.desk.job import Job
from fitdoctor.desk.look import Look
from fitdoctor.desk.pages.guide_pages import GuidePages
from fitdoctor.desk.pages.page import Columns, Page, section
from fitdoctor.desk.paper import page_images, page_layout, pictures_by_turns, print_sheet, sheet_pdf
from fitdoctor.desk.parts.button import Button
from fitdoctor.desk.parts.empty_note import EmptyNote
from fitdoctor.desk.parts.field import Field
from fitdoctor.desk.parts.paper_page import PaperPage
from fitdoctor.desk.parts.round_choice import ChoiceRow
from fitdoctor.desk.parts.rows import Rows, left
from fitdoctor.desk.parts.text import PageTitle, SectionHead, Words
from fitdoctor.desk.parts.tick_box import TickBox
from fitdoctor.desk.taken_along import write_all
from fitdoctor.desk.words import count, tr
from fitdoctor.sheet import Sheet, as_html, as_text, write_sheet

GUTTER = 48
PAGE_WIDE = 560
PARTS: dict[str, str] = {
    "measured": "What was measured and answered",
    "causes": "The matter and why",
    "conditions": "What the work needs",
    "cautions": "What to mind",
    "sources": "Sources",
}


class SheetPage(Page):
    """The preview at the left; print and save at the right."""

    step = "sheet"

    def __init__(self, look: Look, job: Job) -> None:
        super().__init__(look, job)
        self._left_out: set[str] = set()
        self._shown: object = None
        self._drawn: tuple[Assessment, dict[str, str]] | None = None
        self._title = PageTitle(look, tr("The sheet"), "sheet-title")
        self._empty = EmptyNote(look, tr("No garment yet, so there is nothing to write up."), "sheet-empty", tr("Go to The garment"))
        self._empty.pressed.connect(lambda: job.go_to("garment"))
        self._pages = Rows("sheet-pages", 16)
        self._ticks = Rows("sheet-parts")
        self._notes = Field(look, "sheet-notes", tr("Notes on the sheet"), tr("Notes, in one line"))
        self._notes.edit.textEdited.connect(job.write_notes)
        self._number = Words(look, "", "small", "ink-2", "sheet-number")
        self._columns = Columns(GUTTER)
        self._right = section(
            SectionHead(look, tr("Take it along")),
            self._buttons(),
            self._number,
            SectionHead(look, tr("What stands on it")),
            self._ticks,
            SectionHead(look, tr("Notes")),
            self._notes,
            gap=12,
        )
        kinds = [("sheet", tr("The job sheet")), ("guides", tr("Marking guides"))]
        self._kind = ChoiceRow(look, "paper", kinds, "sheet", "sheet-kind", tr("On paper"))
        self._kind.chosen.connect(lambda _question, kind: self.show_paper(kind))
        self._paper = "sheet"
        self._guides = GuidePages(look, job)
        self.stand(self._title, self._empty, section(self._kind, self._columns, self._guides, gap=16), gap=14)

    def _buttons(self) -> QWidget:
        self.print_button = Button(self.look, tr("Print the sheet"), "sheet-print", "go")
        self.print_button.clicked.connect(self.print_sheet)
        buttons = [left(self.print_button)]
        ways: tuple[tuple[str, str, Callable[[], None]], ...] = (
            ("sheet-save-pdf", tr("Save as PDF"), lambda: self._ask_and_save("pdf")),
            ("sheet-save-html", tr("Save as a web page"), lambda: self._ask_and_save("html")),
            ("sheet-save-txt", tr("Save as plain text"), lambda: self._ask_and_save("txt")),
        )
        for name, text, act in ways:
            button = Button(self.look, text, name)
            button.clicked.connect(act)
            buttons.append(left(button))
        return section(*buttons, gap=10)

    def show_paper(self, kind: str) -> None:
        """Show the job sheet (sheet), or the marking guides (guides)."""
        self._paper = kind
        for choice in self._kind.choices:
            choice.setChecked(choice.value == kind)
        self.show_job()

    def arrange(self, columns: int) -> None:
        self._guides.arrange(columns)
        if columns > 1:
            self._columns.lay([[(self._pages, 56), (self._right, 52)]])
        else:
            self._columns.lay([[(self._right, 1)], [(self._pages, 1)]])

    def show_job(self) -> None:
        assessment = self.job.assessment
        self._empty.setVisible(assessment is None)
        self._kind.setVisible(assessment is not None)
        self._columns.setVisible(assessment is not None and self._paper == "sheet")
        self._guides.setVisible(assessment is not None and self._paper == "guides")
        if assessment is None:
            self._title.remark("")
            return
        if self._paper == "guides":
            self._title.remark(tr("Curves, tapers and darts at full size, to mark from."))
            self._guides.show_job(assessment)
            return
        self._title.remark(tr("For the work table, as it will print."))
        if self._notes.edit.text() != self.job.case.notes and not self._notes.edit.hasFocus():
            self._notes.edit.setText(self.job.case.notes.replace("\n", "; "))
        self._show_ticks()
        state = (self.job.case, frozenset(self._left_out))
        if state != self._shown:
            self._shown = state
            self._show_pages(assessment)

    def _show_pages(self, assessment: Assessment) -> None:
        wide = min(PAGE_WIDE, max(320, self.width() - 400)) if self.columns > 1 else min(PAGE_WIDE, self.width() - 80)
        sheet, state, dpr = self.sheet(assessment), self._shown, self.devicePixelRatioF()

        def show(images: list[QImage]) -> None:
            if isValid(self) and self._shown is state:
                self._show_images(images)

        def stopped() -> None:
            if isValid(self) and self._shown is state:
                self._number.say(tr("Setting the pages was stopped. The sheet can be printed all the same."))

        self._number.say(tr("Setting the pages."))
        turns = self._with_pictures(assessment, lambda pictures: page_images(sheet, pictures, wide, dpr))
        self.job.workWanted.emit(LongWork(tr("Setting the pages of the sheet"), turns, show, self.job.failed.emit, stopped))

    def _show_images(self, images: list[QImage]) -> None:
        pages = [PaperPage(self.look, image, tr("Page {n} of the sheet", n=number)) for number, image in enumerate(images, 1)]
        self._pages.show_rows(pages)
        paper = page_layout().pageSize().name()
        self._number.say(count(len(images), "1 page, {paper}", "{number} pages, {paper}", paper=paper))

    def _with_pictures(self, assessment: Assessment, finish: Callable[[dict[str, str]], Any]) -> Turns:
        """Draw the pictures of the sheet unless they are drawn already, then do what they are for."""
        if self._drawn is None or self._drawn[0] is not assessment:
            pictures = yield from pictures_by_turns(self.job.knowledge, assessment)
            self._drawn = (assessment, pictures)
        return finish(self._drawn[1])

    def _show_ticks(self) -> None:
        if self._ticks.rows():
            return
        ticks: list[QWidget] = []
        for part, title in PARTS.items():
            tick = TickBox(self.look, tr(title), f"sheet-part-{part}")
            tick.setChecked(part not in self._left_out)
            tick.clicked.connect(lambda on=False, which=part: self._leave_out(which, not on))
            ticks.append(tick)
        self._ticks.show_rows(ticks)

    def _leave_out(self, part: str, out: bool) -> None:
        self._left_out = self._left_out | {part} if out else self._left_out - {part}
        self.show_job()

    def sheet(self, assessment: Assessment) -> Sheet:
        """The sheet without what is to be left out. Cautions that protect people stay."""
        sheet = write_sheet(self.job.knowledge, assessment)
        if "measured" in self._left_out:
            sheet = replace(sheet, measured=(), answers=())
        out = self._left_out
        return replace(
            sheet,
            causes=() if "causes" in out else sheet.causes,
            conditions=() if "conditions" in out else sheet.conditions,
            cautions=() if "cautions" in out else sheet.cautions,
            sources=() if "sources" in out else sheet.sources,
        )

    # ---- taking it along

    def print_sheet(self) -> None:
        """Print through the system's dialog."""
        if self.job.assessment is None:
            return
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        printer.setPageLayout(page_layout())
        dialog = QPrintDialog(printer, self)
        dialog.setObjectName("sheet-print-dialog")
        dialog.accepted.connect(lambda: self._print_on(printer))
        QDialog.open(dialog)

    def _print_on(self, printer: QPrinter) -> None:
        if self.job.assessment:
            sheet = self.sheet(self.job.assessment)
            turns = self._with_pictures(self.job.assessment, lambda pictures: print_sheet(sheet, pictures, printer))
            work = LongWork(tr("Printing the sheet"), turns, lambda _: self.job.sheet_written(), self.job.failed.emit)
            self.job.workWanted.emit(work)

    def _ask_and_save(self, ending: str) -> None:
        name = self.job.case.title.lower().replace(" ", "-").replace(",", "") or self.job.case.garment
        offered = str(self.job.shop.sheet_path(f"job-sheet-{name}.{ending}"))
        path, _ = QFileDialog.getSaveFileName(self, tr("Save the sheet"), offered, f"*.{ending}")
        if path:
            self.save(Path(path))

    def save(self, path: Path) -> None:
        """Write the sheet; the file's ending says in which form: .pdf, .html or .txt."""
        if self.job.assessment is None:
            return
        know, assessment = self.job.knowledge, self.job.assessment
        sheet = self.sheet(assessment)
        made: dict[str, Callable[[dict[str, str]], bytes]] = {
            ".pdf": lambda pictures: sheet_pdf(know, assessment, sheet, pictures),
            ".html": lambda pictures: as_html(sheet, pictures).encode(),
            ".txt": lambda _: as_text(sheet).encode(),
        }
        content = made.get(path.suffix, made[".txt"])
        turns = self._with_pictures(assessment, lambda pictures: write_all({path: content(pictures)}))
        self.job.workWanted.emit(LongWork(tr("Writing the sheet"), turns, lambda _: self._written(path), self.job.failed.emit))

    def _written(self, path: Path) -> None:
        self.job.sheet_written()
        self.job.remarked.emit(tr("Written: {path}", path=path))

    def focus_first(self, reason: Qt.FocusReason) -> None:
        if self._empty.isVisibleTo(self):
            self._empty.button.setFocus(reason)
        else:
            (self.print_button if self._paper == "sheet" else self._guides.print_button).setFocus(reason)
