"""Marking guides in the window: looked at before they are printed, saved on both papers and as pictures."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QWidget

from fitdoctor.desk.guide_paper import paint_sheet, sheet_image
from fitdoctor.desk.pages.guide_pages import GuidePages
from fitdoctor.desk.parts.paper_page import SmallPage
from fitdoctor.desk.parts.text import Words
from fitdoctor.guides import Page
from fitdoctor.guides.shapes import Line, Text

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable, TableTop

pytest_plugins = ["tests.desk.table_top"]


def opened(table: MakeTable, which: str = "trousers") -> tuple[TableTop, GuidePages]:
    """The guides of a garment of the demo, opened from its plan."""
    top = table(which)
    top.go("plan")
    top.click("plan-guides")
    guides = top.page.findChild(GuidePages)
    assert guides is not None
    top.qtbot.waitUntil(lambda: bool(guides.sheets))
    top.settle()
    return top, guides


def test_print_at_full_size_leads_from_the_plan_to_a_picture_of_every_page(table: MakeTable) -> None:
    top, guides = opened(table)
    assert top.job.kept.step == "sheet"
    pages = [page for page in top.page.findChildren(SmallPage) if page.isVisible()]
    assert [page.number for page in pages] == list(range(1, len(guides.sheets) + 1))
    assert all(page.accessibleName() for page in pages)
    assert "100 %" in top.find(Words, "guides-print-right").text()
    assert "test square" in top.find(Words, "guides-print-right").text()


def test_a_page_that_is_pressed_is_shown_large(table: MakeTable) -> None:
    top, _ = opened(table)
    assert top.find(SmallPage, "guides-page-2").isChecked()
    top.click("guides-page-1")
    assert top.find(SmallPage, "guides-page-1").isChecked()
    assert not top.find(SmallPage, "guides-page-2").isChecked()
    large = top.find(QWidget, "guides-large")
    assert "Page 1" in large.findChildren(QWidget)[-1].accessibleName()


@pytest.mark.parametrize(("paper", "width", "height"), [("A4", 210.0, 297.0), ("Letter", 215.9, 279.4)])
def test_both_papers_can_be_saved(table: MakeTable, tmp_path: Path, paper: str, width: float, height: float) -> None:
    """ISO 216: A4 is 210 by 297 mm. US Letter is 8 1/2 by 11 in."""
    pypdf = pytest.importorskip("pypdf")
    top, guides = opened(table)
    top.click(f"guides-paper-{paper}")
    top.qtbot.waitUntil(lambda: bool(guides.sheets))
    guides.save(tmp_path / "guides.pdf")
    top.settle()
    box = pypdf.PdfReader(tmp_path / "guides.pdf").pages[0].mediabox
    assert float(box.width) * 25.4 / 72 == pytest.approx(width, abs=0.1)
    assert float(box.height) * 25.4 / 72 == pytest.approx(height, abs=0.1)


def test_saved_as_pictures_each_guide_has_a_file_with_its_letters(table: MakeTable, tmp_path: Path) -> None:
    top, guides = opened(table)
    guides.save(tmp_path / "guides.svg")
    top.settle()
    names = {file.name for file in tmp_path.glob("*.svg")}
    assert names == {f"guides-{guide.letters}.svg" for guide in guides.guides}


def test_a_folder_that_cannot_be_written_is_said_in_the_bar(table: MakeTable, tmp_path: Path) -> None:
    top, guides = opened(table)
    guides.save(tmp_path / "none" / "guides.pdf")
    top.settle()
    said = top.window.message.shown()
    assert said is not None
    assert "could not be written" in said[0]


def test_work_that_needs_no_guide_says_so(table: MakeTable) -> None:
    top = table("jacket")
    top.go("sheet")
    top.click("sheet-kind-guides")
    note = top.find(Words, "guides-note")
    top.qtbot.waitUntil(lambda: "No guide" in note.text())


@pytest.mark.usefixtures("qtbot")
def test_a_mm_of_a_guide_is_a_mm_on_the_printed_page() -> None:
    """At ten dots to the mm a line of 100 mm is 1000 dots long."""
    page = Page(210.0, 50.0, (Line(((20.0, 25.0), (120.0, 25.0)), "new"),))
    image = QImage(2100, 500, QImage.Format.Format_RGB32)
    image.fill(0xFFFFFFFF)
    painter = QPainter(image)
    paint_sheet(painter, page, 10.0)
    painter.end()
    dark = [x for x in range(2100) if image.pixelColor(x, 250).lightness() < 128]
    assert dark[-1] - dark[0] == pytest.approx(1000, abs=8)  # and the round ends of a line 0.7 mm strong


@pytest.mark.usefixtures("qtbot")
def test_words_of_a_guide_end_where_they_are_anchored() -> None:
    page = Page(100.0, 20.0, (Text((90.0, 14.0), "5/8 in", 6.0, "end"),))
    image = sheet_image(page, 1000, 1.0)
    dark = [x for x in range(1000) for y in range(60, 150) if image.pixelColor(x, y).lightness() < 128]
    assert 870 < max(dark) <= 905
