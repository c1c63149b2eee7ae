"""The entries opened one after another, and where on that way one is."""

from __future__ import annotations

from dataclasses import dataclass

from fitdoctor.desk.handbook.kinds import Key
from fitdoctor.knowledge.knowledge import Knowledge


@dataclass(frozen=True)
class Trail:
    """Pages in the order they were opened; `at` is the one open, -1 where there is none."""

    pages: tuple[Key, ...] = ()
    at: int = -1

    @property
    def here(self) -> Key | None:
        """The page that is open."""
        return self.pages[self.at] if self.at >= 0 else None

    def opened(self, key: Key) -> Trail:
        """With another page opened; what lay ahead is given up."""
        if key == self.here:
            return self
        pages = (*self.pages[: self.at + 1], key)
        return Trail(pages, len(pages) - 1)

    def within(self, knowledge: Knowledge) -> Trail:
        """As far as there are such entries; the last of them is open where the one that was is gone."""
        pages = tuple(key for key in self.pages if key[1] in getattr(knowledge, key[0]))
        return Trail(pages, pages.index(self.here) if self.here in pages else len(pages) - 1)

    def moved(self, by: int) -> Trail:
        """One page back (-1) or forward (1), as far as there is one."""
        return Trail(self.pages, self.at + by) if self.ahead(by) else self

    def ahead(self, by: int) -> Key | None:
        """The page that way, or nothing."""
        at = self.at + by
        return self.pages[at] if 0 <= at < len(self.pages) else None
