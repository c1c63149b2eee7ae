"""Look it up, by the keyboard and by the mouse."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtPrintSupport import QPrintDialog
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from fitdoctor.desk.app import Desk
from fitdoctor.desk.handbook.found_row import FoundRow
from fitdoctor.desk.handbook.look_up import LookUp
from fitdoctor.desk.handbook.print_page import page_document
from fitdoctor.desk.handbook.trail import Trail
from fitdoctor.desk.look import look_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.window import Window
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop

PUNCHED = ("conditions", "dart-ends-not-punched")
FOLDS = ("symptoms", "level-folds-under-back-band")


class Reader:
    """Someone who looks something up in the middle of a job."""

    def __init__(self, window: Window, desk: Desk) -> None:
        assert desk.look_up is not None
        assert desk.fitting is not None
        self.window, self.fitting, self.look_up = window, desk.fitting, desk.look_up

    def settle(self) -> None:
        for _ in range(6):
            QApplication.processEvents()

    def keys(self, key: Qt.Key, held: Qt.KeyboardModifier = Qt.KeyboardModifier.NoModifier) -> None:
        QTest.keyClick(QApplication.focusWidget() or self.window, key, held)
        self.settle()

    def type(self, text: str) -> None:
        focus = QApplication.focusWidget()
        assert focus is not None
        QTest.keyClicks(focus, text)
        self.settle()

    def there(self, name: str) -> QWidget | None:
        return next((w for w in self.window.findChildren(QWidget, name) if w.isVisible()), None)

    def click(self, name: str) -> None:
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        QTest.mouseClick(widget, Qt.MouseButton.LeftButton)
        self.settle()

    def press(self, name: str) -> None:
        """Press what may lie below the edge of the window."""
        widget = self.there(name)
        assert isinstance(widget, QAbstractButton), f"nothing to press is called {name}"
        widget.click()
        self.settle()

    def said(self, name: str) -> str:
        words = self.there(name)
        assert isinstance(words, Words), f"nothing is said under {name}"
        return words.said()

    def all_said(self) -> str:
        page = self.there("look-up-page")
        assert page is not None
        return "\n".join(words.said() for words in page.findChildren(Words))

    def open(self) -> None:
        self.keys(Qt.Key.Key_F, Qt.KeyboardModifier.ControlModifier)
        field = QApplication.focusWidget()
        assert isinstance(field, QLineEdit)
        assert field.objectName() == "look-up-field"


MakeReader = Callable[..., Reader]


@pytest.fixture
def sit_down(qtbot: QtBot, knowledge: Knowledge) -> Iterator[MakeReader]:
    made: list[Window] = []

    def make(theme: str = "light", percent: int = 100) -> Reader:
        window = Window(Shop(theme=theme, text_percent=percent))  # type: ignore[arg-type]
        qtbot.addWidget(window)
        made.append(window)
        window.show()
        desk = Desk(window)
        desk.open(knowledge)
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)
        return Reader(window, desk)

    yield make
    for window in made:
        window.close()


@pytest.fixture
def reader(sit_down: MakeReader) -> Reader:
    return sit_down()


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
    kinds = {row.key[0] for row in reader.look_up.page.found.rows}
    assert len(kinds) > 2
    assert all(reader.there(f"look-up-kind-{kind}") for kind in kinds)
    before = len(reader.look_up.page.found.rows)
    reader.press("look-up-more")
    assert len(reader.look_up.page.found.rows) > before


def test_enter_alone_opens_the_best_find_and_arrows_go_no_further_than_the_ends(reader: Reader) -> None:
    reader.open()
    reader.type("dart holes")
    reader.keys(Qt.Key.Key_Return)
    assert reader.look_up.trail.here == PUNCHED
    reader.keys(Qt.Key.Key_Up)
    assert reader.look_up.page.found.current() == PUNCHED


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
    reader.keys(Qt.Key.Key_2, Qt.KeyboardModifier.ControlModifier)
    assert reader.there("page-look-up") is not None


def test_a_click_on_a_find_opens_it(reader: Reader) -> None:
    reader.click("head-find")
    reader.type("dart holes")
    reader.click(f"look-up-found-{PUNCHED[1]}")
    assert reader.look_up.trail.here == PUNCHED


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
    assert reader.look_up.page.found.rows == []


def test_before_anything_is_typed_the_list_holds_what_the_garment_in_hand_has_to_do_with(reader: Reader) -> None:
    seen = reader.fitting.job.case.seen
    assert seen
    reader.open()
    assert [row.key for row in reader.look_up.page.found.rows][: len(seen)] == [("symptoms", s) for s in seen]


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


def test_the_tab_key_goes_from_the_field_to_the_finds(reader: Reader) -> None:
    reader.open()
    reader.type("waist")
    reader.keys(Qt.Key.Key_Tab)
    first = QApplication.focusWidget()
    assert isinstance(first, FoundRow)
    assert first.key == reader.look_up.page.found.first()


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
