"""What to ask, try or look at next, and when asking more would change nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import CaseNet, Key
from fitdoctor.diagnosis.gain import expected_gain_bits
from fitdoctor.diagnosis.net import Bools, Floats, rows_of
from fitdoctor.diagnosis.posterior import Posterior, posteriors
from fitdoctor.diagnosis.ranking import Diagnosis
from fitdoctor.diagnosis.treat import TREAT_FROM, likely, same_work
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason

LOOK_MINUTES = 0.5
"""Looking for one symptom."""
_EXACT_UP_TO = 7
"""Findings of one group up to which every possible answer is worked out exactly; beyond, from sets of causes drawn at random."""
_SUSPECT_FROM = 0.01
_LEAST_BITS = 0.002
_RARE_ANSWER = 0.15
"""A little above the commonest prior, so that a fault of which nothing shows does not keep the questions going."""


@dataclass(frozen=True)
class NextCheck:
    """One thing worth asking.

    Attributes:
        kind: check, or symptom (something to look at).
        gain_bits: how much of the doubt about the causes it takes away on average.
        because: which causes it parts.
    """

    id: str
    kind: Literal["check", "symptom"]
    ask: str
    minutes: float
    gain_bits: float
    because: Reason


@dataclass(frozen=True, eq=False)
class Foreseen:
    """What each open question could do: rows in the order of `rows`.

    Attributes:
        rows: rows of the net; yes, no: chance of that answer; if_yes, if_no: (questions, causes) chances after it.
    """

    rows: tuple[int, ...]
    yes: Floats
    no: Floats
    if_yes: Floats
    if_no: Floats


def next_checks(knowledge: Knowledge, case: Case, diagnosis: Diagnosis, where: str = "wearer", most: int = 12) -> tuple[NextCheck, ...]:
    """The checks and looks that take away most doubt a minute, best first; the one that takes away most of all is always among them.

    Args:
        where: on the wearer (everything can be tried), garment (in the hand: what needs no wearer), rack (what needs seconds and no tools).
    """
    net, suspects = diagnosis.net, _suspects(diagnosis)
    rows = [row for row in _open_rows(case, net, suspects) if _possible(knowledge, net.findings[row], where)]
    if not rows:
        return ()
    seen = foresee(net, diagnosis.posterior, rows)
    answers, after = np.stack([seen.yes, seen.no], axis=1), np.stack([seen.if_yes, seen.if_no], axis=1)
    gains = expected_gain_bits(diagnosis.posterior.chances[suspects], answers, after[:, :, suspects])
    minutes = np.array([_minutes(knowledge, net.findings[row]) for row in rows])
    worth = [at for at in np.argsort(-gains / minutes, kind="stable").tolist() if gains[at] >= _LEAST_BITS]
    order = worth[:most]
    strongest = max(worth, key=lambda at: gains[at], default=None)
    if strongest is not None and strongest not in order:
        order[-1] = strongest
    return tuple(_next(knowledge, net, suspects, seen, at, float(minutes[at]), float(gains[at])) for at in order)


def settled(knowledge: Knowledge, case: Case, diagnosis: Diagnosis) -> bool:
    """Whether no single answer left could change the work.

    An approximation: one answer at a time; answers less likely than `_RARE_ANSWER` are left aside; the work changes when a cause crosses
    `TREAT_FROM` (a cause treated below that, because it led clearly, must keep half its chance) and the methods are then others.
    """
    net, treated = diagnosis.net, likely(diagnosis, same_work(knowledge, case.garment))
    rows = list(_open_rows(case, net, _suspects(diagnosis)))
    if not rows:
        return True
    seen = foresee(net, diagnosis.posterior, rows)
    limits = np.full(len(net.causes), TREAT_FROM)
    for cause in treated:
        column = net.column[cause]
        limits[column] = min(TREAT_FROM, diagnosis.posterior.chances[column] / 2)
    now = _work(knowledge, case, _named(net, diagnosis.posterior.chances >= limits))
    for chances, after in ((seen.yes, seen.if_yes), (seen.no, seen.if_no)):
        for then in after[chances >= _RARE_ANSWER] >= limits:
            if _work(knowledge, case, _named(net, then)) != now:
                return False
    return True


def foresee(net: CaseNet, found: Posterior, rows: Sequence[int]) -> Foreseen:
    """The chances after each possible answer to each open question.

    "No" is worked out exactly (it factors); "yes" follows from both together making up what is known now.
    """
    if_no = posteriors(net.net, net.yes, rows_of(net.net, net.no, *((*net.no, row) for row in rows)), _EXACT_UP_TO)
    with np.errstate(invalid="ignore"):
        no = np.clip(np.nan_to_num(np.exp(if_no.log_evidence[1:] - if_no.log_evidence[0])), 0.0, 1.0)
    now, yes = if_no.chances[0] if if_no.estimated else found.chances, 1 - no
    likely_yes = np.where(yes > 1e-9, yes, 1.0)[:, None]
    if_yes = np.where(yes[:, None] > 1e-9, (now - no[:, None] * if_no.chances[1:]) / likely_yes, now)
    return Foreseen(tuple(rows), yes, no, np.clip(if_yes, 0.0, 1.0), if_no.chances[1:])


def _suspects(diagnosis: Diagnosis) -> list[int]:
    """The causes the doubt is about: those that could bring on what is seen; with nothing seen, all that are left."""
    net, chances = diagnosis.net, diagnosis.posterior.chances
    return [at for at, cause in enumerate(net.causes) if chances[at] >= _SUSPECT_FROM and (cause in net.able or not net.yes)]


def _open_rows(case: Case, net: CaseNet, suspects: Sequence[int]) -> Iterator[int]:
    """What is not answered, was not given up as not known, and touches a suspect."""
    answered = {*net.yes, *net.no}
    touching = set(np.flatnonzero(net.net.links[:, suspects].sum(axis=1)).tolist())
    for row, (kind, id_) in enumerate(net.findings):
        given_up = id_ in (case.answers if kind == "check" else case.unsure)
        if row in touching and row not in answered and not given_up:
            yield row


def _possible(knowledge: Knowledge, finding: Key, where: str) -> bool:
    kind, id_ = finding
    if kind == "symptom":
        return where != "garment"
    check = knowledge.checks[id_]
    return check.at_the_rack if where == "rack" else where == "wearer" or check.needs != "wearer"


def _minutes(knowledge: Knowledge, finding: Key) -> float:
    kind, id_ = finding
    return LOOK_MINUTES if kind == "symptom" else max(0.1, knowledge.checks[id_].minutes)


def _named(net: CaseNet, chosen: Bools) -> list[str]:
    return [net.causes[at] for at in np.flatnonzero(chosen)]


def _work(knowledge: Knowledge, case: Case, causes: Sequence[str]) -> frozenset[str]:
    """What would be done about these causes: the first method of each, the cause itself where it has none."""
    methods = {cause: knowledge.methods_for(cause, case.garment) for cause in causes}
    return frozenset(case.methods.get(cause) or (ways[0].id if ways else cause) for cause, ways in methods.items())


def _next(
    knowledge: Knowledge, net: CaseNet, suspects: Sequence[int], seen: Foreseen, at: int, minutes: float, bits: float
) -> NextCheck:
    kind, id_ = net.findings[seen.rows[at]]
    because = _parts(knowledge, net, suspects, seen, at)
    if kind == "check":
        return NextCheck(id_, "check", knowledge.checks[id_].ask, minutes, bits, because)
    symptom = knowledge.symptoms[id_]
    title = symptom.title[:1].lower() + symptom.title[1:].rstrip(".")
    return NextCheck(id_, "symptom", f"Look at the {symptom.view}: does this show, {title}?", minutes, bits, because)


def _parts(knowledge: Knowledge, net: CaseNet, suspects: Sequence[int], seen: Foreseen, at: int) -> Reason:
    """Which cause a yes speaks for, and which one it sends off: the two that move most apart."""
    row = seen.rows[at]
    moves = {column: float(seen.if_yes[at, column] - seen.if_no[at, column]) for column in suspects}
    up, down = max(moves, key=lambda column: moves[column]), min(moves, key=lambda column: moves[column])
    link = net.links.get((net.causes[up], net.findings[row]))
    sources = link.sources if link else ()
    first = knowledge.causes[net.causes[up]].title
    if moves[down] < 0 < moves[up]:
        text = f"It parts ‘{first}’ (yes) from ‘{knowledge.causes[net.causes[down]].title}’ (no)."
    else:
        text = f"It settles ‘{first}’: yes speaks for it, no against it."
    return Reason(text, net.causes[up], sources)
