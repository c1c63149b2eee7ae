"""Two causes that look alike must be told apart: by a check, by another symptom, or by a written reason why not."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from fitdoctor.knowledge.checks.causes import chance, shown_on
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import Cause
from fitdoctor.knowledge.knowledge import Knowledge

Pair = tuple[str, str]


@dataclass(frozen=True)
class Alike:
    """Two causes that share a symptom on a garment where nothing tells them apart."""

    garment: str
    symptom: str


@rule("look-alikes")
def nothing_tells_them_apart(look: Look) -> Iterator[Finding]:
    """Two causes share a symptom on the same garment, nothing tells them apart, and nobody says why."""
    exempt = _exempt(look.knowledge)
    for pair, places in look_alikes(look.knowledge).items():
        if pair not in exempt:
            symptoms = ", ".join(dict.fromkeys(alike.symptom for alike in places))
            garments = ", ".join(dict.fromkeys(alike.garment for alike in places))
            text = f"nothing tells this from ‘{pair[1]}’: both show as {symptoms} ({garments}); name a check that parts them, or told_apart"
            yield Finding("causes", pair[0], text)


@rule("needless-told-apart")
def told_apart_without_need(look: Look) -> Iterator[Finding]:
    """A written exemption for two causes that do not look alike, or that something tells apart by now."""
    needed = look_alikes(look.knowledge)
    for cause in look.knowledge.causes.values():
        for number, told in enumerate(cause.told_apart):
            if told.cause in look.knowledge.causes and _pair(cause.id, told.cause) not in needed:
                text = f"‘{told.cause}’ needs no told_apart: the two share no symptom, or something tells them apart"
                yield Finding("causes", cause.id, text, ("told_apart", number))


def look_alikes(knowledge: Knowledge) -> Mapping[Pair, tuple[Alike, ...]]:
    """Every pair of causes that nothing in the knowledge tells apart, with where."""
    found: dict[Pair, list[Alike]] = defaultdict(list)
    for garment in knowledge.garments:
        signs = {id_: _Signs.of(knowledge, cause, garment) for id_, cause in knowledge.causes.items()}
        for pair, symptom in _sharing(signs).items():
            if not _told_apart(knowledge, signs[pair[0]], signs[pair[1]]):
                found[pair].append(Alike(garment, symptom))
    return {pair: tuple(places) for pair, places in found.items()}


@dataclass(frozen=True)
class _Signs:
    """What a cause shows and answers on one garment, by chance; and what rules it out."""

    shows: Mapping[str, float]
    findings: Mapping[tuple[str, str], float]
    ruled_out_by: frozenset[tuple[str, str]]

    @classmethod
    def of(cls, knowledge: Knowledge, cause: Cause, garment: str) -> _Signs:
        shows = shown_on(knowledge, cause, garment)
        answers = {
            ("check", answer.check): chance(knowledge, answer.yes)
            for answer in cause.answers
            if answer.check in knowledge.checks and knowledge.suits(knowledge.checks[answer.check].garments, garment)
        }
        out = {("check", tree.check) for tree in cause.impossible_if if tree.check and tree.is_ in ((), ("yes",))}
        out |= {("symptom", tree.symptom) for tree in cause.impossible_if if tree.symptom}
        return cls(shows, {**answers, **{("symptom", s): p for s, p in shows.items()}}, frozenset(out))


def _sharing(signs: Mapping[str, _Signs]) -> dict[Pair, str]:
    """Pairs of causes with a symptom that both show."""
    by_symptom: dict[str, list[str]] = defaultdict(list)
    for cause, sign in signs.items():
        for symptom in sign.shows:
            by_symptom[symptom].append(cause)
    return {_pair(*two): symptom for symptom, causes in by_symptom.items() for two in combinations(causes, 2)}


def _told_apart(knowledge: Knowledge, one: _Signs, other: _Signs) -> bool:
    """One of them makes a finding usual that the other makes seldom or leaves to chance, or that rules the other out."""
    usually, seldom = chance(knowledge, "usually"), chance(knowledge, "seldom")

    def parts(a: _Signs, b: _Signs) -> bool:
        clear = {finding for finding, p in a.findings.items() if p >= usually}
        return any(b.findings.get(f, 0.0) <= seldom or f in b.ruled_out_by for f in clear) or bool(b.ruled_out_by & a.findings.keys())

    return parts(one, other) or parts(other, one)


def _exempt(knowledge: Knowledge) -> set[Pair]:
    return {_pair(cause.id, told.cause) for cause in knowledge.causes.values() for told in cause.told_apart}


def _pair(one: str, other: str) -> Pair:
    return (one, other) if one < other else (other, one)
