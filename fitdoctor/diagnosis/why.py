"""Why a cause stands where it stands: what speaks for it, what against it, what has not been looked at, each with its source."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from fitdoctor.diagnosis.case_net import CaseNet, Key, Link
from fitdoctor.diagnosis.net import Floats
from fitdoctor.diagnosis.posterior import Posterior, odds_without
from fitdoctor.diagnosis.ranking import RULED_OUT, Evidence, Finding, Kind, NotLooked, RankedCause, chance_word, weight_word
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason

_LEAST_WEIGHT = 0.1
_MOST_WEIGHT = 50.0


def finding_title(knowledge: Knowledge, finding: Key) -> str:
    """What a finding is called on the screen."""
    kind, id_ = finding
    return knowledge.symptoms[id_].title if kind == "symptom" else knowledge.checks[id_].title


def as_finding(knowledge: Knowledge, net: CaseNet, row: int) -> Finding:
    """One answered finding for the reader."""
    kind, id_ = net.findings[row]
    return Finding(id_, _kind(kind), finding_title(knowledge, net.findings[row]), "yes" if row in net.yes else "no")


def rank(knowledge: Knowledge, net: CaseNet, found: Posterior) -> tuple[RankedCause, ...]:
    """Every cause of the garment with its reasons, the likeliest first.

    Causes that could bring on what is seen come before those of which nothing shows: a common fault nobody has looked for is no
    rival of a rare one that fits. The ruled-out ones come last.
    """
    weights = _weights(net, found)
    order = np.argsort(-found.log_odds, kind="stable").tolist()
    ranked = (_ranked(knowledge, net, column, float(found.chances[column]), weights) for column in order)
    return tuple(sorted(ranked, key=lambda cause: (cause.ruled_out is not None, bool(net.yes) and cause.id not in net.able)))


def _weights(net: CaseNet, found: Posterior) -> dict[int, Floats]:
    """By how much each finding moves the log-odds of each cause; 0 where the cause is settled with and without it."""
    without = odds_without(net.net, net.yes, net.no)
    with np.errstate(invalid="ignore"):
        moved = {row: np.nan_to_num(found.log_odds - odds, nan=0.0) for row, odds in without.items()}
    return {row: np.clip(change, -_MOST_WEIGHT, _MOST_WEIGHT) for row, change in moved.items()}


def _ranked(knowledge: Knowledge, net: CaseNet, column: int, chance: float, weights: Mapping[int, Floats]) -> RankedCause:
    cause = knowledge.causes[net.causes[column]]
    why = Reason(cause.why, cause.id, cause.sources)
    out = net.ruled_out.get(cause.id)
    if out is not None:
        return RankedCause(cause.id, cause.title, 0.0, RULED_OUT, (out, why), ruled_out=out)
    evidence = sorted(_evidence(knowledge, net, column, weights), key=lambda e: -abs(e.weight))
    return RankedCause(
        id=cause.id,
        title=cause.title,
        probability=chance,
        word=chance_word(chance),
        because=(why, *_reasons(net, cause.id, evidence)),
        speaks_for=tuple(e for e in evidence if e.weight > 0),
        speaks_against=tuple(e for e in evidence if e.weight < 0),
        not_looked=_not_looked(knowledge, net, column),
    )


def _evidence(knowledge: Knowledge, net: CaseNet, column: int, weights: Mapping[int, Floats]) -> Iterator[Evidence]:
    for row, moved in weights.items():
        weight = float(moved[column])
        if abs(weight) >= _LEAST_WEIGHT:
            it = as_finding(knowledge, net, row)
            linked = bool(net.net.links[row, column] > 0)
            yield Evidence(it.finding, it.kind, it.title, it.answer, weight, weight_word(weight), linked)


def _reasons(net: CaseNet, cause: str, evidence: Sequence[Evidence]) -> Iterator[Reason]:
    for item in evidence:
        link = net.links.get((cause, (item.kind, item.finding)))
        if link is not None:
            yield Reason(_sentence(item, link), cause, link.sources, "met" if item.answer == "yes" else "not-met")


def _sentence(item: Evidence, link: Link) -> str:
    """The finding beside what the cause lets expect."""
    often = link.word.replace("-", " ")
    title = item.title.rstrip(".")
    if item.kind == "check":
        return f"{title}: {item.answer}. From this cause the answer is {often} yes."
    there = "seen" if item.answer == "yes" else "looked for and not there"
    return f"{title}: {there}. This cause {often} shows so."


def _not_looked(knowledge: Knowledge, net: CaseNet, column: int) -> tuple[NotLooked, ...]:
    """What this cause would show and nobody has looked at, the surest sign first."""
    answered = {*net.yes, *net.no}
    strengths = net.net.links[:, column]
    open_ = [row for row in np.flatnonzero(strengths).tolist() if row not in answered]
    open_.sort(key=lambda row: -strengths[row])
    findings = ((net.findings[row], float(strengths[row])) for row in open_)
    return tuple(NotLooked(key[1], _kind(key[0]), finding_title(knowledge, key), strength) for key, strength in findings)


def _kind(kind: str) -> Kind:
    return "symptom" if kind == "symptom" else "check"
