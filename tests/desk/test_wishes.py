"""What the system wishes for is followed, and what the shop has set goes before it."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtDBus import QDBusMessage
from pytestqt.qtbot import QtBot

from fitdoctor.desk import window as window_module
from fitdoctor.desk.look import look_of
from fitdoctor.desk.parts.bar import LikelihoodBar
from fitdoctor.desk.window import Window
from fitdoctor.desk.wishes import ask_for_stillness, said_by
from fitdoctor.shop import Shop, Theme, Wish

if TYPE_CHECKING:
    from tests.desk.table_top import MakeTable

pytest_plugins = ["tests.desk.table_top"]


@pytest.mark.parametrize(
    ("theme", "wished", "dark"), [("system", True, True), ("system", False, False), ("light", True, False), ("dark", False, True)]
)
def test_dark_follows_the_system_unless_the_shop_says_otherwise(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, theme: Theme, wished: bool, dark: bool
) -> None:
    monkeypatch.setattr(window_module, "dark_wished", lambda: wished)
    window = Window(Shop(theme=theme))
    qtbot.addWidget(window)
    assert window.look.dark == dark


@pytest.mark.parametrize(("contrast", "wished", "high"), [("system", True, True), ("system", False, False), ("yes", False, True)])
def test_high_contrast_follows_the_system_or_the_shop(
    qtbot: QtBot, monkeypatch: pytest.MonkeyPatch, contrast: Wish, wished: bool, high: bool
) -> None:
    monkeypatch.setattr(window_module, "contrast_wished", lambda: wished)
    window = Window(Shop(theme="light", high_contrast=contrast))
    qtbot.addWidget(window)
    assert window.look.tokens.high_contrast == high
    assert (window.look.tones.colours["bg"] == "#FFFFFF") == high


def test_reduced_motion_of_the_system_is_taken_in_while_the_window_stands(table: MakeTable) -> None:
    top = table("trousers")
    top.go("narrow")
    assert not top.window.look.still
    top.window.be_still(True)
    assert top.window.look.still
    assert top.page.step == "narrow"


def test_a_bar_moves_to_its_new_chance_or_is_there_at_once(qtbot: QtBot) -> None:
    moving = LikelihoodBar(look_of(dark=False), 0.9, "likely", before=0.1)
    still = LikelihoodBar(look_of(dark=False, still=True), 0.9, "likely", before=0.1)
    for bar in (moving, still):
        qtbot.addWidget(bar)
        bar.resize(bar.sizeHint())
    middle = moving.width() // 2
    assert moving.grab().toImage().pixelColor(middle, 6) != still.grab().toImage().pixelColor(middle, 6)
    finished = LikelihoodBar(look_of(dark=False), 0.9, "likely")
    qtbot.addWidget(finished)
    finished.resize(finished.sizeHint())
    assert finished.grab().toImage() == still.grab().toImage()


@pytest.mark.parametrize(("value", "wished"), [(1, True), (0, False), (7, False)])
def test_the_portals_answer_is_read(value: int, wished: bool) -> None:
    # reduced-motion of the Settings portal (XDG Desktop Portal): 0 no preference, 1 reduced; unknown values are no preference.
    answer = QDBusMessage.createSignal("/test", "org.example.test", "answer")
    answer.setArguments([value])
    assert said_by(answer) == wished


def test_a_desktop_that_does_not_answer_wishes_for_nothing(qtbot: QtBot, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DBUS_SESSION_BUS_ADDRESS", "unix:path=/nonexistent/bus")
    heard: list[bool] = []
    ask_for_stillness(heard.append)
    qtbot.waitUntil(lambda: bool(heard))
    assert heard == [False]
