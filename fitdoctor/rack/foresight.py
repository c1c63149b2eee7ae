"""What each possible answer would change, and what knowing it is worth."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import cast

import msgspec

from fitdoctor.diagnosis.next_checks import foresee_looks
from fitdoctor.knowledge.entries import Feature
from fitdoctor.rack.likelihood import feature_chances
from fitdoctor.rack.outlook import Outlook, counted
from fitdoctor.rack.prospects import Prospect, View
from fitdoctor.rack.stake import joined

LEAST_GAIN = 0.005
"""Gain, as a share of what the garment is worth, below which an answer is held to change nothing."""


@dataclass(frozen=True)
class After:
    """What holds after one answer, and how likely the answer is."""

    value: str
    chance: float
    chances: Mapping[str, float]
    prospects: Mapping[str, Prospect]
    rivals: Sequence[frozenset[str]]

    def gain(self, outlook: Outlook, view: View) -> float:
        """What buying is worth after this answer, in money."""
        return outlook.outcome(view, self.chances, self.prospects, self.rivals).gain


@dataclass(frozen=True)
class Value:
    """What knowing an answer is worth, in money, and the chance of one after which the garment is better left."""

    gain: float
    breaks: float


def value_of(outlook: Outlook, afters: Sequence[After]) -> Value:
    """What asking is worth: the best choice after each answer against the best choice without it.

    Other things that are not known may hide that this one counts (two conditions, each of which alone is not enough). So the worth is
    taken as well for the case that all of them are met, and that none is, each by its likelihood; the greatest counts.
    """
    gains = [(after.chance, after.gain(outlook, "likely")) for after in afters]
    worths = [worth_of_telling(gains)]
    met = all_met(outlook)
    for view, weight in (("best", met), ("worst", 1 - met)) if 0 < met < 1 else ():
        worths.append(weight * worth_of_telling([(after.chance, after.gain(outlook, cast(View, view))) for after in afters]))
    return Value(max(worths), sum(chance for chance, gain in gains if gain < 0))


def worth_of_telling(gains: Sequence[tuple[float, float]]) -> float:
    """The best choice after each answer against the best choice without it, in money.

    Args:
        gains: (chance of the answer, what buying is worth then).
    """
    return sum(chance * max(0.0, gain) for chance, gain in gains) - max(0.0, sum(chance * gain for chance, gain in gains))


def after_feature(outlook: Outlook, feature: Feature, rules_out: bool) -> Iterator[After]:
    """The answers to a question about the garment; the causes change only where it rules some out."""
    for value, chance in feature_chances(outlook.knowledge, feature).items():
        case = msgspec.structs.replace(outlook.case, facts={**outlook.case.facts, feature.id: value})
        then = outlook.with_case(case) if rules_out else outlook
        yield After(value, chance, then.chances, outlook.of(then.chances, case), then.rivals)


def after_looks(outlook: Outlook, looks: Sequence[Sequence[int]]) -> Iterator[tuple[int, tuple[After, After]]]:
    """(number of the look, yes and no to it) for each look at one or several findings, by row of the net, that could count."""
    if not looks:
        return
    net = outlook.net
    seen = foresee_looks(net, outlook.found, looks)
    for at, look in enumerate(looks):
        yes, no = float(seen.yes[at]), float(seen.no[at])
        if min(yes, no) * outlook.most_at_stake < LEAST_GAIN * outlook.stake.worth:
            continue
        if_yes, if_no = (counted(net, chances[at].tolist()) for chances in (seen.if_yes, seen.if_no))
        linked = cast(list[bool], net.net.links[list(look)].any(axis=0).tolist())
        able = frozenset(cause for cause in if_yes if linked[net.column[cause]])
        yield (
            at,
            (
                After("yes", yes, if_yes, outlook.of(if_yes), joined(outlook.rivals, able)),
                After("no", no, if_no, outlook.of(if_no), outlook.rivals),
            ),
        )


def chances_of(outlook: Outlook, rows: Sequence[int]) -> list[float]:
    """The chance of a yes to each finding."""
    return foresee_looks(outlook.net, outlook.found, [(row,) for row in rows]).yes.tolist() if rows else []


def all_met(outlook: Outlook) -> float:
    """The chance that all that is not known of the work turns out well, as far as it counts here."""
    best, likely, worst = (outlook.now(view).fits for view in ("best", "likely", "worst"))
    return min(1.0, max(0.0, (likely - worst) / (best - worst))) if best - worst > 1e-9 else 1.0
