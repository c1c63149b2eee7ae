"""Every page of the rack can be read: nothing clipped at any size of text, everything named, and it can be pressed."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QCoreApplication, QTranslator
from PySide6.QtWidgets import QAbstractButton, QLineEdit, QWidget

from fitdoctor.desk.look import look_of
from fitdoctor.desk.pages.page import ScrollColumn
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.rack.answer_button import RackAnswerButton
from fitdoctor.desk.tokens import TARGET
from fitdoctor.desk.type import faces_of

if TYPE_CHECKING:
    from tests.desk.rack_rail import Buyer, MakeBuyer

pytest_plugins = ["tests.desk.rack_rail"]

SMALLEST_LINK = 24
"Target size (minimum), Web Content Accessibility Guidelines 2.2, success criterion 2.5.8."


def sheets(buyer: Buyer) -> Iterator[str]:
    """Go through every page, as a buyer would come to it."""
    yield "the kinds"
    buyer.describe("jacket", "dear", "45", "Tweed jacket with leather elbows and horn buttons")
    buyer.press("rack-wages-of-paid")
    buyer.press("rack-go")
    yield "the particulars, with what is wrong"
    buyer.text("rack-price", "25")
    buyer.text("rack-rate", "18")
    buyer.press("rack-go")
    yield "a question"
    assert buyer.question().kind == "side"
    buyer.answer("yes")
    yield "which of these it is"
    buyer.press("rack-see")
    yield "what shows: the places"
    buyer.text("rack-see-find", "one sleeve longer")
    yield "what shows: the finds"
    buyer.press("rack-see-one-sleeve-longer")
    buyer.press("rack-sum-risk-why")
    yield "why it may fail"
    buyer.go_on(buyer.nothing_else)
    yield "the answer"
    buyer.press("rack-another")
    buyer.look_at("skirt", "5", "40")
    buyer.go_on(buyer.nothing_else)
    buyer.press("rack-cautions-why")
    yield "a buy with what is never altered"
    buyer.press("rack-another")
    yield "the list"
    buyer.press("rack-list-compare")
    yield "side by side"


def clipped(buyer: Buyer) -> list[str]:
    found = []
    for widget in buyer.window.findChildren(QWidget):
        check: Callable[[], bool] | None = getattr(widget, "clipped", None)
        if check is not None and widget.isVisible() and check():
            found.append(f"{type(widget).__name__} {widget.objectName()} {widget.accessibleName() or getattr(widget, 'text', str)()}")
    return found


def too_wide(buyer: Buyer) -> list[str]:
    columns = (column for column in buyer.window.findChildren(ScrollColumn) if column.isVisible())
    return [column.objectName() for column in columns if column.content.width() > column.viewport().width() + 1]


def assert_all_read(buyer: Buyer) -> None:
    for where in sheets(buyer):
        assert clipped(buyer) == [], where
        assert too_wide(buyer) == [], where


@pytest.mark.parametrize("percent", [100, 125, 150, 200])
def test_nothing_is_clipped_at_any_size_of_text(at_the_rail: MakeBuyer, percent: int) -> None:
    assert_all_read(at_the_rail(look_of(dark=False, percent=percent)))


@pytest.mark.parametrize("size", [(960, 600), (1024, 700), (1600, 1000)])
def test_nothing_is_clipped_in_a_small_or_a_large_window(at_the_rail: MakeBuyer, size: tuple[int, int]) -> None:
    assert_all_read(at_the_rail(size=size))


@pytest.mark.parametrize("percent", [100, 200])
def test_nothing_is_clipped_in_the_fallback_faces(at_the_rail: MakeBuyer, percent: int) -> None:
    faces = faces_of("DejaVu Sans", "DejaVu Serif")
    assert_all_read(at_the_rail(look_of(dark=True, percent=percent, faces=faces)))


class Longer(QTranslator):
    """Another language, as it were: every string longer by a third, marked at both ends, its {values} kept."""

    def translate(self, _context: str, text: str, _disambiguation: str | None = None, _n: int = -1) -> str:
        return f"[{text}{'·' * (len(text) // 3)}]"


def test_a_translation_shows_everywhere_and_nothing_is_clipped(at_the_rail: MakeBuyer) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        buyer = at_the_rail()
        assert_all_read(buyer)
        said = [w.text() for w in buyer.rack.compare.findChildren(Words) if w.isVisible() and w.objectName() == "rack-compare-title"]
        assert said
        assert all("[" in text for text in said)
    finally:
        QCoreApplication.removeTranslator(translator)


def test_everything_has_a_name_of_its_own_and_is_large_enough(buyer: Buyer) -> None:
    for where in sheets(buyer):
        page = buyer.rack.page()
        pressed = [w for w in page.findChildren(QAbstractButton) if w.isVisible()]
        typed = [w for w in page.findChildren(QLineEdit) if w.isVisible()]
        assert [w.objectName() for w in (*pressed, *typed) if not w.accessibleName()] == [], where
        assert [w.accessibleName() for w in pressed if not w.objectName()] == [], where
        named = (w.objectName() for w in page.findChildren(QWidget) if w.isVisible() and w.objectName())
        times = Counter(name for name in named if not name.startswith("qt_"))
        assert [name for name, number in times.items() if number > 1] == [], where
        for button in pressed:
            least = SMALLEST_LINK if button.property("role") == "quiet" else TARGET - 2
            assert button.height() >= least, f"{where}: {button.objectName()}"
        assert len([w for w in pressed if w.property("role") == "go"]) <= 1, where


@pytest.mark.parametrize(("percent", "size"), [(100, (1280, 800)), (100, (1024, 700)), (100, (960, 600)), (200, (1280, 800))])
def test_the_question_and_its_answers_stay_in_the_first_screen(at_the_rail: MakeBuyer, percent: int, size: tuple[int, int]) -> None:
    buyer = at_the_rail(look_of(dark=False, percent=percent), size)
    buyer.look_at("trousers", "25", "40")
    page = buyer.rack.page()
    for button in page.findChildren(RackAnswerButton):
        assert button.mapTo(page, button.rect().bottomLeft()).y() <= page.height(), button.value
