"""The seven pages ask and show; nothing is worked out beside the chain."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QScrollArea, QWidget

from fitdoctor.assess import assess
from fitdoctor.desk.pages.lines import by_frequency
from fitdoctor.desk.pages.measure import MeasurePage
from fitdoctor.desk.pages.narrow import NarrowPage
from fitdoctor.desk.pages.needs import needs_of, tag_of
from fitdoctor.desk.pages.sheet import SheetPage
from fitdoctor.desk.pages.shows import ShowsPage
from fitdoctor.desk.parts.cause_row import CauseRow
from fitdoctor.desk.parts.condition_row import ConditionRow
from fitdoctor.desk.parts.operation_list import StepRow
from fitdoctor.desk.parts.reason_note import ReasonNote
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.parts.verdict_head import VerdictHead
from fitdoctor.desk.steps import step_states
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.units import MM_PER_INCH

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable, TableTop

pytest_plugins = ["tests.desk.table_top"]

LEFT = Qt.MouseButton.LeftButton
FOLDS = "level-folds-under-back-band"


def text(top: TableTop, name: str) -> str:
    return top.find(Words, name).text()


# ---- the garment


def test_a_new_garment_is_chosen_by_its_picture_and_drawn(table: MakeTable) -> None:
    top = table("new")
    top.go("garment")
    assert top.find(QWidget, "tape").isVisible()
    top.click("garment-kind-jacket")
    assert top.job.case.garment == "jacket"
    assert top.find(QWidget, "garment-figure").isVisible()
    assert "jacket" in step_states(top.job.knowledge, top.job.kept, top.job.assessment)[0].stands


def test_facts_are_asked_once_the_work_turns_on_them_and_keep_their_place(table: MakeTable) -> None:
    top = table("trousers")
    top.go("garment")
    asked = [w.objectName() for w in top.page.findChildren(QWidget) if w.objectName().startswith("garment-fact-") and w.isVisible()]
    rows = [name for name in asked if name.removeprefix("garment-fact-") in top.job.knowledge.features]
    assert "garment-fact-back-pockets" in rows
    top.click("garment-fact-back-pockets-two")
    assert top.job.case.facts["back-pockets"] == "two"
    assert top.find(QAbstractButton, "garment-fact-back-pockets-two").isChecked()


# ---- what shows


def test_pointing_at_a_place_offers_its_lines_and_a_line_is_noted_and_drawn(table: MakeTable) -> None:
    top = table("trousers")
    page = top.go("shows")
    assert isinstance(page, ShowsPage)
    figure = page.plate.figure
    lowest = figure.zones()[-1]
    assert lowest != figure.chosen()
    place = figure.zone_item(lowest).middles()[0]
    QTest.mouseClick(figure.viewport(), LEFT, Qt.KeyboardModifier.NoModifier, figure.mapFromScene(QPointF(place)))
    top.settle()
    line = page.lines.choices[0]
    assert top.job.knowledge.symptoms[line.entry].zone == lowest
    QTest.mouseClick(line, LEFT)
    top.settle()
    assert line.entry in top.job.case.seen
    assert page.lines.choices[0].noted == f"noted as {len(top.job.case.seen)}"
    assert line.entry in [text.text.entry for text in figure.call_outs.items]


def test_a_line_is_taken_back_where_it_was_noted_and_that_can_be_undone(table: MakeTable) -> None:
    top = table("trousers")
    top.go("shows")
    top.click(f"shows-noted-drop-{FOLDS}")
    assert FOLDS not in top.job.case.seen
    assert "removed" in text(top, "foot-kept")
    top.click("foot-undo")
    assert FOLDS in top.job.case.seen


def test_the_places_are_there_as_words_too(table: MakeTable) -> None:
    top = table("trousers")
    page = top.go("shows")
    assert isinstance(page, ShowsPage)
    top.click("shows-places")
    words = {w.objectName() for w in page.findChildren(QAbstractButton) if w.objectName().startswith("shows-zone-") and w.isVisible()}
    assert words == {f"shows-zone-{zone}" for zone in page.plate.figure.zones()}
    lowest = page.plate.figure.zones()[-1]
    top.click(f"shows-zone-{lowest}")
    assert page.plate.figure.chosen() == lowest


def test_what_is_typed_finds_lines_and_escape_goes_back(table: MakeTable) -> None:
    top = table("trousers")
    page = top.go("shows")
    assert isinstance(page, ShowsPage)
    field = top.find(QLineEdit, "shows-find")
    QTest.keyClicks(field, "folds under the waistband at the back")
    top.settle()
    assert page.lines.choices[0].entry == FOLDS
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert field.text() == ""


def test_own_words_are_kept_as_seen_and_not_explained(table: MakeTable) -> None:
    top = table("trousers")
    top.go("shows")
    field = top.find(QLineEdit, "shows-own-words")
    QTest.keyClicks(field, "the left leg hums")
    assert top.job.kept.drafts["shows-own-words"] == "the left leg hums", "not lost in a crash"
    QTest.keyClick(field, Qt.Key.Key_Return)
    assert "Seen: the left leg hums" in top.job.case.notes
    top.click("shows-own-drop-0")
    assert "hums" not in top.job.case.notes


def test_two_lines_are_set_side_by_side(table: MakeTable) -> None:
    top = table("trousers")
    page = top.go("shows")
    assert isinstance(page, ShowsPage)
    top.click("shows-compare")
    assert len(page.lines.choices) == 2
    assert text(top, "shows-compare-how")
    top.click("shows-compare-back")
    assert len(page.lines.choices) != 2 or not page.findChildren(Words, "shows-compare-how")


def test_nothing_else_shows_is_said_for_one_side(table: MakeTable) -> None:
    top = table("jacket")
    top.go("shows")
    top.click("shows-view-front")
    top.click("shows-over")
    assert set(top.job.case.looked) == {"back", "front"}
    assert "looked over" in top.find(QAbstractButton, "shows-view-front").accessibleName()


def test_lines_stand_in_the_order_of_how_often_they_show(knowledge: Knowledge) -> None:
    at_band = [s for s in knowledge.symptoms_of("slacks").values() if s.zone == "under-band" and s.view == "back"]
    assert by_frequency(knowledge, "slacks", at_band)[0].id == FOLDS


# ---- narrow it down


def test_an_answer_moves_the_causes_and_the_next_question_comes(table: MakeTable) -> None:
    top = table("jacket")
    page = top.go("narrow")
    assert isinstance(page, NarrowPage)
    assert top.job.assessment is not None
    asked = top.job.assessment.next[0]
    before = [cause.probability for cause in top.job.assessment.diagnosis.causes]
    top.click("narrow-answer-yes")
    assert top.job.assessment is not None
    assert [cause.probability for cause in top.job.assessment.diagnosis.causes] != before
    assert asked.id in (*top.job.case.answers, *top.job.case.seen)
    assert top.job.assessment.next[0].id != asked.id


def test_the_page_shows_what_the_chain_says_and_nothing_else(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")
    found = assess(top.job.knowledge, top.job.case, top.job.shop)
    rows = [row for row in top.page.findChildren(CauseRow) if row.isVisible()]
    ranked = [(cause.id, cause.word) for cause in found.diagnosis.causes]
    assert [(row.cause.id, row.cause.word) for row in rows] == ranked[: len(rows)]


def test_a_key_answers_and_the_focus_goes_to_the_next_question(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")
    top.window.activateWindow()
    top.qtbot.waitUntil(top.window.isActiveWindow)
    assert top.job.assessment is not None
    asked = top.job.assessment.next[0].id
    QTest.keyClicks(top.window.focusWidget(), "n")
    top.settle()
    assert asked in (*top.job.case.answers, *top.job.case.not_seen)
    assert top.window.focusWidget().objectName().startswith("narrow-answer")


def test_cannot_tell_is_an_answer_and_is_not_asked_again(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")
    asked = []
    for _ in range(3):
        assert top.job.assessment is not None
        asked.append(top.job.assessment.next[0].id)
        top.click("narrow-answer-not-known")
    assert len(set(asked)) == 3
    assert {*top.job.case.answers, *top.job.case.unsure} == set(asked)


def test_another_check_is_taken_in_hand_and_an_answer_taken_back(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")
    assert top.job.assessment is not None
    other = top.job.assessment.next[1].id
    top.click(f"narrow-other-{other}")
    top.click("narrow-answer-no")
    assert other in (*top.job.case.answers, *top.job.case.not_seen)
    top.click(f"narrow-given-{other}")
    assert other not in (*top.job.case.answers, *top.job.case.not_seen)


def test_one_cause_is_open_at_a_time_and_says_why(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")
    second = [row for row in top.page.findChildren(CauseRow) if row.isVisible()][1].cause.id
    top.click(f"narrow-cause-{second}-name")
    assert top.find(QAbstractButton, f"narrow-treat-{second}").isVisible()
    top.click(f"narrow-why-{second}")
    note = next(note for note in top.page.findChildren(ReasonNote) if note.isVisible())
    assert top.job.knowledge.causes[second].why in [words.text() for words in note.findChildren(Words)]
    top.click(f"narrow-treat-{second}")
    assert second in top.job.case.treat


def test_numbers_are_shown_only_when_asked_for(table: MakeTable) -> None:
    top = table("jacket")
    top.go("narrow")

    def words() -> list[str]:
        return [w.text() for w in top.page.findChildren(Words) if w.isVisible()]

    assert not any(word.endswith("%") for word in words())
    top.click("narrow-numbers")
    assert any(word.endswith("%") for word in words())


# ---- measure


def test_a_length_typed_before_its_sense_is_chosen_waits(table: MakeTable) -> None:
    top = table("trousers")
    top.go("measure")
    top.click("measure-list-hip-excess")
    QTest.keyClicks(top.find(QLineEdit, "measure-hip-excess-field"), "1/2")
    assert "hip-excess" not in top.job.case.measured
    top.click("measure-hip-excess-sense-depth")
    assert top.job.case.measured["hip-excess"].mm == pytest.approx(MM_PER_INCH)
    assert "in all, 1 in" in text(top, "measure-hip-excess-meant")


def test_depth_and_in_all_are_told_apart_when_one_comes_back(table: MakeTable) -> None:
    top = table("trousers")
    page = top.go("measure")
    assert isinstance(page, MeasurePage)
    top.click("measure-list-tuck-at-centre-back")
    top.click("measure-tuck-at-centre-back-sense-depth")
    assert top.job.case.measured["tuck-at-centre-back"].mm == pytest.approx(2 * 5 / 8 * MM_PER_INCH)
    top.go("plan")
    top.go("measure")
    top.click("measure-list-tuck-at-centre-back")
    assert top.find(QLineEdit, "measure-tuck-at-centre-back-field").text() == "5/8"


def test_what_is_no_length_stands_beside_the_field_in_a_sentence(table: MakeTable) -> None:
    top = table("trousers")
    top.go("measure")
    top.click("measure-list-inseam-crotch-to-knee")
    field = top.find(QLineEdit, "measure-inseam-crotch-to-knee-field")
    field.selectAll()
    QTest.keyClicks(field, "14 1/")
    assert "14 1/" in text(top, "measure-inseam-crotch-to-knee-wrong")


def test_half_a_length_is_there_again_after_going_away(table: MakeTable) -> None:
    top = table("trousers")
    top.go("measure")
    top.click("measure-list-hip-excess")
    QTest.keyClicks(top.find(QLineEdit, "measure-hip-excess-field"), "1 1/")
    top.go("plan")
    top.go("measure")
    top.click("measure-list-hip-excess")
    assert top.find(QLineEdit, "measure-hip-excess-field").text() == "1 1/"
    assert "hip-excess" not in top.job.case.measured


def test_how_exactly_one_measured_can_be_said(table: MakeTable) -> None:
    top = table("trousers")
    top.go("measure")
    top.click("measure-list-inseam-crotch-to-knee")
    top.click("measure-inseam-crotch-to-knee-give-change")
    quarter = repr(MM_PER_INCH / 16 * 4)
    top.click(f"measure-inseam-crotch-to-knee-gives-row-{quarter}")
    assert top.job.case.measured["inseam-crotch-to-knee"].give_mm == pytest.approx(MM_PER_INCH / 4)
    assert text(top, "measure-inseam-crotch-to-knee-give") == "Give or take 1/4 in."


def test_a_doubtful_length_is_questioned_and_changed_on_a_press(table: MakeTable) -> None:
    top = table("trousers")
    top.go("measure")
    top.click("measure-list-tuck-at-centre-back")
    field = top.find(QLineEdit, "measure-tuck-at-centre-back-field")
    field.selectAll()
    QTest.keyClicks(field, "9")
    top.settle()
    assert "Did you mean" in text(top, "measure-tuck-at-centre-back-doubt")
    top.click("measure-tuck-at-centre-back-change")
    assert top.job.case.measured["tuck-at-centre-back"].mm == pytest.approx(9 * MM_PER_INCH / 16)


def test_marks_follow_from_what_is_measured(table: MakeTable) -> None:
    top = table("dress")
    top.go("measure")
    assert "each dart 3/8 in, in all 3/4 in" in top.find(QAbstractButton, "measure-mark-A").accessibleName()


# ---- can it be done


def test_the_verdict_and_its_needs_are_those_of_the_chain(table: MakeTable) -> None:
    top = table("trousers")
    top.go("done")
    found = top.job.assessment
    assert found is not None
    assert top.find(VerdictHead, "done-verdict").property("state") == found.verdict.level
    rows = {row.need.id: row.need.tag for row in top.page.findChildren(ConditionRow) if row.isVisible()}
    said = {state.condition: tag_of(state)[0] for state in needs_of(found)}
    assert rows.items() <= said.items()
    assert {id_ for id_, tag in said.items() if tag != "met"} <= rows.keys()


def test_what_is_not_known_is_answered_where_it_stands(table: MakeTable) -> None:
    top = table("trousers")
    top.go("done")
    row = next(row for row in top.page.findChildren(ConditionRow) if row.isVisible() and row.need.tag == "not-known")
    press = next(b for b in row.findChildren(QAbstractButton) if b.objectName().startswith("done-ask-"))
    before = dict(top.job.case.facts)
    QTest.mouseClick(press, LEFT)
    assert top.job.case.facts != before or top.job.case.answers


def test_the_note_in_the_margin_opens_by_its_key_and_names_who_says_so(table: MakeTable) -> None:
    top = table("trousers")
    top.go("done")
    row = next(row for row in top.page.findChildren(ConditionRow) if row.isVisible())
    QTest.keyClick(row.why, Qt.Key.Key_W)
    assert row.note_is_open()
    words = [w.text() for w in row.findChildren(Words)]
    assert row.need.why in words
    assert any(row.need.who[0].line in word for word in words)
    QTest.keyClick(row.why, Qt.Key.Key_W)
    assert not row.note_is_open()


def test_another_way_is_chosen(table: MakeTable) -> None:
    top = table("dress")
    top.go("done")
    found = top.job.assessment
    assert found is not None
    assert found.choices[0].chosen is not None
    other = next(way.method for way in found.choices[0].ways if way.method != found.choices[0].chosen.method)
    top.click(f"done-way-{found.choices[0].cause}-{other}")
    assert top.job.case.methods[found.choices[0].cause] == other


# ---- plan and sheet


def test_operations_are_ticked_off_and_the_tape_counts_them(table: MakeTable) -> None:
    top = table("dress")
    top.go("plan")
    first = next(row for row in top.page.findChildren(StepRow) if row.isVisible())
    QTest.mouseClick(first, LEFT, Qt.KeyboardModifier.NoModifier, QPoint(18, first.height() // 2))
    top.settle()
    assert top.job.case.done == (first.step.id,)
    assert "1 of" in step_states(top.job.knowledge, top.job.kept, top.job.assessment)[5].stands


def test_a_page_opens_at_its_top_however_long_it_is(table: MakeTable) -> None:
    top = table("new", size=(1024, 700))
    top.job.choose_garment("dress")
    top.job.note("strain-at-dress-hip")
    top.job.answer("pulled-down-binds-at-hip", "yes")
    top.job.measure("dress-hip-short-by", MM_PER_INCH)
    top.job.measure("bodice-side-allowance", MM_PER_INCH / 4)
    top.go("done")
    bar = top.find(QScrollArea, "done-scroll").verticalScrollBar()
    assert bar.maximum() > 500
    assert bar.value() == 0


def test_an_empty_plan_says_what_is_lacking_and_leads_there(table: MakeTable) -> None:
    top = table("jacket")
    assert top.job.assessment
    assert not top.job.assessment.choices
    top.go("plan")
    assert "No cause stands out yet" in text(top, "plan-empty-words")
    top.click("plan-empty-button")
    assert top.job.kept.step == "narrow"
    for symptom in top.job.case.seen:
        top.job.drop_note(symptom)
    top.go("plan")
    assert "Note what shows first" in text(top, "plan-empty-words")
    top.click("plan-empty-button")
    assert top.job.kept.step == "shows"


def test_the_plan_is_that_of_the_chain_in_its_order(table: MakeTable) -> None:
    top = table("dress")
    top.go("plan")
    found = top.job.assessment
    assert found is not None
    rows = [row.step.id for row in top.page.findChildren(StepRow) if row.isVisible()]
    assert rows == [operation.id for operation in found.plan.operations]


@pytest.mark.parametrize(("ending", "head"), [(".pdf", b"%PDF"), (".html", b"<!DOCTYPE html>"), (".txt", b"JOB SHEET")])
def test_the_sheet_is_written_in_three_forms(table: MakeTable, tmp_path: Path, ending: str, head: bytes) -> None:
    top = table("dress")
    page = top.go("sheet")
    assert isinstance(page, SheetPage)
    target = tmp_path / f"sheet{ending}"
    page.save(target)
    top.settle()
    assert target.read_bytes().startswith(head)
    assert top.job.kept.written
    assert str(target) in text(top, "foot-kept")


def test_a_sheet_that_cannot_be_written_says_so_and_what_to_do(table: MakeTable, tmp_path: Path) -> None:
    top = table("dress")
    page = top.go("sheet")
    assert isinstance(page, SheetPage)
    page.save(tmp_path / "no-such-folder" / "sheet.txt")
    top.settle()
    said = top.window.message.shown()
    assert said is not None
    assert "could not be written" in said[0]
    assert "another folder" in said[0]


def test_what_is_left_out_is_not_on_the_sheet_but_safety_stays(table: MakeTable) -> None:
    top = table("dress")
    page = top.go("sheet")
    assert isinstance(page, SheetPage)
    assert top.job.assessment is not None
    whole = page.sheet(top.job.assessment)
    for part in ("measured", "causes", "conditions", "cautions", "sources"):
        top.click(f"sheet-part-{part}")
    less = page.sheet(top.job.assessment)
    assert (less.measured, less.answers, less.causes, less.conditions, less.cautions, less.sources) == ((), (), (), (), (), ())
    assert less.safety == whole.safety


# ---- a step taken too early


@pytest.mark.parametrize("step", ["shows", "narrow", "measure", "done", "plan", "sheet"])
def test_a_step_taken_too_early_says_what_it_lacks_and_leads_there(table: MakeTable, step: str) -> None:
    top = table("new")
    top.go(step)
    assert text(top, f"{step}-empty-words")
    top.click(f"{step}-empty-button")
    assert top.page.step != step
