"""Two windows on one job: changes to different fields are joined, changes to the same field are named."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import msgspec

from fitdoctor.jobbook.job import Job

_SET_BY_THE_BOOK = ("id", "revision", "reached", "added", "changed")
_GONE = object()


def merged(base: Job, kept: Job, wanted: Job) -> tuple[Job, tuple[str, ...]]:
    """The kept job with what was changed from base to wanted.

    Args:
        base: the job as the changing window read it; kept: as it stands in the book now; wanted: as it should become.

    Returns:
        The joined job, and the fields that both sides changed, each to something else; there the kept value stands.
    """
    sides = [msgspec.to_builtins(side) for side in (base, kept, wanted)]
    for side in sides:
        for name in _SET_BY_THE_BOOK:
            del side[name]
    clashes: list[str] = []
    joined = _joined(sides[0], sides[1], sides[2], (), clashes)
    book = {name: getattr(kept, name) for name in _SET_BY_THE_BOOK}
    return msgspec.structs.replace(msgspec.convert(joined, Job), **book), tuple(clashes)


def _joined(base: Any, kept: Any, wanted: Any, at: tuple[str, ...], clashes: list[str]) -> Any:
    if base == wanted or kept == wanted:
        return kept
    if base == kept:
        return wanted
    if all(isinstance(side, Mapping) for side in (base, kept, wanted)):
        names = list(dict.fromkeys((*kept, *wanted)))
        values = {n: _joined(base.get(n, _GONE), kept.get(n, _GONE), wanted.get(n, _GONE), (*at, n), clashes) for n in names}
        return {name: value for name, value in values.items() if value is not _GONE}
    clashes.append(" ".join(at).replace("_", " "))
    return kept
