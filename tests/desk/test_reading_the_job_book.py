"""Every page of the job book can be read and reached: at every size, in both themes, in another language, by the keyboard."""

from __future__ import annotations

from collections import Counter as Tally
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QPlainTextEdit, QWidget

from fitdoctor.desk.look import Look, look_of
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.tokens import TARGET
from fitdoctor.desk.type import faces_of
from fitdoctor.desk.window import Window
from fitdoctor.jobbook.job import Outcome
from tests.desk.test_reading_the_desk import SMALLEST_LINK, Longer, clipped, too_wide

if TYPE_CHECKING:
    from tests.desk.job_counter import Counter, MakeCounter

pytest_plugins = ["tests.desk.job_counter"]


def list_(_counter: Counter) -> None:
    """The list, as the place opens."""


def one(counter: Counter) -> None:
    counter.place.page.look_at_one(True)


def form(counter: Counter) -> None:
    counter.place.page.look_at_one(True)
    counter.press("jobs-change")
    counter.write("jobs-wearer", "Griselda")


def asked_back(counter: Counter) -> None:
    counter.place.page.look_at_one(True)
    counter.press("jobs-delete")


def closing(counter: Counter) -> None:
    counter.place.page.one.wanted.emit("close")
    counter.settle()
    counter.press("closing-close")


def minutes(counter: Counter) -> None:
    counter.place.page.one.wanted.emit("minutes")


def history(counter: Counter) -> None:
    counter.place.page.one.wanted.emit("history")
    counter.settle()
    counter.press("history-whole")


def figures(counter: Counter) -> None:
    counter.place.page.wanted.emit("figures")


def photo(counter: Counter) -> None:
    counter.place.page.photoOpened.emit(counter.book.photos.of(counter.place.id)[0])
    counter.settle()
    counter.press("photo-delete")


PAGES: tuple[Callable[[Counter], None], ...] = (list_, one, form, asked_back, closing, minutes, history, figures, photo)


def furnish(counter: Counter, folder: Path) -> None:
    """Jobs in every state, closed ones, readings, a photo."""
    first = counter.chosen
    assessment = counter.place.assessed(first)
    assert assessment is not None
    for result in ("as-wanted", "better", "no-better", "given-up"):
        job = counter.book.add(first.case)
        counter.place.shelf.note(job.id, assessment)
        counter.book.close_job(job, Outcome(right=assessment.treat, result=result, minutes=50))
    counter.fitting.job.put_down("first look")
    counter.fitting.job.measure(next(iter(first.case.measured)), 25.4)
    counter.fitting.job.put_down("at the try-on")
    picture = QImage(300, 200, QImage.Format.Format_RGB32)
    picture.fill(Qt.GlobalColor.darkCyan)
    picture.save(str(folder / "the-back-of-the-dress.png"))
    counter.book.add_photo(first.id, folder / "the-back-of-the-dress.png")
    counter.place.refresh()
    counter.settle()


@pytest.fixture
def furnished(at_the_counter: MakeCounter, tmp_path: Path) -> MakeCounter:
    def make(look: Look | None = None, size: tuple[int, int] = (1280, 800)) -> Counter:
        counter = at_the_counter(look, size)
        furnish(counter, tmp_path)
        return counter

    return make


def open_page(counter: Counter, page: Callable[[Counter], None]) -> None:
    counter.place.back()
    counter.place.page.change(False)
    counter.place.page.look_at_one(False)
    counter.settle()
    page(counter)
    counter.settle()


def assert_all_read(counter: Counter) -> None:
    for page in PAGES:
        open_page(counter, page)
        assert clipped(counter) == [], page.__name__
        assert too_wide(counter) == [], page.__name__


@pytest.mark.parametrize("percent", [100, 125, 150, 200])
def test_nothing_is_clipped_at_any_size_of_text(furnished: MakeCounter, percent: int) -> None:
    assert_all_read(furnished(look_of(dark=percent == 150, percent=percent)))


@pytest.mark.parametrize("size", [(960, 600), (1024, 700), (1600, 1000)])
def test_nothing_is_clipped_in_a_small_or_a_large_window(furnished: MakeCounter, size: tuple[int, int]) -> None:
    assert_all_read(furnished(size=size))


@pytest.mark.parametrize("percent", [100, 200])
def test_nothing_is_clipped_in_the_fallback_faces(furnished: MakeCounter, percent: int) -> None:
    assert_all_read(furnished(look_of(dark=True, percent=percent, faces=faces_of("DejaVu Sans", "DejaVu Serif"))))


def test_a_translation_shows_everywhere_and_nothing_is_clipped(furnished: MakeCounter) -> None:
    translator = Longer()
    QCoreApplication.installTranslator(translator)
    try:
        counter = furnished()
        assert_all_read(counter)
        for page, name in ((closing, "closing-lacking"), (history, "history-title"), (figures, "figures-teaching")):
            open_page(counter, page)
            assert counter.find(Words, name).said().startswith("[")
    finally:
        QCoreApplication.removeTranslator(translator)


@pytest.mark.parametrize("page", PAGES, ids=[page.__name__ for page in PAGES])
def test_every_control_has_a_name_of_its_own_and_is_large_enough(furnished: MakeCounter, page: Callable[[Counter], None]) -> None:
    counter = furnished()
    open_page(counter, page)
    shown = counter.window.pages.currentWidget()
    assert shown is not None
    controls = [w for w in shown.findChildren(QWidget) if isinstance(w, QAbstractButton | QLineEdit | QPlainTextEdit) and w.isVisible()]
    assert [w.objectName() for w in controls if not (w.accessibleName() and w.objectName())] == []
    for button in controls:
        if isinstance(button, QAbstractButton):
            least = SMALLEST_LINK if button.property("role") == "quiet" else TARGET - 2
            assert button.height() >= least, button.objectName()
    names = [w.objectName() for w in shown.findChildren(QWidget) if w.isVisible() and w.objectName()]
    assert [name for name, times in Tally(names).items() if times > 1 and not name.startswith("qt_")] == []
    filled = [w.objectName() for w in controls if w.property("role") == "go"]
    assert len(filled) <= 1


@pytest.mark.parametrize("page", PAGES, ids=[page.__name__ for page in PAGES])
def test_tab_reaches_every_stop_and_comes_round(furnished: MakeCounter, page: Callable[[Counter], None]) -> None:
    counter = furnished()
    open_page(counter, page)
    shown = counter.window.pages.currentWidget()
    assert shown is not None
    stops = {
        w.objectName()
        for w in shown.findChildren(QWidget)
        if w.isVisible() and w.isEnabled() and w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.objectName()
    }
    reached = set()
    for _ in range(2 * len(stops) + 40):
        counter.keys(Qt.Key.Key_Tab)
        reached.add(counter.focus())
    assert stops <= reached


class Strays(QObject):
    """Notes every part that shows as a window of its own."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Show and isinstance(watched, QWidget) and watched.isWindow() and not isinstance(watched, Window):
            self.found.append(f"{type(watched).__name__} {watched.objectName()}")
        return False


def test_no_part_ever_flashes_up_as_a_window_of_its_own(furnished: MakeCounter) -> None:
    strays = Strays()
    application = QApplication.instance()
    assert application is not None
    application.installEventFilter(strays)
    try:
        counter = furnished()
        for page in PAGES:
            open_page(counter, page)
        counter.window.rebuild(look_of(dark=True, percent=200))
        for page in PAGES:
            open_page(counter, page)
    finally:
        application.removeEventFilter(strays)
    assert strays.found == []
