"""Leaving a cause alone is a way like the others: chosen, undone, said on the tape and on the sheet."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from msgspec.structs import replace

from fitdoctor.assess import assess
from fitdoctor.desk.parts.method_choice import MethodChoice
from fitdoctor.desk.parts.text import Words
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import demo_files, read_case_file, write_case_file
from fitdoctor.sheet import as_html, as_text, write_sheet

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable, TableTop

pytest_plugins = ["tests.desk.table_top"]


def on_done(table: MakeTable) -> tuple[TableTop, str]:
    """The page Can it be done of a garment with one cause, and that cause."""
    top = table("dress")
    top.go("done")
    assert top.job.assessment is not None
    (cause,) = top.job.assessment.treat
    return top, cause


def chosen(top: TableTop) -> list[str]:
    return [way.objectName() for way in top.page.findChildren(MethodChoice) if way.isVisible() and way.isChecked()]


def test_a_single_cause_can_be_left_alone_and_is_treated_again_by_undo(table: MakeTable) -> None:
    top, cause = on_done(table)
    before, ways = top.job.case, chosen(top)
    top.find(MethodChoice, f"done-leave-{cause}").click()
    top.settle()
    assert top.job.assessment is not None
    assert top.job.assessment.treat == ()
    assert top.job.assessment.plan.operations == ()
    assert top.job.assessment.verdict.words == "Leave it alone"
    assert chosen(top) == [f"done-leave-{cause}"]
    assert "Left alone" in top.find(Words, "foot-kept").text()
    top.click("foot-undo")
    assert top.job.case == before
    assert chosen(top) == ways


def test_a_way_that_is_chosen_afterwards_is_treated_again(table: MakeTable) -> None:
    top, cause = on_done(table)
    top.find(MethodChoice, f"done-leave-{cause}").click()
    top.settle()
    way = next(way for way in top.page.findChildren(MethodChoice) if way.isVisible() and way.way.method)
    way.click()
    top.settle()
    assert top.job.assessment is not None
    assert top.job.assessment.treat == (cause,)
    assert top.job.assessment.methods == (way.way.method,)
    assert top.job.case.left_alone == ()


def test_choosing_it_twice_changes_nothing_more(table: MakeTable) -> None:
    top, cause = on_done(table)
    for _ in range(2):
        top.find(MethodChoice, f"done-leave-{cause}").click()
        top.settle()
        assert chosen(top) == [f"done-leave-{cause}"]
    assert top.job.case.left_alone == (cause,)


@pytest.mark.parametrize(("step", "says"), [("measure", "nothing to measure"), ("plan", "nothing to plan")])
def test_the_steps_after_it_say_so_and_lead_back(table: MakeTable, step: str, says: str) -> None:
    top, cause = on_done(table)
    top.job.treat(cause, False)
    top.go(step)
    assert says in top.find(Words, f"{step}-empty-words").text()
    top.click(f"{step}-empty-button")
    assert top.page.step == "done"


def test_the_tape_shows_it_as_settled(table: MakeTable) -> None:
    top, cause = on_done(table)
    top.job.treat(cause, False)
    stands = {state.id: (state.stands, state.thread) for state in top.window.tape.steps}
    assert stands["done"] == ("leave it alone", "sewn")
    assert stands["plan"] == ("no work", "sewn")


def test_the_box_on_the_page_of_causes_says_the_same(table: MakeTable) -> None:
    top, cause = on_done(table)
    top.job.treat(cause, False)
    top.job.treat(cause, True)
    assert top.job.assessment is not None
    assert top.job.assessment.treat == (cause,)


def test_the_sheet_says_that_it_is_left_alone_by_choice(knowledge: Knowledge) -> None:
    case, _ = read_case_file(demo_files()[0], knowledge)
    (cause,) = assess(knowledge, case).treat
    sheet = write_sheet(knowledge, assess(knowledge, replace(case, left_alone=(cause,))))
    line = f"Left alone by choice: {knowledge.causes[cause].title}"
    assert line in as_text(sheet)
    assert "Left alone by choice" in as_html(sheet)
    assert "No cause to treat yet" not in as_text(sheet)
    assert not sheet.stages


def test_of_two_causes_the_other_is_still_worked_on(knowledge: Knowledge) -> None:
    case, _ = read_case_file(demo_files()[0], knowledge)
    (cause,) = assess(knowledge, case).treat
    other = next(c.id for c in assess(knowledge, case).diagnosis.causes if c.id != cause and knowledge.methods_for(c.id, case.garment))
    found = assess(knowledge, replace(case, treat=(cause, other), left_alone=(cause,)))
    assert found.treat == (other,)
    assert found.left_alone == (cause,)
    assert found.verdict.level != "LEAVE_ALONE" or "choice" not in found.verdict.sentence


def test_what_is_left_alone_comes_through_a_case_file(knowledge: Knowledge, tmp_path: Path) -> None:
    case, _ = read_case_file(demo_files()[0], knowledge)
    (cause,) = assess(knowledge, case).treat
    file = tmp_path / "case.yaml"
    file.write_text(write_case_file(replace(case, left_alone=(cause,))))
    again, problems = read_case_file(file, knowledge)
    assert problems == []
    assert again.left_alone == (cause,)
