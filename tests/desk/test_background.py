"""Work in another thread comes back to the window, and nothing of the window is freed anywhere else."""

from __future__ import annotations

import gc
import threading
import weakref
from typing import Any

import pytest
from pytestqt.qtbot import QtBot

from fitdoctor.desk.background import run_in_background


def test_the_result_comes_back_in_the_windows_own_thread(qtbot: QtBot) -> None:
    where: list[tuple[Any, bool]] = []

    def came_back(worked: threading.Thread) -> None:
        where.append((worked, threading.current_thread() is worked))

    run_in_background(threading.current_thread, came_back, lambda error: pytest.fail(str(error)))
    qtbot.waitUntil(lambda: bool(where))
    worked, same = where[0]
    assert worked is not threading.main_thread()
    assert not same


def test_what_was_raised_is_handed_over(qtbot: QtBot) -> None:
    raised: list[Exception] = []
    run_in_background(lambda: 1 / 0, raised.append, raised.append)
    qtbot.waitUntil(lambda: bool(raised))
    assert isinstance(raised[0], ZeroDivisionError)


class Ring:
    """Something that refers to itself, so that only the collector frees it."""

    def __init__(self) -> None:
        self.itself = self


def test_circles_are_not_freed_by_the_errands_thread(qtbot: QtBot) -> None:
    freed: list[threading.Thread] = []

    def litter() -> int:
        for _ in range(50):
            weakref.finalize(Ring(), lambda: freed.append(threading.current_thread()))
        made: list[list[list[int]]] = [[[] for _ in range(20)] for _ in range(5000)]  # enough for the collector to set in, were it awake
        return len(made)

    done: list[int] = []
    run_in_background(litter, done.append, lambda error: pytest.fail(str(error)))
    qtbot.waitUntil(lambda: bool(done))
    gc.collect()
    assert len(freed) == 50
    assert set(freed) == {threading.main_thread()}


def test_the_collector_wakes_when_the_last_errand_is_back(qtbot: QtBot) -> None:
    hold = threading.Event()
    done: list[bool] = []
    run_in_background(hold.wait, done.append, lambda error: pytest.fail(str(error)))
    run_in_background(lambda: True, done.append, lambda error: pytest.fail(str(error)))
    qtbot.waitUntil(lambda: len(done) == 1)
    assert not gc.isenabled(), "one is still out"
    hold.set()
    qtbot.waitUntil(lambda: len(done) == 2)
    assert gc.isenabled()
