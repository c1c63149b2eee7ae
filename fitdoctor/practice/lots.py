"""Draws that come out the same on every machine."""

from __future__ import annotations

import hashlib
import random
from collections.abc import Sequence
from typing import TypeVar

Thing = TypeVar("Thing")


class Lots:
    """Draws from a seed.

    The seed is written as text and hashed (SHA-256) to the number the Mersenne Twister starts from; after that only its `random()` is
    used. Python promises that both stay the same in later versions; of `choice`, `sample` and `shuffle` it does not.
    """

    def __init__(self, *seed: object) -> None:
        text = "/".join(str(part) for part in seed)
        self._random = random.Random(int.from_bytes(hashlib.sha256(text.encode()).digest(), "big"))

    def happens(self, chance: float) -> bool:
        """Whether something of this chance happens."""
        return self._random.random() < chance

    def below(self, end: int) -> int:
        """A whole number from 0 up to and without `end`."""
        return int(self._random.random() * end)

    def one(self, things: Sequence[Thing]) -> Thing:
        """One of them, each alike."""
        return things[self.below(len(things))]

    def shuffled(self, things: Sequence[Thing]) -> list[Thing]:
        """All of them in an order drawn at random (Fisher and Yates)."""
        left = list(things)
        for at in range(len(left) - 1, 0, -1):
            other = self.below(at + 1)
            left[at], left[other] = left[other], left[at]
        return left
