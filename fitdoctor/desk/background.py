"""The one door to another thread: long work goes through it and comes back to the window."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

_running: set[_Errand] = set()


class _Errand(QObject):
    done = Signal(object)
    failed = Signal(object)

    def __init__(self, function: Callable[[], Any], then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
        super().__init__()
        self._function, self._then, self._failed = function, then, failed
        self.done.connect(self._come_back, Qt.ConnectionType.QueuedConnection)
        self.failed.connect(self._give_up, Qt.ConnectionType.QueuedConnection)

    def go(self) -> None:
        try:
            result = self._function()
        except Exception as error:  # noqa: BLE001 - whatever it is, the window has to hear of it
            self.failed.emit(error)
        else:
            self.done.emit(result)

    def _come_back(self, result: Any) -> None:
        _running.discard(self)
        self._then(result)

    def _give_up(self, error: Exception) -> None:
        _running.discard(self)
        self._failed(error)


def run_in_background(function: Callable[[], Any], then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
    """Run a function in another thread; its result, or what it raised, is handed over in the window's own."""
    errand = _Errand(function, then, failed)
    _running.add(errand)
    threading.Thread(target=errand.go, daemon=True).start()
