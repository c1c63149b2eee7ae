"""The job sheet says what the chain found, in three forms alike."""

from __future__ import annotations

import html
import re
from dataclasses import replace

import pytest

from fitdoctor.assess import assess
from fitdoctor.case import Answer, Case, Measured
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files, read_case_file
from fitdoctor.sheet import Sheet, as_html, as_text, write_sheet
from fitdoctor.shop import Shop


def demo_sheet(knowledge: Knowledge, nth: int, shop: Shop | None = None) -> Sheet:
    case, _ = read_case_file(demo_files()[nth], knowledge)
    return write_sheet(knowledge, assess(knowledge, case, shop or Shop()))


def words(page: str) -> str:
    body = page.split("</style>")[1].replace("<sup>", " ").replace("</sup>⁄<sub>", "/")
    return re.sub(r"\s+", " ", re.sub(r"<[^>]*>", "", body))


def test_fractions_are_set_in_what_is_read_and_plain_in_what_is_spoken(knowledge: Knowledge) -> None:
    page = as_html(replace(demo_sheet(knowledge, 0), title="Coat, 1/2 in short"), {"diagram-A": "a.png"})
    assert "<title>Job sheet: Coat, 1/2 in short</title>" in page
    assert re.search(r"<sup>\d+</sup>⁄<sub>(2|4|8|16)</sub>", page)
    assert not re.search(r">[^<]*\d/(2|4|8|16) in", page.split("<body>")[1])
    assert all("<" not in alt for alt in re.findall(r'alt="([^"]*)"', page))
    assert any(re.search(r"\d/\d+ in", alt) for alt in re.findall(r'alt="([^"]*)"', page))


@pytest.mark.parametrize("nth", [0, 1, 2])
def test_page_and_plain_text_say_the_same_work(knowledge: Knowledge, nth: int) -> None:
    sheet = demo_sheet(knowledge, nth)
    page, text = words(as_html(sheet)), re.sub(r"\s+", " ", as_text(sheet))
    for stage in sheet.stages:
        for step in stage.steps:
            assert html.escape(step.text, quote=False) in page
            assert step.text in text
    assert sheet.verdict in page
    assert sheet.verdict.lower() in text.lower()


@pytest.mark.parametrize("unit", ["in", "cm"])
def test_the_row_of_stations_names_its_unit_once(knowledge: Knowledge, unit: str) -> None:
    sheet = demo_sheet(knowledge, 0, Shop(unit="in" if unit == "in" else "cm"))
    rows = [mark for mark in sheet.marks if len(mark.stations) > 2]
    assert rows
    for mark in rows:
        assert mark.unit == unit
        assert not [figure for pair in mark.stations for figure in pair if figure.endswith(unit)]


def test_what_cannot_be_done_has_no_work_and_no_marks_and_the_other_way_is_named(knowledge: Knowledge) -> None:
    case = Case(
        garment="dress",
        seen=("strain-at-dress-hip",),
        answers={"pulled-down-binds-at-hip": "yes"},
        measured={"dress-hip-short-by": Measured(25.4), "bodice-side-allowance": Measured(6.4)},
    )
    found = assess(knowledge, case)
    sheet = write_sheet(knowledge, found)
    assert found.verdict.level == "CANNOT"
    assert not found.plan.operations
    assert not sheet.marks
    assert ("Take the size that fits the hip", "another garment") in sheet.other_ways
    assert "Take the size that fits the hip" in as_text(sheet)
    assert "Take the size that fits the hip" in as_html(sheet)


def test_a_tie_whose_work_is_the_same_is_treated(knowledge: Knowledge) -> None:
    answers: dict[str, Answer] = {"gap-only-behind": "yes", "slack-at-band-only": "yes"}
    found = assess(knowledge, Case(garment="slacks", seen=("back-band-stands-away",), answers=answers))
    first, second = found.diagnosis.causes[:2]
    assert abs(first.probability - second.probability) < 0.1
    assert found.treat == (first.id,)
    assert found.plan.operations
