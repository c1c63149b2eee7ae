"""Learning from closed jobs: how often each confirmed cause really showed each finding, how common each cause is in this shop.

A finding that came out "yes" is shared among the confirmed causes linked to it, and the leak, in proportion to how likely each
brought it on: p / P(finding | those causes). That is the expectation step of the EM algorithm (Dempster, Laird & Rubin, 1977) with "this
cause got through" as the unseen part. Where only one cause can have brought it on and there is no leak, the share is 1: plain counting.
The mean of the Beta distribution joins the counts to the printed chance, which weighs as much as `PRINTED_WEIGHT` cases.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Literal

PRINTED_WEIGHT = 20.0
Finding = tuple[str, str]


@dataclass(frozen=True)
class Tally:
    """How often something was so, of how many times; shares make fractions of a time."""

    yes: float = 0.0
    times: float = 0.0

    def add(self, share: float) -> Tally:
        """One more time, of which this share counts as yes."""
        return Tally(self.yes + share, self.times + 1)


NOTHING = Tally()
"No time at all."


def beta_mean(tally: Tally, printed: float, weight: float = PRINTED_WEIGHT) -> float:
    """Mean of the Beta distribution that starts at the printed chance with the weight of so many cases."""
    return (printed * weight + tally.yes) / (weight + tally.times)


@dataclass(frozen=True)
class Learned:
    """Counts from closed jobs; empty ones leave every printed chance as it is.

    Attributes:
        links: (cause, finding) -> tally; leaks: finding -> tally; priors: (cause, garment) -> tally.
        weight: how many cases a printed chance weighs.
    """

    links: Mapping[tuple[str, Finding], Tally] = field(default_factory=dict)
    leaks: Mapping[Finding, Tally] = field(default_factory=dict)
    priors: Mapping[tuple[str, str], Tally] = field(default_factory=dict)
    weight: float = PRINTED_WEIGHT

    def strength(self, cause: str, finding: Finding, printed: float) -> float:
        """The chance of the link after what was learned."""
        return beta_mean(self.links.get((cause, finding), NOTHING), printed, self.weight)

    def leak(self, finding: Finding, printed: float) -> float:
        """The leak of the finding after what was learned."""
        return beta_mean(self.leaks.get(finding, NOTHING), printed, self.weight)

    def prior(self, cause: str, garment: str, printed: float) -> float:
        """How common the cause is on this garment after what was learned."""
        return beta_mean(self.priors.get((cause, garment), NOTHING), printed, self.weight)


@dataclass(frozen=True)
class ClosedJob:
    """What a closed job teaches.

    Attributes:
        garment: garment id.
        confirmed: causes that turned out to be present; all others of this garment count as absent.
        answers: finding -> yes or no; findings not asked are not in it.
    """

    garment: str
    confirmed: frozenset[str]
    answers: Mapping[Finding, Literal["yes", "no"]]


@dataclass(frozen=True)
class Printed:
    """The chances as printed, for one garment.

    Attributes:
        links: (cause, finding) -> chance; leaks: finding -> chance; priors: cause -> chance.
    """

    links: Mapping[tuple[str, Finding], float]
    leaks: Mapping[Finding, float]
    priors: Mapping[str, float]


def learn(learned: Learned, job: ClosedJob, printed: Printed) -> Learned:
    """The counts with one closed job more."""
    links, leaks, confirmed = dict(learned.links), dict(learned.leaks), sorted(job.confirmed)
    for finding, answer in job.answers.items():
        if finding not in printed.leaks:
            continue
        linked = [cause for cause in confirmed if (cause, finding) in printed.links]
        shares = _shares(learned, linked, finding, printed) if answer == "yes" else dict.fromkeys(("", *linked), 0.0)
        for cause, share in shares.items():
            if cause:
                links[cause, finding] = links.get((cause, finding), NOTHING).add(share)
            else:
                leaks[finding] = leaks.get(finding, NOTHING).add(share)
    priors = dict(learned.priors)
    for cause in printed.priors:
        key = (cause, job.garment)
        priors[key] = priors.get(key, NOTHING).add(1.0 if cause in job.confirmed else 0.0)
    return replace(learned, links=links, leaks=leaks, priors=priors)


def learn_all(learned: Learned, jobs: Iterable[ClosedJob], printed: Mapping[str, Printed]) -> Learned:
    """The counts after many closed jobs, in their order.

    Args:
        printed: garment id -> its printed chances.
    """
    for job in jobs:
        learned = learn(learned, job, printed[job.garment])
    return learned


def _shares(learned: Learned, linked: Iterable[str], finding: Finding, printed: Printed) -> dict[str, float]:
    """How likely each confirmed cause linked to it (and the leak, under "") brought the finding on, given that it is there."""
    chances = {"": learned.leak(finding, printed.leaks[finding])}
    chances |= {cause: learned.strength(cause, finding, printed.links[cause, finding]) for cause in linked}
    absent = 1.0
    for chance in chances.values():
        absent *= 1 - chance
    there = 1 - absent
    return {cause: chance / there if there > 0 else 0.0 for cause, chance in chances.items()}


def apply(learned: Learned, printed: Printed, garment: str) -> Printed:
    """The chances after learning, laid out as the printed ones."""
    return Printed(
        links={key: learned.strength(*key, chance) for key, chance in printed.links.items()},
        leaks={finding: learned.leak(finding, chance) for finding, chance in printed.leaks.items()},
        priors={cause: learned.prior(cause, garment, chance) for cause, chance in printed.priors.items()},
    )
