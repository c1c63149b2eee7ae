"""Long work says what it does and how far it is, stops when it is told to, and leaves nothing half-written behind."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QAbstractButton
from pytestqt.qtbot import QtBot

from fitdoctor.cli import STOPPED, main
from fitdoctor.desk import at_work, shots
from fitdoctor.desk.app import Desk, read_all
from fitdoctor.desk.at_work import LongWork
from fitdoctor.desk.background import Tell, Turns, in_one_go, nothing
from fitdoctor.desk.guide_paper import print_by_turns
from fitdoctor.desk.look import look_of
from fitdoctor.desk.pages.sheet import SheetPage
from fitdoctor.desk.parts.text import Words
from fitdoctor.desk.shots import saved
from fitdoctor.desk.taken_along import write_all
from fitdoctor.desk.window import Window
from fitdoctor.errors import FitdoctorError
from fitdoctor.guides import Page
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.shop import Shop

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable

pytest_plugins = ["tests.desk.table_top"]


@pytest.fixture
def window(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> Window:
    """A window that shows at once what is being done."""
    monkeypatch.setattr(at_work, "PATIENCE_MS", 0)
    made = Window(Shop(theme="light"))
    qtbot.addWidget(made)
    made.show()
    return made


class Held:
    """Work in another thread that goes on piece by piece as the test lets it."""

    def __init__(self, pieces: int = 4) -> None:
        self.pieces, self.done = pieces, 0
        self.went_on = threading.Semaphore(0)

    def make(self, tell: Tell) -> int:
        for number in range(1, self.pieces + 1):
            if not self.went_on.acquire(timeout=20):
                raise AssertionError("the test forgot to go on")
            self.done = number
            if not tell(number, self.pieces):
                raise FitdoctorError("Stopped.")
        return self.done

    def go_on(self, pieces: int = 1) -> None:
        self.went_on.release(pieces)


def work_of(held: Held, heard: list[Any], stopped: Callable[[], None] = nothing) -> LongWork:
    return LongWork("Counting stitches", held.make, heard.append, heard.append, stopped)


def press(window: Window, name: str) -> None:
    button = window.findChild(QAbstractButton, name)
    assert isinstance(button, QAbstractButton)
    QTest.mouseClick(button, Qt.MouseButton.LeftButton)


def said(window: Window) -> str:
    return window.work.words.text()


def test_the_bar_says_what_is_done_and_how_far_and_goes_when_it_is_over(qtbot: QtBot, window: Window) -> None:
    held, heard = Held(), list[Any]()
    window.at_work.start(work_of(held, heard))
    qtbot.waitUntil(window.work.isVisible)
    assert said(window) == "Counting stitches."
    held.go_on(4)
    qtbot.waitUntil(lambda: heard == [4])
    assert not window.work.isVisible()
    assert not window.at_work.busy


def test_how_far_the_work_is_is_told_while_it_goes_on(qtbot: QtBot, window: Window) -> None:
    held, heard = Held(), list[Any]()
    window.at_work.start(work_of(held, heard))
    qtbot.waitUntil(window.work.isVisible)
    held.go_on()
    qtbot.waitUntil(lambda: said(window) == "Counting stitches: 1 of 4.")
    assert "1 of 4" in window.work.accessibleName()
    held.go_on(3)
    qtbot.waitUntil(lambda: heard == [4])


def test_stop_ends_the_work_after_the_piece_in_hand(qtbot: QtBot, window: Window) -> None:
    held, heard, stopped = Held(), list[Any](), list[bool]()
    window.at_work.start(work_of(held, heard, lambda: stopped.append(True)))
    qtbot.waitUntil(window.work.isVisible)
    press(window, "work-stop")
    assert "stopping" in said(window)
    held.go_on()
    qtbot.waitUntil(lambda: stopped == [True])
    assert held.done == 1
    assert heard == []
    assert not window.work.isVisible()


def test_stop_works_by_the_keyboard(qtbot: QtBot, window: Window) -> None:
    held, stopped = Held(), list[bool]()
    window.at_work.start(work_of(held, [], lambda: stopped.append(True)))
    qtbot.waitUntil(window.work.isVisible)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    for _ in range(12):
        QTest.keyClick(window, Qt.Key.Key_F6)
        focus = window.focusWidget()
        if focus is not None and focus.objectName() == "work-stop":
            break
    QTest.keyClick(window.focusWidget(), Qt.Key.Key_Return)
    held.go_on()
    qtbot.waitUntil(lambda: stopped == [True])


def test_what_went_wrong_is_handed_on_and_is_no_stop(qtbot: QtBot, window: Window) -> None:
    heard, stopped = list[Any](), list[bool]()

    def fail(_tell: Tell) -> None:
        raise FitdoctorError("The disk is full.")

    window.at_work.start(LongWork("Writing", fail, heard.append, heard.append, lambda: stopped.append(True)))
    qtbot.waitUntil(lambda: len(heard) == 1)
    assert str(heard[0]) == "The disk is full."
    assert stopped == []


def test_works_wait_for_one_another(qtbot: QtBot, window: Window) -> None:
    first, second, heard = Held(2), Held(3), list[Any]()
    window.at_work.start(work_of(first, heard))
    window.at_work.start(work_of(second, heard))
    second.go_on(3)
    first.go_on(2)
    qtbot.waitUntil(lambda: heard == [2, 3])


def test_the_bar_stays_when_the_window_is_built_anew(qtbot: QtBot, window: Window) -> None:
    held, heard = Held(), list[Any]()
    window.at_work.start(work_of(held, heard))
    held.go_on()
    qtbot.waitUntil(lambda: window.work.isVisible() and "1 of 4" in said(window))
    window.rebuild(look_of(dark=True, percent=200))
    assert window.work.isVisible()
    assert said(window) == "Counting stitches: 1 of 4."
    assert not window.work.words.clipped()
    held.go_on(3)
    qtbot.waitUntil(lambda: heard == [4])


def test_work_that_is_soon_over_shows_no_bar(qtbot: QtBot) -> None:
    quick = Window(Shop(theme="light"))
    qtbot.addWidget(quick)
    quick.show()
    heard: list[Any] = []
    shown: list[bool] = []
    quick.at_work.start(LongWork("Writing", lambda _tell: shown.append(quick.work.isVisible()), heard.append, heard.append))
    assert not quick.work.isVisible()
    qtbot.waitUntil(lambda: len(heard) == 1)
    assert shown == [False]
    assert not quick.work.isVisible()


def test_a_window_that_is_closed_hears_nothing_more(qtbot: QtBot, window: Window) -> None:
    held, heard, over = Held(), list[Any](), threading.Event()

    def make(tell: Tell) -> None:
        try:
            held.make(tell)
        finally:
            over.set()

    window.at_work.start(LongWork("Counting", make, heard.append, heard.append))
    window.close()
    held.go_on(4)
    assert over.wait(20)
    qtbot.wait(0)
    assert held.done == 1
    assert heard == []


# ---- by turns


def count_to(number: int, seen: list[int], closed: list[bool] | None = None) -> Turns:
    try:
        for at in range(1, number + 1):
            seen.append(at)
            yield at, number
    except GeneratorExit:
        if closed is not None:
            closed.append(True)
        raise
    return number


def test_turns_give_the_result_in_one_go_or_in_the_window(qtbot: QtBot, window: Window) -> None:
    assert in_one_go(count_to(3, [])) == 3
    heard: list[Any] = []
    window.at_work.start(LongWork("Painting", count_to(3, []), heard.append, heard.append))
    qtbot.waitUntil(lambda: heard == [3])


def test_turns_are_closed_when_they_are_stopped(qtbot: QtBot, window: Window) -> None:
    seen, closed, stopped = list[int](), list[bool](), list[bool]()

    def first_then_stop() -> Turns:
        turns = count_to(5, seen, closed)
        for turn in turns:
            if turn == (2, 5):
                window.at_work.stop()
            yield turn

    window.at_work.start(LongWork("Painting", first_then_stop(), nothing, nothing, lambda: stopped.append(True)))
    qtbot.waitUntil(lambda: stopped == [True])
    assert seen == [1, 2]
    assert closed == [True]


@pytest.mark.parametrize("stopped", [True, False])
@pytest.mark.usefixtures("qtbot")
def test_printing_that_is_stopped_is_called_off(tmp_path: Path, stopped: bool) -> None:
    target = tmp_path / "guides.pdf"
    printer = QPrinter()
    printer.setOutputFileName(str(target))
    turns = print_by_turns([Page(210.0, 297.0)] * 3, "A4", printer)
    assert next(turns) == (1, 3)
    if stopped:
        turns.close()
    else:
        in_one_go(turns)
    assert target.exists() != stopped


# ---- what is long in the window


def test_a_reading_that_is_stopped_leaves_what_was_read_before(qtbot: QtBot, window: Window, knowledge: Knowledge) -> None:
    desk = Desk(window)
    desk.open(knowledge)
    desk.read_anew()
    window.at_work.stop()
    qtbot.waitUntil(lambda: not window.at_work.busy)
    assert desk.fitting is not None
    assert desk.fitting.job.knowledge is knowledge
    shown = window.message.shown()
    assert shown is not None
    assert "stopped" in shown[0]
    press(window, "message-button")
    qtbot.waitUntil(lambda: not window.at_work.busy, timeout=20_000)
    assert desk.fitting.job.knowledge is not knowledge
    assert len(desk.fitting.job.knowledge.causes) == len(knowledge.causes)


def test_the_first_reading_can_be_stopped_and_taken_up_again(qtbot: QtBot, window: Window) -> None:
    desk = Desk(window)
    desk.start()
    window.at_work.stop()
    qtbot.waitUntil(lambda: not window.at_work.busy)
    assert desk.fitting is None
    words = window.findChild(Words, "waiting-words")
    assert isinstance(words, Words)
    assert "not read to its end" in words.text()
    press(window, "message-button")
    qtbot.waitUntil(lambda: desk.fitting is not None, timeout=20_000)


def test_reading_tells_every_file() -> None:
    told: list[tuple[int, int]] = []

    def tell(done: int, of: int) -> bool:
        told.append((done, of))
        return True

    read_all(Shop(), tell)
    assert [done for done, _ in told] == list(range(1, told[0][1] + 1))


@pytest.mark.parametrize("ending", [".pdf", ".html", ".txt"])
def test_a_sheet_that_is_stopped_while_it_is_drawn_leaves_no_file(table: MakeTable, tmp_path: Path, ending: str) -> None:
    top = table("dress")
    page = top.go("sheet")
    assert isinstance(page, SheetPage)
    top.job.measure("back-neck-surplus", None)  # another case, so that its pictures are not drawn yet
    top.window.at_work.stop_all()
    page.save(tmp_path / f"sheet{ending}")
    top.window.at_work.stop()
    top.settle()
    assert list(tmp_path.glob("sheet*")) == []
    assert not top.job.kept.written


def test_of_several_files_all_are_written_or_none(tmp_path: Path) -> None:
    (tmp_path / "old.svg").write_text("old")
    files = {tmp_path / "new.svg": b"1", tmp_path / "old.svg": b"2", tmp_path / "none" / "x.svg": b"3"}
    with pytest.raises(FitdoctorError, match="could not be written"):
        write_all(files)
    assert {path.name for path in tmp_path.iterdir()} == {"old.svg"}
    assert write_all({tmp_path / "a": b"a"}) == [tmp_path / "a"]


def test_a_picture_is_written_whole_or_not_at_all(tmp_path: Path) -> None:
    image = QImage(20, 10, QImage.Format.Format_RGB32)
    image.fill(0)
    assert saved(image, tmp_path / "page.png") == tmp_path / "page.png"
    assert QImage(str(tmp_path / "page.png")).size() == image.size()
    with pytest.raises(FitdoctorError, match="could not be written"):
        saved(image, tmp_path / "page.notapicture")
    assert [path.name for path in tmp_path.iterdir()] == ["page.png"]


def test_pictures_that_are_stopped_by_the_user_leave_only_whole_ones(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(_knowledge: Knowledge, folder: Path, symptoms_only: bool = False) -> Iterator[Path]:
        assert symptoms_only
        image = QImage(20, 10, QImage.Format.Format_RGB32)
        yield saved(image, folder / "one.png")
        raise KeyboardInterrupt

    monkeypatch.setattr(shots, "take_shots", interrupted)
    assert main(["shots", str(tmp_path), "--symptoms"]) == STOPPED
    assert "Stopped." in capsys.readouterr().err
    assert [path.name for path in tmp_path.iterdir()] == ["one.png"]
