"""The picture after the remedy: beside the mechanism, at a try-on, on the sheet, on a method's page of the handbook."""

from __future__ import annotations

from typing import TYPE_CHECKING

from fitdoctor.desk.handbook.plates import plates_of
from fitdoctor.desk.pages.causes import Causes
from fitdoctor.desk.pages.step_marks import StepMarks
from fitdoctor.desk.pages.why_pictures import moved, remedy
from fitdoctor.desk.paper import sheet_html, sheet_pictures
from fitdoctor.desk.parts.operation_list import OperationList
from fitdoctor.desk.parts.picture import SmallPicture
from fitdoctor.desk.parts.text import Words
from fitdoctor.knowledge.knowledge import Knowledge

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable

pytest_plugins = ["tests.desk.table_top"]
CAUSE, METHOD = "back-longer-than-wearer", "lower-back-waist-seam"


def test_why_the_cloth_does_that_is_answered_by_the_cause_and_by_what_comes_after(table: MakeTable) -> None:
    top = table("dress")
    top.go("narrow")
    causes = top.page.findChild(Causes)
    assert causes is not None
    assert top.job.assessment is not None
    cause = top.job.assessment.treat[0]
    top.click(f"narrow-why-{cause}")
    said = [words.text() for words in causes.findChildren(Words) if words.isVisible()]
    assert "Why it shows" in said
    method = top.job.knowledge.methods[top.job.assessment.methods[0]]
    assert f"After: {method.title[:1].lower()}{method.title[1:]}" in said
    pictures = [picture for picture in causes.findChildren(SmallPicture) if picture.isVisible()]
    assert len(pictures) == 2
    assert all(picture.accessibleName() for picture in pictures)


def test_the_way_shown_is_the_one_chosen_or_else_the_first_that_alters(table: MakeTable) -> None:
    top = table("trousers")
    know = top.job.knowledge
    assert top.job.assessment is not None
    for choice in top.job.assessment.choices:
        chosen = remedy(top.job, know.causes[choice.cause])
        assert choice.chosen is not None
        assert chosen is not None
        assert chosen.id == choice.chosen.method
    other = next(c for c in know.causes.values() if c.id not in top.job.assessment.treat and know.methods_for(c.id, "mens-trousers"))
    method = remedy(top.job, other)
    assert method is None or (method.kind == "alteration" and moved(top.job, method) == ())


def test_a_try_on_shows_how_it_should_hang_now(table: MakeTable) -> None:
    top = table("trousers")
    top.go("plan")
    assert top.job.assessment is not None
    operations = top.job.assessment.plan.operations
    number, step = next((n, o) for n, o in enumerate(operations, 1) if o.try_on)
    steps, marks = top.page.findChild(OperationList), top.page.findChild(StepMarks)
    assert steps is not None
    assert marks is not None
    steps.takenInHand.emit(step.id)
    top.settle()
    said = [words.text() for words in marks.findChildren(Words) if words.isVisible()]
    assert f"How it should hang at step {number}" in said


def test_the_sheet_shows_the_garment_before_and_after(table: MakeTable) -> None:
    top = table("dress")
    found = top.job.assessment
    assert found is not None
    pictures = sheet_pictures(top.job.knowledge, found)
    assert {"figure", "after"} <= set(pictures)
    assert pictures["after"] in sheet_html(top.job.knowledge, found).decode()


def test_no_work_chosen_has_no_picture_after(table: MakeTable) -> None:
    top = table("jacket")
    found = top.job.assessment
    assert found is not None
    assert ("after" in sheet_pictures(top.job.knowledge, found)) == bool(found.methods)


def test_a_methods_page_shows_why_the_cause_shows_and_the_garment_after_it(knowledge: Knowledge) -> None:
    plates = plates_of(knowledge, knowledge.methods[METHOD], "slacks")
    assert len(plates) == 2
    (before, _), (after, words) = plates
    assert before.scene.drawings
    assert after.scene.drawings == ()
    assert words.startswith("After it")
    assert len(plates_of(knowledge, knowledge.causes[CAUSE], "slacks")) == 1
