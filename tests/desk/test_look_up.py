"""Look it up, by the keyboard and by the mouse."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication

from fitdoctor.desk.window import PLACES
from fitdoctor.knowledge.knowledge import Knowledge

if TYPE_CHECKING:
    from tests.desk.reading_chair import Reader

pytest_plugins = ["tests.desk.reading_chair"]

PUNCHED = ("conditions", "dart-ends-not-punched")


def test_dart_holes_lead_to_the_condition_in_two_keystrokes(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Down)
    reader.keys(Qt.Key.Key_Return)
    condition = knowledge.conditions[PUNCHED[1]]
    assert reader.said("look-up-title") == condition.title
    said = reader.all_said()
    for part in ("Forbids the work.", condition.because, condition.ask, condition.instead):
        assert part in said


def test_the_page_of_a_condition_names_every_method_it_touches(reader: Reader) -> None:
    reader.open()
    reader.look_up.show_entry(PUNCHED)
    reader.settle()
    touched = next(group for group in reader.look_up.graph.links_of(*PUNCHED) if group.heading == "Holds for")
    assert touched.links
    for link in touched.links:
        assert reader.there(f"look-up-link-{link.id}") is not None


def test_what_was_found_stands_under_its_kind_and_every_find_can_be_shown(reader: Reader) -> None:
    reader.open()
    reader.type("waist")
    kinds = {row.key[0] for row in reader.look_up.page.finds.found.rows}
    assert len(kinds) > 2
    assert all(reader.there(f"look-up-kind-{kind}") for kind in kinds)
    before = len(reader.look_up.page.finds.found.rows)
    reader.press("look-up-more-symptoms")
    assert len(reader.look_up.page.finds.found.rows) > before


def test_enter_alone_opens_the_best_find_and_arrows_go_no_further_than_the_ends(reader: Reader) -> None:
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Return)
    assert reader.look_up.trail.here == PUNCHED
    reader.keys(Qt.Key.Key_Up)
    assert reader.look_up.page.finds.found.current() == PUNCHED


def test_links_open_pages_and_back_and_forward_go_through_them(reader: Reader) -> None:
    reader.open()
    reader.look_up.show_entry(PUNCHED)
    reader.settle()
    reader.click("look-up-link-let-out-back-darts")
    assert reader.look_up.trail.here == ("methods", "let-out-back-darts")
    reader.keys(Qt.Key.Key_Left, Qt.KeyboardModifier.AltModifier)
    assert reader.look_up.trail.here == PUNCHED
    reader.keys(Qt.Key.Key_Right, Qt.KeyboardModifier.AltModifier)
    assert reader.look_up.trail.here == ("methods", "let-out-back-darts")
    reader.click("look-up-back")
    assert reader.look_up.trail.here == PUNCHED


def test_escape_returns_to_the_step_and_to_the_place_on_it(reader: Reader) -> None:
    reader.fitting.job.go_to("narrow")
    reader.settle()
    there = reader.there("narrow-answer-not-known")
    assert there is not None
    there.setFocus()
    reader.open()
    assert reader.there("page-narrow") is None
    reader.keys(Qt.Key.Key_Escape)
    assert reader.there("page-narrow") is not None
    focus = QApplication.focusWidget()
    assert focus is not None
    assert focus.objectName() == "narrow-answer-not-known"
    assert reader.there("foot") is not None


def test_the_place_is_reached_by_the_mouse_and_by_its_number(reader: Reader) -> None:
    reader.click("head-place-look-up")
    assert reader.there("page-look-up") is not None
    assert reader.there("foot") is None
    reader.click("head-place-fit")
    assert reader.there("page-look-up") is None
    reader.click("head-find")
    assert reader.there("page-look-up") is not None
    reader.keys(Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert reader.there("page-look-up") is None
    number = [place for place, _ in PLACES].index("look-up")
    reader.keys(Qt.Key(Qt.Key.Key_1.value + number), Qt.KeyboardModifier.ControlModifier)
    assert reader.there("page-look-up") is not None


def test_a_click_on_a_find_opens_it(reader: Reader) -> None:
    reader.click("head-find")
    reader.type("dart holes")
    reader.click(f"look-up-found-{PUNCHED[1]}")
    assert reader.look_up.trail.here == PUNCHED
