"""Where exercises are made: the knowledge, the chain, and garments drawn from the model."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

import msgspec

from fitdoctor.assess import Assessment, Choice, assess, choose
from fitdoctor.case import Answer, Case, Measured
from fitdoctor.diagnosis.case_net import CaseNet, Key, case_net
from fitdoctor.figure.choose import views_of
from fitdoctor.knowledge.entries import Measurement, SolvedCase
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import case_of
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.shop import Shop
from fitdoctor.units import step_mm
from fitdoctor.when import Truth, holds

replace = msgspec.structs.replace

_TRIES = 400
MOST_SEEN = 5
"""A garment with more to see than this is drawn anew: nobody takes in more at one look."""


@dataclass(frozen=True)
class DrawnGarment:
    """A garment and what is really the matter with it."""

    case: Case
    causes: tuple[str, ...]
    solved: str = ""


class Bench:
    """Makes garments; the chances are those of the printed words, so that every machine draws the same."""

    def __init__(self, knowledge: Knowledge, shop: Shop | None = None) -> None:
        self.knowledge = knowledge
        self.shop = shop or Shop()
        self._nets: dict[str, CaseNet] = {}

    def net(self, garment: str) -> CaseNet:
        """The net of a garment of which nothing is known."""
        if garment not in self._nets:
            self._nets[garment] = case_net(self.knowledge, Case(garment=garment))
        return self._nets[garment]

    def assess(self, case: Case) -> Assessment:
        """The chain."""
        return assess(self.knowledge, case, self.shop)

    def choose(self, case: Case, cause: str) -> Choice:
        """The part of the chain that judges the ways to treat one cause."""
        return choose(self.knowledge, case, cause, self.shop)

    @cached_property
    def solved(self) -> tuple[SolvedCase, ...]:
        """The solved cases in sight whose entries are all there; those held back stay unseen by whoever writes entries."""
        cases = (case for _, case in sorted(self.knowledge.cases.items()))
        return tuple(case for case in cases if not case.held_back and self._is_whole(case))

    def solved_garments(self, scope: Scope) -> list[DrawnGarment]:
        """The solved cases in scope that name their causes."""
        return [DrawnGarment(case_of(s), s.expect.causes, s.id) for s in self.solved if s.expect.causes and self._in_scope(s, scope)]

    def _is_whole(self, case: SolvedCase) -> bool:
        """Whether everything the case names was read; an entry with a problem is left out of the knowledge."""
        named = {
            "garments": (case.garment,),
            "features": case.facts,
            "symptoms": (*case.seen, *case.not_seen),
            "checks": case.answers,
            "measurements": case.measured,
            "causes": (*case.expect.causes, *case.treat),
            "methods": case.methods.values(),
        }
        return all(self.knowledge.kind(kind).keys() >= set(ids) for kind, ids in named.items())

    def _in_scope(self, solved: SolvedCase, scope: Scope) -> bool:
        if scope.garment and scope.garment not in self.knowledge.kinds_of(solved.garment):
            return False
        seen = [self.knowledge.symptoms[id_] for id_ in solved.seen if id_ in self.knowledge.symptoms]
        return any(scope.covers(symptom) for symptom in seen)

    def is_design(self, cause: str) -> bool:
        """Whether the cause is none that anything is to be done about."""
        return self.knowledge.causes[cause].lies_in == "none"

    def draw(self, lots: Lots, garment: str, pool: Collection[str], faults: int = 1) -> DrawnGarment | None:
        """A garment with so many causes, at least one of the pool, each by how common it is; None where none comes up.

        Drawn from the model given that number: every cause of the garment by its prior, then what shows by the chances of those that
        came up and by the leaks.
        """
        causes = self._causes(lots, garment, pool, faults)
        if len(causes) != faults:
            return None
        for _ in range(_TRIES):
            seen = [symptom for symptom in self._shown(lots, garment, causes) if self._drawable(garment, symptom)]
            if 0 < len(seen) <= MOST_SEEN and all(self._shows_any(garment, cause, seen) for cause in causes):
                case = Case(garment=garment, facts=self._facts(lots, garment, causes), seen=tuple(seen), looked=self.views(garment))
                return DrawnGarment(case, causes)
        return None

    def clean(self, garment: str) -> DrawnGarment:
        """A garment that was looked over and shows nothing."""
        return DrawnGarment(Case(garment=garment, looked=self.views(garment)), ())

    def views(self, garment: str) -> tuple[str, ...]:
        """The sides the garment is looked at from."""
        return tuple(views_of(self.knowledge, garment))

    def answer(self, lots: Lots, garment: str, causes: Sequence[str], check: str) -> Answer:
        """How a check comes out on a garment with these causes."""
        return "yes" if lots.happens(self.chance(garment, causes, ("check", check))) else "no"

    def chance(self, garment: str, causes: Sequence[str], finding: Key) -> float:
        """How likely a finding is with these causes and no others (noisy-OR with leak)."""
        net = self.net(garment)
        row, columns = net.row[finding], [net.column[cause] for cause in causes]
        return 1.0 - float((1 - net.net.leaks[row]) * (1 - net.net.links[row, columns]).prod())

    def length(self, lots: Lots, measurement: Measurement) -> Measured:
        """A reading within the usual ones, on the shop's step."""
        step = step_mm("in", 8)
        low, high = (round(bound / step) for bound in measurement.usual_mm)
        return Measured((low + lots.below(max(1, high - low + 1))) * step)

    def _causes(self, lots: Lots, garment: str, pool: Collection[str], faults: int) -> tuple[str, ...]:
        net = self.net(garment)
        free = net.causes if faults > 1 else tuple(cause for cause in net.causes if cause in pool)
        for _ in range(_TRIES):
            drawn = tuple(cause for cause in free if lots.happens(float(net.net.priors[net.column[cause]])))
            if len(drawn) == faults and any(cause in pool for cause in drawn):
                return drawn
        return ()

    def _shown(self, lots: Lots, garment: str, causes: Sequence[str]) -> Iterator[str]:
        for kind, id_ in self.net(garment).findings:
            if kind == "symptom" and lots.happens(self.chance(garment, causes, (kind, id_))):
                yield id_

    def _drawable(self, garment: str, symptom: str) -> bool:
        return self.knowledge.symptoms[symptom].view in self.views(garment)

    def _shows_any(self, garment: str, cause: str, seen: Sequence[str]) -> bool:
        return any((cause, ("symptom", symptom)) in self.net(garment).links for symptom in seen)

    def _facts(self, lots: Lots, garment: str, causes: Sequence[str]) -> dict[str, str]:
        """The facts that could rule a cause of this garment out, as they may be with these causes."""
        asked = {
            when.fact
            for id_ in self.net(garment).causes
            for when in self.knowledge.causes[id_].impossible_if
            if when.fact in self.knowledge.features
        }
        facts: dict[str, str] = {}
        for feature in sorted(asked):
            values = [value.id for value in self.knowledge.features[feature].values]
            fitting = [value for value in values if not self._rules_out(garment, causes, {feature: value})]
            if fitting:
                facts[feature] = lots.one(fitting)
        return facts

    def _rules_out(self, garment: str, causes: Sequence[str], facts: dict[str, str]) -> bool:
        case = Case(garment=garment, facts=facts)
        trees = (when for cause in causes for when in self.knowledge.causes[cause].impossible_if)
        return any(holds(when, case, None, self.knowledge) is Truth.TRUE for when in trees)
