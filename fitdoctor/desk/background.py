"""The one door to another thread: long work goes through it and comes back to the window.

Parts of the window that were put away and refer to one another in a circle are freed by Python's collector, in whatever thread it
happens to run; freed outside the window's own they bring the program down. So the collector rests while an errand runs, and an errand
is let go of by the window's thread alone.
"""

from __future__ import annotations

import gc
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
        self._thread = threading.Thread(target=self._go, daemon=True)
        self.done.connect(self._come_back, Qt.ConnectionType.QueuedConnection)
        self.failed.connect(self._give_up, Qt.ConnectionType.QueuedConnection)

    def set_out(self) -> None:
        """Begin; the collector rests from now on."""
        _running.add(self)
        gc.disable()
        self._thread.start()

    def _go(self) -> None:
        try:
            result = self._function()
        except Exception as error:  # noqa: BLE001 - whatever it is, the window has to hear of it
            self.failed.emit(error)
        else:
            self.done.emit(result)

    def _come_back(self, result: Any) -> None:
        self._end()
        self._then(result)

    def _give_up(self, error: Exception) -> None:
        self._end()
        self._failed(error)

    def _end(self) -> None:
        self._thread.join()  # it has nothing left to do but to let go of this
        _running.discard(self)
        if not _running:
            gc.enable()


def run_in_background(function: Callable[[], Any], then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
    """Run a function in another thread; its result, or what it raised, is handed over in the window's own."""
    _Errand(function, then, failed).set_out()
