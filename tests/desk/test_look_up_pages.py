"""The pages of Look it up: side by side, sources, printing, at every size of text."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget

from fitdoctor.desk.handbook.found_row import FoundRow
from fitdoctor.desk.handbook.look_up import LookUp
from fitdoctor.desk.handbook.print_page import page_document
from fitdoctor.desk.handbook.trail import Trail
from fitdoctor.desk.look import look_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.knowledge.knowledge import Knowledge

if TYPE_CHECKING:
    from tests.desk.reading_chair import MakeReader, Reader

pytest_plugins = ["tests.desk.reading_chair"]

PUNCHED = ("conditions", "dart-ends-not-punched")
FOLDS = ("symptoms", "level-folds-under-back-band")


def test_signs_easily_mistaken_stand_side_by_side_with_what_tells_them_apart(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.look_up.show_entry(FOLDS)
    reader.settle()
    mistaken = knowledge.symptoms[FOLDS[1]].mistaken_for[0]
    beside = reader.there("look-up-beside-0")
    assert beside is not None
    assert reader.there("look-up-plate") is not None
    assert any(mistaken.tell_apart in words.said() for words in beside.findChildren(Words))
    reader.click(f"look-up-side-{mistaken.symptom}")
    assert reader.look_up.trail.here == ("symptoms", mistaken.symptom)


def test_a_source_opens_with_what_was_read_of_it(reader: Reader, knowledge: Knowledge) -> None:
    reader.open()
    reader.look_up.show_entry(FOLDS)
    reader.settle()
    source = next(s for s in knowledge.symptoms[FOLDS[1]].sources if s in knowledge.sources)
    reader.click(f"look-up-source-{source}")
    assert reader.said("look-up-title") == knowledge.sources[source].title
    assert knowledge.sources[source].note in reader.all_said()


def test_nothing_found_says_what_to_try(reader: Reader) -> None:
    reader.open()
    reader.type("qqxxzz")
    assert "qqxxzz" in reader.said("look-up-said")
    assert reader.look_up.page.finds.found.rows == []


def test_before_anything_is_typed_the_list_holds_what_the_garment_in_hand_has_to_do_with(reader: Reader) -> None:
    seen = reader.fitting.job.case.seen
    assert seen
    reader.open()
    assert [row.key for row in reader.look_up.page.finds.found.rows][: len(seen)] == [("symptoms", s) for s in seen]


def test_letters_typed_here_answer_nothing_on_the_page_behind(reader: Reader) -> None:
    before = reader.fitting.job.case
    reader.open()
    reader.look_up.show_entry(PUNCHED)
    reader.settle()
    printing = reader.there("look-up-print")
    assert printing is not None
    printing.setFocus()
    reader.type("yn1")
    reader.keys(Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert reader.fitting.job.case == before


def test_a_page_can_be_printed_with_its_text_and_sources(reader: Reader) -> None:
    reader.open()
    reader.look_up.show_entry(FOLDS)
    reader.settle()
    reader.click("look-up-print")
    dialog = reader.window.findChild(QPrintDialog, "look-up-print-dialog")
    assert dialog is not None
    dialog.reject()
    page = reader.look_up.open_page()
    assert page is not None
    printed = page_document(page, "What shows", None).toPlainText()
    for part in (page.title, *page.sections[0].lines, page.opposed[0].said[0].says, page.sources[0].line):
        assert part in printed


def test_a_change_of_the_look_keeps_what_was_typed_and_opened(reader: Reader) -> None:
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Return)
    reader.window.rebuild(look_of(dark=True, percent=150))
    reader.settle()
    assert reader.there("page-look-up") is not None
    assert reader.said("look-up-title") == reader.fitting.job.knowledge.conditions[PUNCHED[1]].title
    field = reader.there("look-up-field")
    assert isinstance(field, QLineEdit)
    assert field.text() == "dart holes"


@pytest.mark.parametrize("percent", [100, 150, 200])
def test_no_word_is_out_of_sight_at_any_size_of_text(sit_down: MakeReader, percent: int, knowledge: Knowledge) -> None:
    reader = sit_down("dark", percent)
    reader.open()
    source = max(knowledge.sources, key=lambda s: len(knowledge.sources[s].address))
    for key in (PUNCHED, FOLDS, ("methods", "let-out-back-darts"), ("garments", "trousers"), ("sources", source)):
        reader.look_up.show_entry(key)
        reader.settle()
        clipped = [w for w in reader.window.findChildren(QWidget) if w.isVisible() and getattr(w, "clipped", bool)()]
        assert [getattr(w, "words", w.objectName()) for w in clipped] == []
        assert reader.look_up.page.article.width() <= reader.window.width()


def test_the_tab_key_goes_from_the_field_past_the_narrowing_to_the_finds(reader: Reader) -> None:
    reader.open()
    reader.type("waist")
    reader.keys(Qt.Key.Key_Tab)
    reader.keys(Qt.Key.Key_Tab)
    first = QApplication.focusWidget()
    assert isinstance(first, FoundRow)
    assert first.key == reader.look_up.page.finds.found.first()


def test_a_page_opened_from_the_middle_of_the_trail_gives_up_what_lay_ahead() -> None:
    trail = Trail().opened(PUNCHED).opened(FOLDS).moved(-1).opened(("causes", "a"))
    assert trail.pages == (PUNCHED, ("causes", "a"))
    assert trail.ahead(1) is None
    assert trail.moved(5) == trail


def test_every_entry_has_a_page_that_can_be_opened(reader: Reader, knowledge: Knowledge) -> None:
    look_up: LookUp = reader.look_up
    reader.open()
    for kind in ("symptoms", "causes", "methods", "conditions", "checks", "measurements", "features", "garments", "sources"):
        ids = sorted(getattr(knowledge, kind))
        for id_ in ids[:: max(1, len(ids) // 8)]:
            look_up.show_entry((kind, id_))
            assert look_up.trail.here == (kind, id_)
