"""Why a line stands where it stands: a sentence, the entry it comes from, its sources."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Reason:
    """One reason, so that any line of the screen or the sheet can be asked why.

    Attributes:
        text: a sentence.
        entry: id of the entry it comes from; empty for arithmetic.
        sources: source ids.
        state: what holds: met, not-met, not-known, or empty.
    """

    text: str
    entry: str = ""
    sources: tuple[str, ...] = ()
    state: str = ""
