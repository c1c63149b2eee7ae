"""Where a buyer stands: what may be the matter, what each cause comes to, and what buying is worth."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from fitdoctor.case import Case
from fitdoctor.diagnosis.case_net import CaseNet
from fitdoctor.diagnosis.posterior import Posterior, posterior
from fitdoctor.diagnosis.treat import TREAT_FROM
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.prospects import VIEWS, Prospect, Prospects, View
from fitdoctor.rack.stake import Outcome, Stake, outcome

COUNTED_FROM = 0.02
"""Chance from which a cause is counted."""


@dataclass(frozen=True, eq=False)
class Outlook:
    """A case at the rack, with the chances of the chain's own net.

    Attributes:
        chances: cause -> chance, of the causes that count.
        rivals: groups of causes that explain the same sights.
    """

    knowledge: Knowledge
    case: Case
    stake: Stake
    prospects: Prospects
    net: CaseNet
    found: Posterior

    @cached_property
    def chances(self) -> dict[str, float]:
        """The causes that count, with their chances."""
        return counted(self.net, self.found.chances.tolist())

    @cached_property
    def rivals(self) -> tuple[frozenset[str], ...]:
        """Groups of causes that explain the same sights."""
        return tuple(frozenset(self.net.causes[c] for c in group.causes) for group in self.found.groups if group.causes)

    @cached_property
    def shared(self) -> float:
        """The share of the single works that is left when the likely ones are planned together."""
        likely = {p.method for c, p in self.of(self.chances).items() if self.chances[c] >= TREAT_FROM and p.minutes and p.cured["best"]}
        return self.prospects.shared(frozenset(likely), self.case.facts.get("lining") == "none")

    @cached_property
    def _here(self) -> dict[str, Prospect]:
        return {}

    def of(self, chances: Iterable[str], case: Case | None = None) -> dict[str, Prospect]:
        """The prospects of these causes, for this case or for what it would be after an answer."""
        if case is not None:
            return {cause: self.prospects.of(case, cause) for cause in chances}
        for cause in chances:
            if cause not in self._here:
                self._here[cause] = self.prospects.of(self.case, cause)
        return {cause: self._here[cause] for cause in chances}

    def with_case(self, case: Case) -> Outlook:
        """The same buyer with another case."""
        return look_out(self.knowledge, case, self.stake, self.prospects)

    def outcome(
        self, view: View, chances: Mapping[str, float], prospects: Mapping[str, Prospect], rivals: Sequence[frozenset[str]]
    ) -> Outcome:
        """What buying comes to where these things hold."""
        return outcome(self.stake, chances, prospects, rivals, view, self.shared)

    def now(self, view: View = "likely") -> Outcome:
        """What buying comes to as things stand."""
        return self._now[view]

    @cached_property
    def _now(self) -> dict[View, Outcome]:
        return {view: self.outcome(view, self.chances, self.of(self.chances), self.rivals) for view in VIEWS}

    @cached_property
    def most_at_stake(self) -> float:
        """The most an answer can be worth for each part of its chance: what is lost by buying wrongly, or missed by leaving wrongly."""
        stands = {self._now[view].gain >= 0 for view in VIEWS}
        return max({True: self.stake.price, False: self.stake.worth - self.stake.price}[stand] for stand in stands)


def look_out(knowledge: Knowledge, case: Case, stake: Stake, prospects: Prospects) -> Outlook:
    """Read a case as a buyer would: the chain's net and chances, the chain's ways for every cause that counts."""
    net = prospects.net(case)
    return Outlook(knowledge, case, stake, prospects, net, posterior(net.net, net.yes, net.no))


def counted(net: CaseNet, chances: Sequence[float]) -> dict[str, float]:
    """The causes whose chance is large enough to count."""
    return {cause: chance for cause, chance in zip(net.causes, chances, strict=True) if chance >= COUNTED_FROM}
