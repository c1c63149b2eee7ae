"""Buyers simulated over the solved cases: how many questions until the decision, against a fixed checklist."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, cycle

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import case_net
from fitdoctor.knowledge.entries import SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.decision import Decision, decision, stand
from fitdoctor.rack.outlook import Outlook, look_out
from fitdoctor.rack.prospects import Prospects
from fitdoctor.rack.question import CANNOT_TELL, Rack, RackQuestion, answered, looked_for
from fitdoctor.rack.stake import Stake
from fitdoctor.shop import Shop

_SHOWS_FROM = 0.5
_STEP = 16
_STAKES = (Stake(25, 100, 20), Stake(50, 100, 20), Stake(75, 100, 20))
"""A bargain, a middling and a dear garment, in turn; an hour's work costs a fifth of what the garment is worth."""


@dataclass(frozen=True)
class Simulation:
    """Questions asked in all, and by the checklist.

    Attributes:
        ratio: questions to checklist questions.
        same_decision: share of the cases where the decision is that of a buyer who has told everything.
    """

    cases: int
    questions: int
    checklist_questions: int
    ratio: float
    same_decision: float


@dataclass(frozen=True)
class Round:
    """One simulated buyer."""

    case: str
    decision: Decision
    told_all: Decision
    questions: int
    checklist_questions: int


def simulate(knowledge: Knowledge) -> Simulation:
    """Send a buyer through every solved case twice: asked as the rack asks, and asked the checklist."""
    return summed(simulated_rounds(knowledge))


def summed(rounds: Sequence[Round]) -> Simulation:
    """The buyers taken together."""
    asked, listed = sum(r.questions for r in rounds), sum(r.checklist_questions for r in rounds)
    same = sum(r.decision == r.told_all for r in rounds)
    return Simulation(len(rounds), asked, listed, asked / listed if listed else 0.0, same / len(rounds) if rounds else 1.0)


def simulated_rounds(knowledge: Knowledge) -> list[Round]:
    """The buyers one by one."""
    prospects = Prospects(knowledge, Shop())
    buyers = zip(sorted(knowledge.cases), cycle(_STAKES), strict=False)
    return [Buyer(knowledge, knowledge.cases[id_], prospects, stake).round() for id_, stake in buyers]


class Buyer:
    """A buyer with one solved case: names what the case says is seen, and answers as the case has it.

    What the case does not say of a symptom or a check is answered as its causes would have it; of a feature, it cannot be told.
    """

    def __init__(self, knowledge: Knowledge, solved: SolvedCase, prospects: Prospects, stake: Stake) -> None:
        self._knowledge, self._solved, self._prospects, self._stake = knowledge, solved, prospects, stake
        self._start = Rack(stake.price, stake.worth, stake.rate_per_hour, Case(garment=solved.garment, seen=solved.seen))
        self._net = case_net(knowledge, self._start.case)

    def round(self) -> Round:
        """Both ways of asking."""
        told = list(accumulate(self._checklist(), self._told, initial=self._start))
        told_all = self._decides(told[-1])
        decided, questions = self._asked()
        return Round(self._solved.id, decided, told_all, questions, self._until_it_stays(told, told_all))

    def _asked(self) -> tuple[Decision, int]:
        """The decision and the number of questions when the rack asks."""
        rack, number = self._start, 0
        while (now := stand(rack, self._outlook(rack))).asks:
            ask, number = now.asks[0], number + 1
            rack = answered(rack, ask.kind, ask.id, self._says(rack, ask))
        return now.decision, number

    def _checklist(self) -> Iterator[tuple[str, str]]:
        """Every feature, check and symptom that can be told at the rack of this garment, in the order of the files."""
        knowledge = self._knowledge
        for id_, feature in knowledge.features.items():
            if feature.at_the_rack and knowledge.suits(feature.garments, self._solved.garment):
                yield "feature", id_
        for id_, check in knowledge.checks.items():
            if check.at_the_rack and ("check", id_) in self._net.row:
                yield "check", id_
        for id_ in knowledge.symptoms:
            if ("symptom", id_) in self._net.row and id_ not in self._solved.seen:
                yield "symptom", id_

    def _until_it_stays(self, told: Sequence[Rack], told_all: Decision) -> int:
        """How many of the list have to be asked until the decision is that of a buyer who has told everything, and stays so.

        Gone through from the end in steps, then halved down to the question; a change of mind taken back between two steps is not
        counted, in the list's favour.
        """
        same = len(told) - 1
        differs = max(0, same - _STEP)
        while self._decides(told[differs]) == told_all:
            if differs == 0:
                return 0
            same, differs = differs, max(0, differs - _STEP)
        while same - differs > 1:
            middle = (same + differs) // 2
            same, differs = (middle, differs) if self._decides(told[middle]) == told_all else (same, middle)
        return same

    def _decides(self, rack: Rack) -> Decision:
        return decision(rack, self._outlook(rack))

    def _told(self, rack: Rack, question: tuple[str, str]) -> Rack:
        """The buyer after one question more of the list."""
        kind, id_ = question
        if kind == "symptom":
            return replace(rack, case=looked_for(rack.case, id_, self._shows(id_)))
        if kind == "check":
            return answered(rack, "check", id_, self._checked(id_))
        return answered(rack, "feature", id_, self._solved.facts.get(id_, CANNOT_TELL))

    def _outlook(self, rack: Rack) -> Outlook:
        return look_out(self._knowledge, rack.as_far_as_seen, self._stake, self._prospects)

    def _says(self, rack: Rack, ask: RackQuestion) -> str:
        if ask.kind == "feature":
            return self._solved.facts.get(ask.id, CANNOT_TELL)
        if ask.kind == "check":
            return self._checked(ask.id)
        showing = (s for s in self._knowledge.symptoms if ("symptom", s) in self._net.row and s not in rack.case.seen and self._shows(s))
        named = next((s for s in showing if self._knowledge.symptoms[s].view == ask.id), "")
        return (named or CANNOT_TELL) if ask.kind == "symptom" else ("yes" if named else "no")

    def _checked(self, check: str) -> str:
        return self._solved.answers.get(check) or self._as_its_causes("check", check)

    def _shows(self, symptom: str) -> bool:
        solved = self._solved
        if symptom in solved.seen or symptom in solved.not_seen or self._knowledge.symptoms[symptom].view in solved.looked:
            return symptom in solved.seen
        return self._as_its_causes("symptom", symptom) == "yes"

    def _as_its_causes(self, kind: str, id_: str) -> str:
        links = (self._net.links.get((cause, (kind, id_))) for cause in self._solved.expect.causes)
        return "yes" if any(link.chance >= _SHOWS_FROM for link in links if link) else "no"
