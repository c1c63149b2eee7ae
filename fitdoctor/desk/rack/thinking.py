"""Answers worked out beside the window, one garment after another, the one in hand first."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from fitdoctor.desk.background import run_in_background
from fitdoctor.desk.rack.kept import OnRack
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.answer import RackAnswer, answer_at
from fitdoctor.rack.prospects import Prospects
from fitdoctor.rack.why import Money
from fitdoctor.shop import Shop


class Thinker:
    """Works the answers of garments out; an answer stands until its garment changes.

    What is worked out once for all garments (`Prospects`) is touched by one errand at a time.
    """

    def __init__(self, ready: Callable[[], None], failed: Callable[[Exception], None]) -> None:
        self._ready, self._failed = ready, failed
        self._by: tuple[Knowledge, Shop, Money] | None = None
        self._known: dict[str, tuple[OnRack, RackAnswer]] = {}
        self._wanted: list[OnRack] = []
        self._prospects: dict[bool, Prospects] = {}
        self.busy = self._stopped = False

    def answer_of(self, garment: OnRack) -> RackAnswer | None:
        """The answer as the garment stands now, if it is worked out."""
        known = self._known.get(garment.id)
        return known[1] if known and _asked(known[0]) == _asked(garment) else None

    def want(self, garments: Sequence[OnRack], knowledge: Knowledge, shop: Shop, money: Money) -> None:
        """Work these out by this knowledge and for this shop, in this order, in place of what was wanted before."""
        if self._by is None or self._by[0] is not knowledge or self._by[1] != shop:
            self._by = knowledge, shop, money
            self._known.clear()
            self._prospects = {hurry: Prospects(knowledge, shop, breakers_only=hurry) for hurry in (False, True)}
        self._wanted = [garment for garment in garments if self.answer_of(garment) is None]
        self._go_on()

    def stop(self) -> None:
        """Hand nothing over any more: the window is closed."""
        self._stopped = True

    def _go_on(self) -> None:
        by = self._by
        if self.busy or self._stopped or not self._wanted or by is None:
            return
        garment = self._wanted.pop(0)
        (knowledge, shop, money), prospects = by, self._prospects[garment.hurry]
        self.busy = True
        run_in_background(
            lambda: answer_at(knowledge, garment.rack, shop, prospects, money),
            lambda answer: self._come_back(garment, answer, by),
            self._give_up,
        )

    def _come_back(self, garment: OnRack, answer: RackAnswer, by: tuple[Knowledge, Shop, Money]) -> None:
        self.busy = False
        if self._stopped:
            return
        if by is self._by:
            self._known[garment.id] = garment, answer
            self._ready()
        self._go_on()

    def _give_up(self, error: Exception) -> None:
        self.busy = False
        if not self._stopped:
            self._failed(error)
            self._go_on()


def _asked(garment: OnRack) -> OnRack:
    """The garment without what the answer does not turn on."""
    return msgspec.structs.replace(garment, skipped=())
