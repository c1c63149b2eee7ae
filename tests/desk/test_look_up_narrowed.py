"""Narrowing what is looked up: by kind, garment, region and cloth, by keys and by mouse, said plainly and taken back in one press."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QApplication, QWidget

from fitdoctor.desk.handbook.kinds import KIND_TITLES
from fitdoctor.desk.look import look_of
from fitdoctor.knowledge.filters import Filter
from fitdoctor.knowledge.knowledge import Knowledge
from tests.desk.test_reading_the_desk import Longer

if TYPE_CHECKING:
    from tests.desk.reading_chair import MakeReader, Reader

pytest_plugins = ["tests.desk.reading_chair"]


def narrow(reader: Reader, field: str, value: str) -> None:
    """Choose a value as one does with the mouse."""
    if reader.there("look-up-narrowing") is None:
        reader.press("look-up-narrow")
    reader.press(f"look-up-by-{field}")
    reader.press(f"look-up-by-{field}-{value}")


def _focus() -> str:
    focus = QApplication.focusWidget()
    return focus.objectName() if focus else ""


def shown(reader: Reader) -> set[tuple[str, str]]:
    return {row.key for row in reader.look_up.page.finds.found.rows}


def test_with_a_filter_and_nothing_typed_all_that_passes_is_listed_under_its_kind(reader: Reader) -> None:
    reader.open()
    narrow(reader, "garment", "skirt")
    narrow(reader, "region", "waist")
    passing = reader.look_up.job.index.facets.passing(Filter(garment="skirt", region="waist"))
    for kind in {kind for kind, _ in passing}:
        if reader.there(f"look-up-more-{kind}"):
            reader.press(f"look-up-more-{kind}")
    assert shown(reader) == passing
    kinds = [row.key[0] for row in reader.look_up.page.finds.found.rows]
    assert list(dict.fromkeys(kinds)) == [kind for kind in KIND_TITLES if kind in kinds]


def test_a_filter_narrows_what_is_typed_and_one_press_shows_everything_again(reader: Reader) -> None:
    reader.open()
    reader.type("tight")
    before = shown(reader)
    narrow(reader, "garment", "skirt")
    narrow(reader, "kind", "symptoms")
    assert {kind for kind, _ in shown(reader)} == {"symptoms"}
    assert "skirt" in reader.said("look-up-only")
    assert KIND_TITLES["symptoms"].lower() in reader.said("look-up-only").lower()
    reader.press("look-up-clear")
    assert reader.there("look-up-only") is None
    assert reader.there("look-up-clear") is None
    assert shown(reader) == before


def test_the_keys_alone_narrow_and_come_back_to_the_field(reader: Reader) -> None:
    reader.open()
    reader.keys(Qt.Key.Key_Tab)
    assert _focus() == "look-up-narrow"
    reader.keys(Qt.Key.Key_Return)
    assert _focus() == "look-up-by-kind"
    reader.keys(Qt.Key.Key_Return)
    assert _focus() == "look-up-by-kind-"
    for _ in range(4):
        reader.keys(Qt.Key.Key_Down)
    reader.keys(Qt.Key.Key_Return)
    assert {kind for kind, _ in shown(reader)} == {"conditions"}
    assert _focus() == "look-up-by-kind"
    reader.keys(Qt.Key.Key_Escape)
    assert reader.there("look-up-narrowing") is None
    assert _focus() == "look-up-narrow"
    assert reader.there("page-look-up") is not None, "Escape closes the choice first"


def test_nothing_of_all_these_at_once_is_said(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    facets = reader.look_up.job.index.facets
    empty = next(g for g in knowledge.garments if not facets.passing(Filter("garments", g, "legs")))
    narrow(reader, "kind", "garments")
    narrow(reader, "garment", empty)
    narrow(reader, "region", "legs")
    assert shown(reader) == set()
    assert "at once" in reader.said("look-up-said")
    reader.press("look-up-clear")
    narrow(reader, "cloth", "leather")
    reader.look_up.page.finds.edit.setFocus()
    reader.type("qqxxzz")
    assert "qqxxzz" in reader.said("look-up-said")
    assert "what is shown" in reader.said("look-up-said")


def test_a_filter_outlives_a_change_of_the_look(reader: Reader) -> None:
    reader.open()
    narrow(reader, "region", "seat")
    before = shown(reader)
    reader.window.rebuild(look_of(dark=True, percent=125))
    reader.settle()
    assert shown(reader) == before
    assert "seat" in reader.said("look-up-only")


def test_only_cloths_that_something_is_said_of_are_offered(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.press("look-up-narrow")
    drawer = next(d for d in reader.look_up.page.finds.narrowing.drawers if d.field == "cloth")
    for choice in drawer.row.choices[1:]:
        assert reader.look_up.job.index.facets.passing(Filter(cloth=choice.value))
    assert len(drawer.row.choices) - 1 < len(knowledge.features["cloth"].values)


@pytest.mark.parametrize("percent", [100, 200])
def test_no_word_of_the_choice_is_out_of_sight(sit_down: MakeReader, percent: int) -> None:
    reader = sit_down("light", percent)
    reader.open()
    reader.press("look-up-narrow")
    for drawer in reader.look_up.page.finds.narrowing.drawers:
        drawer.head.click()
        reader.settle()
        clipped = [w for w in reader.window.findChildren(QWidget) if w.isVisible() and getattr(w, "clipped", bool)()]
        assert [w.objectName() for w in clipped] == []


def test_a_translation_shows_in_the_choice_and_on_the_map_and_nothing_is_clipped(sit_down: MakeReader) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        reader = sit_down()
        reader.open()
        narrow(reader, "garment", "jacket")
        reader.look_up.show_entry(("causes", "hips-too-small"))
        reader.look_up.turn_map()
        reader.settle()
        for name in ("look-up-only", "look-up-map-hint", "look-up-map-head-symptoms", "look-up-kind-causes"):
            assert "[" in reader.said(name)
        clipped = [w for w in reader.window.findChildren(QWidget) if w.isVisible() and getattr(w, "clipped", bool)()]
        assert [w.objectName() for w in clipped] == []
    finally:
        QCoreApplication.removeTranslator(translator)
