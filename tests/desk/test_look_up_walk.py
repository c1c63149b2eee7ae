"""A fitter checks one caution in the middle of a job: two keystrokes to it, all it says, and on to what it touches and the cases."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from fitdoctor.desk.handbook.print_page import page_document
from fitdoctor.desk.parts.text import Words
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.watching import watched

if TYPE_CHECKING:
    from tests.desk.reading_chair import Reader

pytest_plugins = ["tests.desk.reading_chair"]


def test_dart_holes_then_enter_says_what_is_forbidden_why_how_to_see_it_what_instead_and_every_method(
    reader: Reader, knowledge: Knowledge
) -> None:
    reader.fitting.job.go_to("measure")
    reader.settle()
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Return)
    condition = knowledge.conditions["dart-ends-not-punched"]
    assert reader.said("look-up-title") == condition.title
    said = reader.all_said()
    for part in ("Forbids the work.", condition.because, condition.ask, condition.at_the_rack, condition.instead):
        assert part
        assert part in said
    touched = list(watched(knowledge, condition))
    assert touched
    for method in touched:
        link = reader.there(f"look-up-link-{method.id}")
        assert link is not None
        assert link.accessibleName() == method.title
    reader.keys(Qt.Key.Key_Escape)
    assert reader.there("page-measure") is not None


def test_from_a_cause_to_a_case_it_was_used_in_and_back(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.look_up.show_entry(("causes", "hips-too-small"))
    reader.settle()
    reader.press("look-up-link-twin-vents-gape-hips-tight")
    case = knowledge.cases["twin-vents-gape-hips-tight"]
    assert reader.said("look-up-title") == case.title
    assert reader.said("look-up-over") == "Solved cases"
    assert reader.there("look-up-plate") is not None
    assert reader.there("look-up-map-turn") is None
    reader.press("look-up-link-hips-too-small")
    reader.keys(Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    reader.keys(Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert reader.look_up.trail.here == ("causes", "hips-too-small")


def test_a_source_is_found_opened_and_leads_to_what_cites_it(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.type("usda fitting hips")
    reader.keys(Qt.Key.Key_Return)
    source = knowledge.sources["usda-fitting-dresses-hips"]
    assert reader.said("look-up-title") == source.title
    assert source.by in reader.all_said()
    reader.press("look-up-link-strain-across-seat")
    assert reader.look_up.trail.here == ("symptoms", "strain-across-seat")


@pytest.mark.parametrize(
    "key", [("causes", "hips-too-small"), ("methods", "take-in-waist-at-centre-back"), ("symptoms", "level-folds-under-back-band")]
)
def test_what_is_said_differently_stands_side_by_side_on_the_page_and_on_paper(reader: Reader, key: tuple[str, str]) -> None:
    reader.open()
    reader.look_up.show_entry(key)
    reader.settle()
    page = reader.look_up.open_page()
    assert page is not None
    assert page.opposed
    printed = page_document(page, "", None).toPlainText()
    for number, matter in enumerate(page.opposed):
        beside = reader.there(f"look-up-beside-{number}")
        assert beside is not None
        shown = "\n".join(words.said() for words in beside.findChildren(Words)).lower()
        for told in matter.said:
            assert told.says.lower() in shown
            assert told.says in printed
    for case in page.used_in:
        assert case.title in printed


def test_the_focus_is_in_the_field_whenever_one_comes_back(reader: Reader) -> None:
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Escape)
    reader.open()
    focus = QApplication.focusWidget()
    assert focus is not None
    assert focus.objectName() == "look-up-field"
