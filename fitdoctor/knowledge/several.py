"""Several faults in one breath: what was said in parts, and the finds of the parts brought together."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from fitdoctor.knowledge.stems import stems

_JOINT = r"(?:and|but|yet|while|although|though|however|also|then)\s+"
_BREAK = re.compile(rf"[,;:.!?]+\s+(?:{_JOINT})*|\s+(?:{_JOINT})+", re.IGNORECASE)
_LEAST_SAID = 3
_ANSWERED = 0.25
_TAKEN_IN_TURN, _LOOKED_AT = 12, 60


def parts_of(said: str) -> tuple[str, ...]:
    """The parts of a sentence that say enough to be looked up by themselves; a part that says less stays with the one before.

    >>> parts_of("The seat is too tight across, but the waist stands away at the back")
    ('The seat is too tight across', 'the waist stands away at the back')
    >>> parts_of("tight over bust and waist")
    ('tight over bust waist',)
    """
    parts: list[str] = []
    for part in (piece.strip() for piece in _BREAK.split(said) if piece.strip()):
        if parts and (len(stems(part)) < _LEAST_SAID or len(stems(parts[-1])) < _LEAST_SAID):
            parts[-1] = f"{parts[-1]} {part}"
        else:
            parts.append(part)
    return tuple(parts)


def brought_together(whole: Mapping[int, float], parts: Sequence[Mapping[int, float]]) -> dict[int, float]:
    """Scores that let the best of every part stand near the top.

    A find is raised by how near it comes to the best of a part; once a part is answered it raises the next find far less.

    Args:
        whole: find -> score for all that was said, which alone knows the connection.
        parts: the same for each part.
    """
    shares = [_shares(part) for part in parts if part]
    answered = [0.0] * len(shares)

    def raised(find: int) -> float:
        return whole[find] * (1 + max((of.get(find, 0.0) * _ANSWERED**a for of, a in zip(shares, answered, strict=True)), default=0.0))

    left = sorted(whole, key=lambda find: -whole[find])
    near, together = left[:_LOOKED_AT], dict[int, float]()
    while near and len(together) < _TAKEN_IN_TURN:
        best = max(near, key=raised)
        together[best] = raised(best)
        near.remove(best)
        answered = [a + of.get(best, 0.0) for of, a in zip(shares, answered, strict=True)]
    least = min(together.values(), default=0.0)
    return together | {find: min(least, raised(find)) for find in left if find not in together}


def _shares(part: Mapping[int, float]) -> dict[int, float]:
    best = max(part.values())
    return {find: score / best for find, score in part.items()}
