"""Every mark has its reduced diagram: where it is measured, where it is worked, and on the sheet."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from pytestqt.qtbot import QtBot

from fitdoctor.desk.look import look_of
from fitdoctor.desk.pages.marks import lettered
from fitdoctor.desk.paper import sheet_html, sheet_pictures
from fitdoctor.desk.parts.mark_diagram import MarkDiagram
from fitdoctor.desk.parts.marks_table import MarkRow
from fitdoctor.sheet import SheetMark

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable

pytest_plugins = ["tests.desk.table_top"]


def test_the_measure_page_shows_how_a_mark_runs_and_says_it(table: MakeTable) -> None:
    top = table("dress")
    top.go("measure")
    said = top.find(MarkDiagram, "measure-diagram").accessibleName()
    row = top.page.findChildren(MarkRow)[0]
    assert said.startswith(f"{row.mark.letter}, reduced: {row.mark.do}, {row.mark.how_much}")


def test_the_plan_shows_a_diagram_for_each_mark_of_the_step_in_hand(table: MakeTable) -> None:
    top = table("trousers")
    top.go("plan")
    assert top.job.assessment is not None
    letters = [letter for letter, _, mark in lettered(top.job.assessment) if len(mark.old) > 1]
    assert letters
    shown = [d.objectName() for d in top.page.findChildren(MarkDiagram) if d.isVisible()]
    assert shown == [f"plan-diagram-{letter}" for letter in letters]


def test_the_sheet_carries_a_diagram_for_each_mark(table: MakeTable) -> None:
    top = table("dress")
    found = top.job.assessment
    assert found is not None
    pictures = sheet_pictures(top.job.knowledge, found)
    html = sheet_html(top.job.knowledge, found).decode()
    for letter, _, mark in lettered(found):
        assert (f"diagram-{letter}" in pictures) == (len(mark.old) > 1)
        assert (pictures.get(f"diagram-{letter}", "?") in html) == (len(mark.old) > 1)


def test_both_lines_of_a_diagram_are_in_sight(table: MakeTable) -> None:
    """The new line in the thread's colour, and nothing of it at the very edge."""
    top = table("trousers", look_of(dark=True))
    top.go("measure")
    drawn = top.find(MarkDiagram, "measure-diagram")
    image = drawn.grab().toImage()
    thread = drawn.look.colour("thread").rgb()
    seen = [(x, y) for x in range(image.width()) for y in range(image.height()) if image.pixel(x, y) == thread]
    assert len(seen) > 40
    assert all(3 < x < image.width() - 3 and 3 < y < image.height() - 3 for x, y in seen)


def test_a_row_is_as_high_as_the_note_below_it_needs(qtbot: QtBot) -> None:
    look = look_of(dark=False)
    mark = SheetMark("A", "hem", "all round", "lower", "in all 1/2 in", "shell")
    assumed = "from a standard block: " + "measure the hem " * 12
    plain, noted = MarkRow(look, mark, "plain"), MarkRow(look, replace(mark, assumed=assumed), "noted")
    for row in (plain, noted):
        qtbot.addWidget(row)
    lines = (noted.heightForWidth(640) - plain.heightForWidth(640)) / look.line("small")
    assert lines > 2
    assert noted.heightForWidth(320) > noted.heightForWidth(640)
