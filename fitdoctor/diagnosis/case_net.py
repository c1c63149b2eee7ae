"""From the knowledge and a case to the numbers: which causes and findings this garment has, what was answered, what is ruled out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from fitdoctor.case import Case
from fitdoctor.diagnosis.learning import Learned
from fitdoctor.diagnosis.net import Net
from fitdoctor.knowledge.entries import Cause
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.when import Truth, holds, in_words

Key = tuple[str, str]
"""(kind, id) of a finding: ("symptom", …) or ("check", …)."""


@dataclass(frozen=True)
class Link:
    """How often a cause alone brings a finding on: the printed word, the chance used, who says so."""

    cause: str
    finding: Key
    word: str
    chance: float
    sources: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class CaseNet:
    """The net of one garment with the findings of one case.

    Attributes:
        causes: ids, in the order of the net's columns; findings: in the order of its rows.
        links: by (cause, finding).
        yes, no: rows answered so; the others are not known.
        ruled_out: cause id -> why it cannot be; its prior is 0.
        unknown: symptoms seen that this garment's knowledge does not have.
    """

    net: Net
    causes: tuple[str, ...]
    findings: tuple[Key, ...]
    links: Mapping[tuple[str, Key], Link]
    yes: tuple[int, ...]
    no: tuple[int, ...]
    ruled_out: Mapping[str, Reason]
    unknown: tuple[str, ...]

    @cached_property
    def column(self) -> dict[str, int]:
        """Cause id -> column."""
        return {cause: at for at, cause in enumerate(self.causes)}

    @cached_property
    def row(self) -> dict[Key, int]:
        """Finding -> row."""
        return {finding: at for at, finding in enumerate(self.findings)}

    @cached_property
    def able(self) -> frozenset[str]:
        """The causes that could bring on something of what is seen or answered yes."""
        columns = np.flatnonzero(self.net.links[list(self.yes)].sum(axis=0) * self.net.priors)
        return frozenset(self.causes[column] for column in columns)


def case_net(knowledge: Knowledge, case: Case, learned: Learned | None = None, bare: CaseNet | None = None) -> CaseNet:
    """The net of the case's garment; chances learned from closed jobs are used where given.

    Args:
        bare: the net of the same garment with nothing known of it, where many cases of one garment are gone through.

    Raises:
        KeyError: a word for a chance is missing in the scale (a checked knowledge has none such).
    """
    if bare is not None:
        return _filled(knowledge, case, bare)
    learned = learned or Learned()
    causes = knowledge.causes_of(case.garment)
    leaks = _leaks(knowledge, case.garment, causes, learned)
    links = {(link.cause, link.finding): link for link in _links(knowledge, case.garment, causes, learned) if link.finding in leaks}
    ruled_out = dict(_ruled_out(knowledge, case, causes))
    column = {cause: at for at, cause in enumerate(causes)}
    row = {finding: at for at, finding in enumerate(leaks)}
    strengths = np.zeros((len(leaks), len(causes)))
    for link in links.values():
        strengths[row[link.finding], column[link.cause]] = link.chance
    priors = [0.0 if id_ in ruled_out else learned.prior(id_, case.garment, knowledge.prior(c, case.garment)) for id_, c in causes.items()]
    answers = {finding: answer for finding in leaks if (answer := answer_to(knowledge, case, finding))}
    return CaseNet(
        net=Net(np.array(priors, dtype=np.float64), strengths, np.array(list(leaks.values()), dtype=np.float64)),
        causes=tuple(causes),
        findings=tuple(leaks),
        links=links,
        yes=tuple(row[finding] for finding, answer in answers.items() if answer == "yes"),
        no=tuple(row[finding] for finding, answer in answers.items() if answer == "no"),
        ruled_out=ruled_out,
        unknown=tuple(symptom for symptom in case.seen if ("symptom", symptom) not in leaks),
    )


def _filled(knowledge: Knowledge, case: Case, bare: CaseNet) -> CaseNet:
    """The bare net of a garment with what is known of one."""
    ruled_out = dict(_ruled_out(knowledge, case, {id_: knowledge.causes[id_] for id_ in bare.causes}))
    priors = bare.net.priors.copy()
    priors[[bare.column[cause] for cause in ruled_out]] = 0.0
    answers = {row: answer_to(knowledge, case, finding) for finding, row in bare.row.items()}
    return replace(
        bare,
        net=replace(bare.net, priors=priors),
        yes=tuple(row for row, answer in answers.items() if answer == "yes"),
        no=tuple(row for row, answer in answers.items() if answer == "no"),
        ruled_out=ruled_out,
        unknown=tuple(symptom for symptom in case.seen if ("symptom", symptom) not in bare.row),
    )


def answer_to(knowledge: Knowledge, case: Case, finding: Key) -> str:
    """Yes, no, or empty where it is not known; a symptom is absent only where its view was looked over or it was answered no."""
    kind, id_ = finding
    if kind == "check":
        answer = case.answers.get(id_, "")
        return answer if answer in ("yes", "no") else ""
    if id_ in case.seen:
        return "yes"
    return "no" if id_ in case.not_seen or knowledge.symptoms[id_].view in case.looked else ""


def _leaks(knowledge: Knowledge, garment: str, causes: Mapping[str, Cause], learned: Learned) -> dict[Key, float]:
    """The findings this garment can have, each with its leak."""
    named = dict.fromkeys(answer.check for cause in causes.values() for answer in cause.answers)
    checks = {id_: knowledge.checks[id_] for id_ in named if id_ in knowledge.checks}
    words = {("symptom", id_): symptom.leak for id_, symptom in knowledge.symptoms_of(garment).items()}
    words |= {("check", id_): check.leak for id_, check in checks.items() if knowledge.suits(check.garments, garment)}
    return {finding: learned.leak(finding, knowledge.leak(word)) for finding, word in words.items()}


def _links(knowledge: Knowledge, garment: str, causes: Mapping[str, Cause], learned: Learned) -> Iterator[Link]:
    for id_, cause in causes.items():
        shown = ((("symptom", s.symptom), s.strength, s.sources) for s in cause.shows_as if knowledge.suits(s.garments, garment))
        answered = ((("check", a.check), a.yes, a.sources) for a in cause.answers)
        for finding, word, sources in (*shown, *answered):
            chance = learned.strength(id_, finding, knowledge.strength(word))
            yield Link(id_, finding, word, chance, sources)


def _ruled_out(knowledge: Knowledge, case: Case, causes: Mapping[str, Cause]) -> Iterator[tuple[str, Reason]]:
    """Only what clearly holds rules a cause out; not known and borderline leave it in."""
    for id_, cause in causes.items():
        for when in cause.impossible_if:
            if holds(when, case, None, knowledge) is Truth.TRUE:
                yield id_, Reason(f"It cannot be: {in_words(when, knowledge)}.", id_, cause.sources, "not-met")
                break
