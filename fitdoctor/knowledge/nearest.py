"""What was perhaps meant."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """` (did you mean ‘…’?)` where a known word is near, else nothing.

    >>> did_you_mean("shows-as", ["shows_as", "sources"])
    ' (did you mean ‘shows_as’?)'
    """
    words = list(known)
    near = get_close_matches(word, words, 1) or get_close_matches(word.lower().replace("_", "-").replace(" ", "-"), words, 1)
    return f" (did you mean ‘{near[0]}’?)" if near else ""
