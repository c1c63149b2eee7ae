"""The way back through the changes of the garment in hand, and forward again."""

from __future__ import annotations

import msgspec

from fitdoctor.desk.shelf import Kept

MOST = 200


class Undo:
    """Remembers the case before each change; changes of one thing that follow each other, such as letters, are one."""

    def __init__(self) -> None:
        self._back: list[tuple[Kept, str]] = []
        self._on: list[tuple[Kept, str]] = []

    def clear(self) -> None:
        """Forget every way."""
        self._back.clear()
        self._on.clear()

    def note(self, before: Kept, key: str) -> None:
        """A change is about to be made of the thing a key names; the way forward is closed."""
        if not (key and self._back and self._back[-1][1] == key):
            self._back.append((before, key))
            del self._back[:-MOST]
        self._on.clear()

    def back(self, now: Kept) -> Kept:
        """The case before the last change, on the page that is open now; as it is now where there is none."""
        return _step(self._back, self._on, now)

    def on(self, now: Kept) -> Kept:
        """The case after the change that was taken back last."""
        return _step(self._on, self._back, now)


def _step(source: list[tuple[Kept, str]], target: list[tuple[Kept, str]], now: Kept) -> Kept:
    if not source:
        return now
    kept, key = source.pop()
    target.append((now, key))
    return msgspec.structs.replace(kept, step=now.step)
