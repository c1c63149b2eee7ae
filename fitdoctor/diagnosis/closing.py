"""Between the knowledge and what is learned: a case as a closed job, the printed chances, and what was learned as entries to lay over."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import Any

import msgspec

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import answer_to, case_net
from fitdoctor.diagnosis.learning import ClosedJob, Learned, Printed
from fitdoctor.knowledge.entries import Cause, Entry, LengthMm
from fitdoctor.knowledge.knowledge import Knowledge


def closed_job(knowledge: Knowledge, case: Case, confirmed: Iterable[str], printed: Printed | None = None) -> ClosedJob:
    """What the closed case teaches.

    Args:
        confirmed: causes that turned out to be present.
        printed: the printed chances of its garment where they are at hand, which makes thousands of cases quick.
    """
    printed = printed or printed_chances(knowledge, case.garment)
    answers = {finding: answer for finding in printed.leaks if (answer := answer_to(knowledge, case, finding))}
    return ClosedJob(case.garment, frozenset(confirmed) & printed.priors.keys(), msgspec.convert(answers, dict))


def printed_chances(knowledge: Knowledge, garment: str) -> Printed:
    """The chances of one garment as the knowledge prints them."""
    net = case_net(knowledge, Case(garment=garment))
    return Printed(
        links={key: link.chance for key, link in net.links.items()},
        leaks=dict(zip(net.findings, net.net.leaks.tolist(), strict=True)),
        priors=dict(zip(net.causes, net.net.priors.tolist(), strict=True)),
    )


def overlay(knowledge: Knowledge, learned: Learned) -> dict[tuple[str, str], dict[str, Any]]:
    """The entries whose words changed by what was learned, as plain data to be written into a folder that lies over the shipped one.

    Each chance becomes the nearest word of the scale; entries whose words all stay are left out.

    Returns:
        (kind, id) -> the whole entry; kind is causes, symptoms or checks.
    """
    entries: dict[tuple[str, str], tuple[Any, Any]] = {}
    for id_, cause in knowledge.causes.items():
        entries["causes", id_] = cause, _cause_learned(knowledge, cause, learned)
    for kind, plural in (("symptom", "symptoms"), ("check", "checks")):
        for id_, entry in knowledge.kind(plural).items():
            leak = getattr(entry, "leak", "leak")
            word = nearest_word(learned.leak((kind, id_), knowledge.leak(leak)), knowledge.scale["leak"], leak)
            entries[plural, id_] = entry, msgspec.structs.replace(entry, leak=word)
    return {key: as_written(after) for key, (before, after) in entries.items() if before != after}


def nearest_word(chance: float, scale: Mapping[str, float], now: str) -> str:
    """The word of the scale whose odds are nearest; the present word where it is as near, or is not of this scale."""
    if now not in scale:
        return now
    return min(scale, key=lambda word: (abs(_log_odds(scale[word]) - _log_odds(chance)), word != now))


def _cause_learned(knowledge: Knowledge, cause: Cause, learned: Learned) -> Cause:
    scale = knowledge.scale["strength"]

    def word(kind: str, finding: str, now: str) -> str:
        return nearest_word(learned.strength(cause.id, (kind, finding), knowledge.strength(now)), scale, now)

    common = knowledge.scale["how-common"]
    return msgspec.structs.replace(
        cause,
        shows_as=tuple(msgspec.structs.replace(s, strength=word("symptom", s.symptom, s.strength)) for s in cause.shows_as),
        answers=tuple(msgspec.structs.replace(a, yes=word("check", a.check, a.yes)) for a in cause.answers),
        how_common={g: nearest_word(learned.prior(cause.id, g, common[now]), common, now) for g, now in cause.how_common.items()},
    )


def as_written(entry: Entry) -> dict[str, Any]:
    """An entry as plain data to be written: nothing empty, lengths with their unit."""
    plain: dict[str, Any] = _without_empty(msgspec.to_builtins(entry, enc_hook=_length))
    return plain


def _length(value: object) -> str:
    if isinstance(value, LengthMm):
        return f"{value:g} mm"
    raise NotImplementedError(type(value).__name__)


def _without_empty(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: _without_empty(inner) for name, inner in value.items() if inner not in ("", (), [], {}, None)}
    return [_without_empty(inner) for inner in value] if isinstance(value, list | tuple) else value


def _log_odds(chance: float) -> float:
    kept = min(max(chance, 1e-9), 1 - 1e-9)
    return math.log(kept / (1 - kept))
