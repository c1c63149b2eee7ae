"""How good an assessment is against a solved case: which expectations it meets, and in words which it does not."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, fields
from typing import TYPE_CHECKING

from fitdoctor.amounts.marks import Mark
from fitdoctor.diagnosis.diagnose import Diagnosis
from fitdoctor.knowledge.entries import ExpectedAmount, SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge

if TYPE_CHECKING:
    from fitdoctor.assess import Assessment

_LEAST_CHANCE = 1e-6
_ROUNDING_MM = 1e-6


@dataclass(frozen=True)
class CaseScore:
    """One case; None where the case does not expect that thing.

    Attributes:
        first: the first cause is one that is expected or accepted.
        first_three: among the first three there are as many expected or accepted causes as the case has.
        verdict, amounts, methods, opened_once: as expected.
        clean: nothing is named but leaving alone.
        log_score: mean natural logarithm of the chance given to what is so, over the causes that could bring on what is seen.
        brier: mean squared error of those chances.
        checks_needed: questions until an expected cause leads, starting from the symptoms alone.
        misses: what was not met, as sentences.
    """

    case: str
    garment: str
    held_back: bool
    first: bool | None = None
    first_three: bool | None = None
    verdicts: bool | None = None
    amounts: bool | None = None
    methods: bool | None = None
    opened_once: bool | None = None
    clean: bool | None = None
    log_score: float | None = None
    brier: float | None = None
    checks_needed: int | None = None
    misses: tuple[str, ...] = field(default=())


MEASURES = tuple(f.name for f in fields(CaseScore) if f.name not in ("case", "garment", "held_back", "misses"))


def score(knowledge: Knowledge, solved: SolvedCase, assessment: Assessment, checks_needed: int | None) -> CaseScore:
    """Hold an assessment against the solved case."""
    expect, ranked = solved.expect, [c.id for c in assessment.diagnosis.causes if c.ruled_out is None]
    met: dict[str, bool | None] = {
        "first": _among(solved, ranked[:1], 1),
        "first_three": _among(solved, ranked[:3], min(3, len(expect.causes))),
        "verdicts": assessment.verdict.level in expect.verdict if expect.verdict else None,
        "amounts": all(_agrees(assessment, amount) for amount in expect.amounts) if expect.amounts else None,
        "methods": set(expect.methods) <= set(assessment.methods) if expect.methods else None,
        "opened_once": all(_times_opened(assessment, seam) == 1 for seam in expect.opened_once) if expect.opened_once else None,
        "clean": not list(_named(knowledge, assessment)) if expect.clean else None,
    }
    log_score, brier = _chances(assessment.diagnosis, solved) if expect.causes else (None, None)
    return CaseScore(
        case=solved.id,
        garment=solved.garment,
        held_back=solved.held_back,
        **met,
        log_score=log_score,
        brier=brier,
        checks_needed=checks_needed,
        misses=tuple(_misses(knowledge, solved, assessment, [name for name, ok in met.items() if ok is False])),
    )


def accepted(solved: SolvedCase) -> frozenset[str]:
    """The causes that count as right: those expected and those a source accepts as well."""
    return frozenset((*solved.expect.causes, *solved.expect.also))


def _among(solved: SolvedCase, ranked: Sequence[str], needed: int) -> bool | None:
    return len(accepted(solved).intersection(ranked)) >= needed if solved.expect.causes else None


def _named(knowledge: Knowledge, assessment: Assessment) -> Iterator[str]:
    """Causes that the assessment would have work done for."""
    for choice in assessment.choices:
        left = choice.chosen is not None and knowledge.methods[choice.chosen.method].kind == "leave"
        if not left and knowledge.causes[choice.cause].lies_in != "none":
            yield choice.cause


def _agrees(assessment: Assessment, amount: ExpectedAmount) -> bool:
    calculations = (w.calculation for w in assessment.amounts if w.method == amount.method and w.calculation)
    return any(mark.at == amount.at and _mark_agrees(mark, amount) for calculation in calculations for mark in calculation.marks)


def _mark_agrees(mark: Mark, amount: ExpectedAmount) -> bool:
    pairs = [(mark.each_mm, amount.each_mm), (mark.total_mm, amount.total_mm)]
    pairs += [(_offset(mark, share), offset) for share, offset in amount.stations]
    return all(wanted is None or abs(found - wanted) <= amount.within_mm + _ROUNDING_MM for found, wanted in pairs)


def _offset(mark: Mark, share: float) -> float:
    """The mark's offset this share of the way along, between its stations on a straight line; mm."""
    if not mark.stations:
        return math.inf
    first, last = mark.stations[0][0], mark.stations[-1][0]
    at = first + share * (last - first)
    for (s0, d0), (s1, d1) in zip(mark.stations, mark.stations[1:], strict=False):
        if min(s0, s1) - _ROUNDING_MM <= at <= max(s0, s1) + _ROUNDING_MM:
            return d0 if s0 == s1 else d0 + (d1 - d0) * (at - s0) / (s1 - s0)
    return mark.stations[0][1]


def _times_opened(assessment: Assessment, seam: str) -> int:
    return sum(seam in operation.opens for operation in assessment.plan.operations)


def _chances(diagnosis: Diagnosis, solved: SolvedCase) -> tuple[float, float]:
    """Mean log score and Brier score over the causes that could bring on what is seen, and those expected; accepted ones left out."""
    able = diagnosis.net.able
    weighed = [c for c in diagnosis.causes if c.id in able or c.id in solved.expect.causes]
    pairs = [(c.probability, c.id in solved.expect.causes) for c in weighed if c.id not in solved.expect.also]
    if not pairs:
        return math.log(_LEAST_CHANCE), 1.0
    logs = [math.log(max(_LEAST_CHANCE, chance if so else 1 - chance)) for chance, so in pairs]
    return sum(logs) / len(logs), sum((chance - so) ** 2 for chance, so in pairs) / len(pairs)


def _misses(knowledge: Knowledge, solved: SolvedCase, assessment: Assessment, failed: Sequence[str]) -> Iterator[str]:
    expect = solved.expect
    ranked = [c.id for c in assessment.diagnosis.causes if c.ruled_out is None]
    if "first" in failed or "first_three" in failed:
        wanted = ", ".join(f"‘{_title(knowledge, c)}’ at rank {ranked.index(c) + 1 if c in ranked else 'none'}" for c in expect.causes)
        got = ", ".join(f"‘{_title(knowledge, c)}’" for c in ranked[:3])
        yield f"{solved.id}: expected {wanted}; first came {got}."
    if "verdicts" in failed:
        yield f"{solved.id}: expected {' or '.join(expect.verdict)}, got {assessment.verdict.level}: {assessment.verdict.sentence}"
    if "methods" in failed:
        yield f"{solved.id}: expected the methods {', '.join(expect.methods)}, got {', '.join(assessment.methods) or 'none'}."
    for amount in expect.amounts if "amounts" in failed else ():
        if not _agrees(assessment, amount):
            yield f"{solved.id}: expected {_amount_words(amount)}, got {_found_words(assessment, amount)}."
    for seam in expect.opened_once if "opened_once" in failed else ():
        if _times_opened(assessment, seam) != 1:
            yield f"{solved.id}: expected {seam} to be opened once, it is opened {_times_opened(assessment, seam)} times."
    if "clean" in failed:
        yield f"{solved.id}: expected nothing to be named, got {', '.join(_title(knowledge, c) for c in _named(knowledge, assessment))}."


def _title(knowledge: Knowledge, cause: str) -> str:
    return knowledge.causes[cause].title if cause in knowledge.causes else cause


def _amount_words(amount: ExpectedAmount) -> str:
    parts = [f"{word} {mm:.1f} mm" for word, mm in (("each", amount.each_mm), ("in all", amount.total_mm)) if mm is not None]
    parts += [f"{offset:.1f} mm at {share:g} of the way" for share, offset in amount.stations]
    return f"{amount.method} at {amount.at} {', '.join(parts)}"


def _found_words(assessment: Assessment, amount: ExpectedAmount) -> str:
    marks = [m for w in assessment.amounts if w.method == amount.method and w.calculation for m in w.calculation.marks if m.at == amount.at]
    shown = (f"each {m.each_mm:.1f} mm, in all {m.total_mm:.1f} mm, along it {[round(d, 1) for _, d in m.stations]}" for m in marks)
    return "; ".join(shown) or "no mark there"
