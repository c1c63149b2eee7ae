"""What the chain says of each cause in turn: can it be cured, in what time, and what is still open about that."""

from __future__ import annotations

from collections.abc import Collection, Hashable, Iterable, Iterator
from dataclasses import dataclass, field
from math import prod
from typing import Literal, get_args

from fitdoctor.assess import Choice, choose
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState, applicable
from fitdoctor.diagnosis.case_net import CaseNet, case_net
from fitdoctor.knowledge.entries import When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import tests
from fitdoctor.plan import make_plan, method_minutes
from fitdoctor.rack.likelihood import met_chance, past_limit
from fitdoctor.shop import Shop
from fitdoctor.verdict import MethodVerdict
from fitdoctor.when import holds

View = Literal["likely", "best", "worst"]
"""What is not known about the work: as likely as it is, all of it met, none of it met."""
VIEWS: tuple[View, ...] = get_args(View)


@dataclass(frozen=True)
class Prospect:
    """One cause, if it is there.

    Attributes:
        method: the way proposed; empty where there is none.
        choice: the ways to treat it as the chain judges them.
        cured: chance that one of the ways cures it, by view of what is not known.
        minutes: likely work; most_minutes: at the high end; may_add: what conditions not known yet could add. 0 where nothing is done.
        open: what the proposed way needs and nobody knows yet, and could stop it.
        asks: features that could change any of this.
    """

    cause: str
    method: str
    choice: Choice
    cured: dict[View, float]
    minutes: float
    most_minutes: float
    may_add: float
    open: tuple[ConditionState, ...]
    asks: frozenset[str]


@dataclass(frozen=True)
class _Turns:
    """What the ways to treat a cause turn on: values of features, by the sets that conditions ask for, and other tests."""

    facts: dict[str, list[tuple[str, ...]]]
    others: list[When]


@dataclass
class Prospects:
    """The prospects of causes, each worked out once for the facts that matter to it.

    Attributes:
        breakers_only: count only what forbids the work, not limits.
    """

    knowledge: Knowledge
    shop: Shop
    breakers_only: bool = False
    _known: dict[Hashable, Prospect] = field(default_factory=dict)
    _asked: dict[tuple[str, str], _Turns] = field(default_factory=dict)
    _shared: dict[tuple[frozenset[str], bool], float] = field(default_factory=dict)
    _bare: dict[str, CaseNet] = field(default_factory=dict)

    def of(self, case: Case, cause: str) -> Prospect:
        """The prospect of one cause on this garment."""
        key = (case.garment, cause, self._facts(case, cause), *_lengths(case), case.methods.get(cause), case.past_limits)
        if key not in self._known:
            self._known[key] = self._work_out(case, cause)
        return self._known[key]

    def net(self, case: Case) -> CaseNet:
        """The chain's net of a case; what does not change from case to case of a garment is made once."""
        if case.garment not in self._bare:
            self._bare[case.garment] = case_net(self.knowledge, Case(garment=case.garment))
        return case_net(self.knowledge, case, bare=self._bare[case.garment])

    def shared(self, methods: frozenset[str], unlined: bool) -> float:
        """The share of the single works that is left when these methods are planned together and seams serve more than one."""
        if len(methods) < 2:
            return 1.0
        if (methods, unlined) not in self._shared:
            together, *single = (self._planned(some, unlined) for some in (methods, *({method} for method in sorted(methods))))
            self._shared[methods, unlined] = together / sum(single)
        return self._shared[methods, unlined]

    def _planned(self, methods: Collection[str], unlined: bool) -> float:
        """Likely minutes of one plan for these methods."""
        return make_plan([self.knowledge.methods[m] for m in sorted(methods)], lambda _, text: text, unlined, self.shop).minutes[1]

    def _facts(self, case: Case, cause: str) -> Hashable:
        """What is known of all that the ways to treat this cause may turn on; values that no condition parts are alike."""
        turns = self._asked.get((case.garment, cause))
        if turns is None:
            turns = self._asked[case.garment, cause] = _turns(self._leaves(case.garment, cause))
        facts = tuple(name in case.facts and tuple(case.facts[name] in some for some in parted) for name, parted in turns.facts.items())
        return facts, tuple(holds(leaf, case, None, self.knowledge) for leaf in turns.others)

    def _leaves(self, garment: str, cause: str) -> Iterator[When]:
        for method in self.knowledge.methods_for(cause, garment):
            trees = [method.only_if, *(c.when for c in applicable(self.knowledge, method, garment) if c.effect != "needs-care")]
            yield from (node for tree in trees for node, _ in tests(tree, ()) if node.fact or node.check or node.symptom)

    def _work_out(self, case: Case, cause: str) -> Prospect:
        choice = choose(self.knowledge, case, cause, self.shop)
        ways = _in_order(choice)
        first = ways[0] if ways else None
        return Prospect(
            cause=cause,
            method=first.method if first else "",
            choice=choice,
            cured={view: self._cured(ways[:2], view) for view in VIEWS},
            minutes=self._minutes(case, first, 1),
            most_minutes=self._minutes(case, first, 2),
            may_add=sum(s.minutes[1] for s in _adding(first) if s.state == "not-known" and s.minutes),
            open=tuple(s for s in first.conditions if self._is_open(s)) if first else (),
            asks=frozenset(self._asks(ways, case)),
        )

    def _cured(self, ways: Iterable[MethodVerdict], view: View) -> float:
        """The chance that the first way works, or else the second."""
        return 1 - prod(1 - self._works(way, view) for way in ways)

    def _works(self, way: MethodVerdict, view: View) -> float:
        kind = self.knowledge.methods[way.method].kind
        if kind != "alteration":
            return float(kind == "leave")
        return prod(self._holds(state, view) for state in way.conditions)

    def _holds(self, state: ConditionState, view: View) -> float:
        """The chance that this condition does not spoil the work."""
        struck = {"forbids": 0.0, "limits": 1.0 if self.breakers_only else past_limit(self.knowledge)}.get(state.effect, 1.0)
        if state.always or state.passed or state.state == "met":
            return 1.0
        if state.state == "not-met":
            return struck
        if state.everywhere or view == "best":
            return 1.0
        met = met_chance(self.knowledge, state) if view == "likely" else 0.0
        return met + (1 - met) * struck

    def _is_open(self, state: ConditionState) -> bool:
        return self._holds(state, "worst") < 1 and state.state in ("not-known", "borderline")

    def _minutes(self, case: Case, way: MethodVerdict | None, end: Literal[1, 2]) -> float:
        """Likely (1) or most (2) minutes of one way, with the work that conditions add."""
        if way is None:
            return 0.0
        alone = method_minutes(self.knowledge.methods[way.method], self.shop, case.facts.get("lining") == "none")
        return alone[end] + sum(s.minutes[end] * self._added(s) for s in _adding(way) if s.minutes)

    def _added(self, state: ConditionState) -> float:
        """The share of a condition's extra work to count."""
        return 1 - met_chance(self.knowledge, state) if state.state == "not-known" else float(state.state != "met")

    def _asks(self, ways: Iterable[MethodVerdict], case: Case) -> Iterator[str]:
        counting = ("forbids",) if self.breakers_only else ("forbids", "limits", "adds-work")
        for state in (state for way in ways for state in way.conditions):
            if state.effect in counting and not state.everywhere:
                yield from (name for name in state.missing if name in self.knowledge.features and name not in case.facts)


def _adding(way: MethodVerdict | None) -> list[ConditionState]:
    """The conditions that add work to a way."""
    return [state for state in way.conditions if state.effect == "adds-work"] if way else []


def _in_order(choice: Choice) -> list[MethodVerdict]:
    """The proposed way, then the others."""
    return [] if choice.chosen is None else [choice.chosen, *(way for way in choice.ways if way is not choice.chosen)]


def _lengths(case: Case) -> tuple[Hashable, ...]:
    return tuple(sorted((name, length.mm, length.give_mm or 0.0) for name, length in case.measured.items()))


def _turns(leaves: Iterable[When]) -> _Turns:
    facts: dict[str, list[tuple[str, ...]]] = {}
    others: list[When] = []
    for leaf in leaves:
        if leaf.fact:
            parted = facts.setdefault(leaf.fact, [])
            parted += [leaf.is_] if leaf.is_ not in parted else []
        elif leaf not in others:
            others.append(leaf)
    return _Turns(facts, others)
