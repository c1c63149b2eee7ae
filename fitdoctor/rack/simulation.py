"""Buyers simulated over the solved cases: how many questions until the decision, against a fixed checklist."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import cycle

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import case_net
from fitdoctor.knowledge.entries import SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.decision import Decision, Stand, stand
from fitdoctor.rack.outlook import look_out
from fitdoctor.rack.prospects import Prospects
from fitdoctor.rack.question import CANNOT_TELL, Kind, Rack, answered
from fitdoctor.rack.stake import Stake
from fitdoctor.shop import Shop

_SHOWS_FROM = 0.5
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
    rounds = simulated_rounds(knowledge)
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
        self._knowledge, self._solved, self._prospects = knowledge, solved, prospects
        self._start = Rack(stake.price, stake.worth, stake.rate_per_hour, Case(garment=solved.garment, seen=solved.seen))
        self._net = case_net(knowledge, self._start.case)

    def round(self) -> Round:
        """Both ways of asking."""
        checklist = list(self._checklist())
        told_all = self._stand(self._told(checklist)).decision
        decision, questions = self._asked()
        return Round(self._solved.id, decision, told_all, questions, self._until_it_stays(checklist, told_all))

    def _asked(self) -> tuple[Decision, int]:
        """The decision and the number of questions when the rack asks."""
        rack, number = self._start, 0
        while True:
            now = self._stand(rack)
            if not now.asks:
                return now.decision, number
            ask, number = now.asks[0], number + 1
            rack = answered(rack, ask.kind, ask.id, self._says(ask.kind, ask.id), ask.seconds)

    def _checklist(self) -> Iterator[tuple[Kind, str]]:
        """Every question that can be answered at the rack about this garment, in the order of the files."""
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

    def _until_it_stays(self, checklist: Sequence[tuple[Kind, str]], told_all: Decision) -> int:
        """How many of the list have to be asked until the decision is that of a buyer who has told everything, and stays so."""
        for number in range(len(checklist), 0, -1):
            if self._stand(self._told(checklist[: number - 1])).decision != told_all:
                return number
        return 0

    def _told(self, checklist: Sequence[tuple[Kind, str]]) -> Rack:
        rack = self._start
        for kind, id_ in checklist:
            rack = answered(rack, kind, id_, self._says(kind, id_))
        return rack

    def _stand(self, rack: Rack) -> Stand:
        stake = Stake(rack.price, rack.worth, rack.rate_per_hour)
        return stand(rack, look_out(self._knowledge, rack.as_far_as_seen, stake, self._prospects))

    def _says(self, kind: Kind, id_: str) -> str:
        solved = self._solved
        if kind == "feature":
            return solved.facts.get(id_, CANNOT_TELL)
        if kind == "side":
            inside = (s for s, entry in self._knowledge.symptoms.items() if entry.view == id_ and ("symptom", s) in self._net.row)
            return "yes" if any(s not in solved.seen and self._says("symptom", s) == "yes" for s in inside) else "no"
        if kind == "check" and id_ in solved.answers:
            return solved.answers[id_]
        if kind == "symptom" and (id_ in solved.seen or id_ in solved.not_seen or self._knowledge.symptoms[id_].view in solved.looked):
            return "yes" if id_ in solved.seen else "no"
        links = (self._net.links.get((cause, (kind, id_))) for cause in solved.expect.causes)
        return "yes" if any(link.chance >= _SHOWS_FROM for link in links if link) else "no"
