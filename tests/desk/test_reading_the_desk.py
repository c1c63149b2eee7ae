"""Every page can be read: nothing clipped at any size of text, everything named, in the program's faces and in the fallback's."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Protocol

import pytest
from PySide6.QtCore import QCoreApplication, QTranslator
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QWidget

from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.pages.page import ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.step_names import STEPS
from fitdoctor.desk.tokens import TARGET
from fitdoctor.desk.type import faces_of

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable, TableTop

pytest_plugins = ["tests.desk.table_top"]

SMALLEST_LINK = 24
"Target size (minimum), Web Content Accessibility Guidelines 2.2, success criterion 2.5.8."


class InAWindow(Protocol):
    """Someone at a window."""

    @property
    def window(self) -> QWidget: ...


def clipped(top: InAWindow) -> list[str]:
    """What is visible in the window and does not show all its words."""
    found = []
    for widget in top.window.findChildren(QWidget):
        check = getattr(widget, "clipped", None)
        if check is not None and widget.isVisible() and check():
            found.append(f"{type(widget).__name__} {widget.objectName()} {widget.accessibleName() or getattr(widget, 'text', str)()}")
    return found


def too_wide(top: InAWindow) -> list[str]:
    """Columns that would have to be scrolled sideways."""
    columns = (c for c in top.window.findChildren(ScrollColumn) if c.isVisible())
    return [c.objectName() for c in columns if c.content.width() > c.viewport().width() + 1]


def assert_all_read(top: TableTop) -> None:
    for step in STEPS:
        top.go(step)
        assert clipped(top) == [], step
        assert too_wide(top) == [], step


@pytest.mark.parametrize("percent", [100, 125, 150, 200])
@pytest.mark.parametrize("which", ["dress", "trousers", "jacket", "new"])
def test_nothing_is_clipped_at_any_size_of_text(table: MakeTable, which: str, percent: int) -> None:
    assert_all_read(table(which, look_of(dark=False, percent=percent)))


@pytest.mark.parametrize("size", [(960, 600), (1024, 700), (1600, 1000)])
def test_nothing_is_clipped_in_a_small_or_a_large_window(table: MakeTable, size: tuple[int, int]) -> None:
    assert_all_read(table("trousers", size=size))


@pytest.mark.parametrize("percent", [100, 200])
def test_nothing_is_clipped_in_the_fallback_faces(table: MakeTable, percent: int) -> None:
    faces = faces_of("DejaVu Sans", "DejaVu Serif")
    assert_all_read(table("trousers", look_of(dark=True, percent=percent, faces=faces)))


class Longer(QTranslator):
    """Another language, as it were: every string longer by a third, marked at both ends, its {values} kept."""

    def translate(self, _context: str, text: str, _disambiguation: str | None = None, _n: int = -1) -> str:
        return f"[{text}{'·' * (len(text) // 3)}]"


def test_a_translation_shows_everywhere_and_nothing_is_clipped(table: MakeTable) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        top = table("trousers")
        assert_all_read(top)
        top.go("narrow")
        said = {w.text() for w in top.page.findChildren(Words) if w.isVisible() and w.objectName() in ("narrow-title", "narrow-why")}
        assert said
        assert all("[" in text for text in said)
    finally:
        QCoreApplication.removeTranslator(translator)


@pytest.mark.parametrize("step", STEPS)
def test_every_control_has_a_name(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    nameless = [
        f"{type(w).__name__} {w.objectName()}"
        for w in top.window.findChildren(QWidget)
        if isinstance(w, QAbstractButton | QLineEdit) and w.isVisible() and not w.accessibleName()
    ]
    assert nameless == []
    unnamed = [w.accessibleName() for w in top.page.findChildren(QAbstractButton) if w.isVisible() and not w.objectName()]
    assert unnamed == [], "tests and pictures find things by their names"


@pytest.mark.parametrize("step", STEPS)
def test_what_can_be_pressed_is_large_enough(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    for button in top.window.findChildren(QAbstractButton):
        if not button.isVisible():
            continue
        least = SMALLEST_LINK if button.property("role") == "quiet" or button.objectName().endswith("-name") else TARGET - 2
        assert button.height() >= least, button.objectName()


@pytest.mark.parametrize("step", STEPS)
def test_no_two_things_on_a_page_have_one_name(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    named = (w for w in top.page.findChildren(QWidget) if w.isVisible() and w.objectName())
    names = [w.objectName() for w in named if not w.objectName().startswith("qt_")]
    assert [name for name, times in Counter(names).items() if times > 1] == []


@pytest.mark.parametrize("step", STEPS)
def test_a_page_has_one_filled_button_at_most(table: MakeTable, step: str) -> None:
    top = table("trousers")
    top.go(step)
    filled = [w.objectName() for w in top.window.findChildren(QAbstractButton) if w.isVisible() and w.property("role") == "go"]
    assert len(filled) == 1


def test_a_look_is_the_same_look_when_made_twice() -> None:
    assert isinstance(look_of(dark=True), Look)
    assert look_of(dark=True) == look_of(dark=True)
    assert look_of(dark=True) != look_of(dark=False)
