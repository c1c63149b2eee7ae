"""The one door to another thread: long work goes through it, tells how far it is, can be stopped, and comes back to the window.

What paints is done by turns in the window's own thread, for faces and printers are not to be shared between threads.

Parts of the window that were put away and refer to one another in a circle are freed by Python's collector, in whatever thread it
happens to run; freed outside the window's own they bring the program down. So the collector rests while an errand runs, and an errand
is let go of by the window's thread alone.
"""

from __future__ import annotations

import gc
import threading
from collections.abc import Callable, Generator
from time import monotonic
from typing import Any

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from fitdoctor.errors import FitdoctorError

Tell = Callable[[int, int], bool]
"""(pieces done, pieces in all) -> go on? Long work calls it after each piece, and ends where it says no."""
Turns = Generator[tuple[int, int], None, Any]
"""Yields (pieces done, pieces in all) after each piece, and returns the result; closed between two pieces it leaves nothing behind."""
_SELDOM_S = 0.05
_running: set[Errand] = set()


def nothing(*_: object) -> None:
    """What is done where nothing need be."""


class Stopped(FitdoctorError):
    """Work ended early because it was told to; it left nothing behind."""

    def __init__(self) -> None:
        super().__init__("The work was stopped.")


class Errand(QObject):
    """Work in another thread; its signals arrive in the window's own."""

    done = Signal(object)
    failed = Signal(object)
    told = Signal(int, int)

    def __init__(self, function: Callable[[Tell], Any], then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
        super().__init__()
        self._function, self._then, self._failed = function, then, failed
        self._thread = threading.Thread(target=self._go, daemon=True)
        self._stop = threading.Event()
        self._last = 0.0
        self.done.connect(self._come_back, Qt.ConnectionType.QueuedConnection)
        self.failed.connect(self._give_up, Qt.ConnectionType.QueuedConnection)

    def stop(self) -> None:
        """Ask the work to end after the piece in hand."""
        self._stop.set()

    def forget(self) -> None:
        """Ask the work to end, and hand nothing over any more."""
        self.stop()
        self._then = self._failed = nothing

    def begin(self) -> None:
        """Send it off; the collector rests from now on."""
        _running.add(self)
        gc.disable()
        self._thread.start()

    def _go(self) -> None:
        try:
            result = self._function(self._tell)
        except Exception as error:  # noqa: BLE001 - whatever it is, the window has to hear of it
            self.failed.emit(Stopped() if self._stop.is_set() and isinstance(error, FitdoctorError) else error)
        else:
            self.done.emit(result)

    def _tell(self, done: int, of: int) -> bool:
        now = monotonic()
        if now - self._last >= _SELDOM_S or done == of:
            self._last = now
            self.told.emit(done, of)
        return not self._stop.is_set()

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


class ByTurns(QObject):
    """Work done piece by piece in the window's own thread, which answers in between."""

    told = Signal(int, int)

    def __init__(self, turns: Turns, then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
        super().__init__()
        self._turns, self._then, self._failed = turns, then, failed
        self._stopping = False

    def stop(self) -> None:
        """End before the next piece."""
        self._stopping = True

    def forget(self) -> None:
        """End now, and hand nothing over any more."""
        self.stop()
        self._turns.close()
        self._then = self._failed = nothing

    def begin(self) -> None:
        """Do the first piece when the window has nothing else to do."""
        QTimer.singleShot(0, self._turn)

    def _turn(self) -> None:
        if self._stopping:
            self._turns.close()
            self._failed(Stopped())
            return
        try:
            done, of = next(self._turns)
        except StopIteration as end:
            self._then(end.value)
        except Exception as error:  # noqa: BLE001 - whatever it is, the window has to hear of it
            self._failed(error)
        else:
            self.told.emit(done, of)
            self.begin()


def in_one_go(turns: Turns) -> Any:
    """The result of work by turns, where nobody waits in between."""
    while True:
        try:
            next(turns)
        except StopIteration as end:
            return end.value


def run_in_background(function: Callable[[], Any], then: Callable[[Any], None], failed: Callable[[Exception], None]) -> None:
    """Run a function in another thread; its result, or what it raised, is handed over in the window's own."""
    Errand(lambda _tell: function(), then, failed).begin()
