"""Long work one after another, with a bar in the window that says what is done and how far, and stops it."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QObject, QTimer

from fitdoctor.desk.background import ByTurns, Errand, Stopped, Tell, Turns, nothing
from fitdoctor.desk.parts.work_bar import WorkBar

PATIENCE_MS = 300
"Work that is over sooner shows nothing."


@dataclass(frozen=True)
class LongWork:
    """Work that may take longer than one waits without a word.

    Attributes:
        says: what is being done, as a sentence without its stop: Writing the sheet.
        make: does it in another thread, telling how far it is and hearing whether to go on; or, for what paints, the turns of it.
        then: takes the result in the window's own thread.
        failed: takes what went wrong.
        stopped: called when it was stopped; nothing of it is left behind.
    """

    says: str
    make: Callable[[Tell], Any] | Turns
    then: Callable[[Any], None]
    failed: Callable[[Exception], None]
    stopped: Callable[[], None] = nothing


class AtWork(QObject):
    """Does one thing at a time; the others wait their turn."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._bar: WorkBar | None = None
        self._waiting: deque[LongWork] = deque()
        self._now: LongWork | None = None
        self._errand: Errand | ByTurns | None = None
        self._far = (0, 0)
        self._patience = QTimer(self)
        self._patience.setSingleShot(True)
        self._patience.setInterval(PATIENCE_MS)
        self._patience.timeout.connect(self._show)

    @property
    def busy(self) -> bool:
        """Whether something is being done."""
        return self._now is not None

    def show_in(self, bar: WorkBar) -> None:
        """Take another bar, as the window is built anew."""
        self._bar = bar
        bar.stopWanted.connect(self.stop)
        if self.busy and not self._patience.isActive():
            self._show()

    def start(self, work: LongWork) -> None:
        """Do it, or line it up behind what is being done."""
        self._waiting.append(work)
        if not self.busy:
            self._next()

    def stop(self) -> None:
        """Stop what is being done."""
        if self._errand:
            self._errand.stop()
        if self._bar:
            self._bar.show_stopping()

    def stop_all(self) -> None:
        """Stop what is being done, and forget what waits: the window is closed."""
        self._waiting.clear()
        if self._errand:
            self._errand.forget()
        self._over()

    def _next(self) -> None:
        if not self._waiting:
            return
        self._now, self._far = self._waiting.popleft(), (0, 0)
        make = self._now.make
        self._errand = Errand(make, self._done, self._failed) if callable(make) else ByTurns(make, self._done, self._failed)
        self._errand.told.connect(self._told)
        self._patience.start()
        self._errand.begin()

    def _told(self, done: int, of: int) -> None:
        self._far = (done, of)
        if self._bar and self._bar.isVisible():
            self._bar.show_far(done, of)

    def _show(self) -> None:
        if self._bar and self._now:
            self._bar.show_work(self._now.says, *self._far)

    def _over(self) -> LongWork | None:
        self._patience.stop()
        work, self._now, self._errand = self._now, None, None
        if self._bar:
            self._bar.hide()
        return work

    def _done(self, result: Any) -> None:
        work = self._over()
        try:
            if work:
                work.then(result)
        finally:
            self._go_on()

    def _failed(self, error: Exception) -> None:
        work = self._over()
        try:
            if work and isinstance(error, Stopped):
                work.stopped()
            elif work:
                work.failed(error)
        finally:
            self._go_on()

    def _go_on(self) -> None:
        if not self.busy:
            self._next()
