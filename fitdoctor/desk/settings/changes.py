"""What was set on the page, one change after another, and the way back."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from fitdoctor.shop import Shop


@dataclass(frozen=True)
class Change:
    """The values before and after, by the setting's name, and what is said of it."""

    before: Mapping[str, Any]
    after: Mapping[str, Any]
    said: str
    key: str = ""


class Changes:
    """Changes that can be undone; those with one key that follow one another are one."""

    def __init__(self) -> None:
        self._done: list[Change] = []
        self._undone: list[Change] = []

    def last(self) -> Change | None:
        """The change that would be undone."""
        return self._done[-1] if self._done else None

    def note(self, shop: Shop, after: Mapping[str, Any], said: str, key: str = "") -> bool:
        """Remember a change that is about to be made; whether it changes anything."""
        before = {name: getattr(shop, name) for name in after}
        if before == after:
            return False
        last = self.last()
        if key and last and last.key == key and last.before.keys() == before.keys():
            self._done.pop()
            before = dict(last.before)
        self._done.append(Change(before, after, said, key))
        self._undone.clear()
        return True

    def back(self) -> Change | None:
        """Take the last change back."""
        return _moved(self._done, self._undone)

    def on(self) -> Change | None:
        """Make a change again that was taken back."""
        return _moved(self._undone, self._done)


def _moved(here: list[Change], there: list[Change]) -> Change | None:
    if not here:
        return None
    there.append(here.pop())
    return there[-1]
