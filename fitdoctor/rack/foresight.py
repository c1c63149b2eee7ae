"""What each possible answer would change, and what knowing it is worth."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import cast

import msgspec

from fitdoctor.diagnosis.looked_over import before_looks
from fitdoctor.diagnosis.next_checks import foresee
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


def after_checks(outlook: Outlook, rows: Sequence[int]) -> Iterator[tuple[int, tuple[After, After]]]:
    """(row of the net, yes and no to it) for each open finding whose answer could count."""
    if not rows:
        return
    seen = foresee(outlook.net, outlook.found, rows)
    for at, row in enumerate(rows):
        yes, no = float(seen.yes[at]), float(seen.no[at])
        if min(yes, no) * outlook.most_at_stake >= LEAST_GAIN * outlook.stake.worth:
            yield row, _yes_and_no(outlook, [row], (yes, seen.if_yes[at].tolist()), (no, seen.if_no[at].tolist()))


def after_sides(outlook: Outlook, looks: Sequence[Sequence[int]]) -> Iterator[tuple[Outlook, tuple[After, After]]]:
    """How it stands before looking over each side, and something or nothing (else) shows there.

    Args:
        looks: the findings of each side, by row; they are taken as absent so far.
    """
    for look, before in zip(looks, before_looks(outlook.net, looks), strict=True):
        was = replace(outlook, net=before.net, found=before.found)
        something, nothing = before.if_something.tolist(), before.if_nothing.tolist()
        yield was, _yes_and_no(was, look, (1 - before.nothing, something), (before.nothing, nothing))


def _yes_and_no(
    outlook: Outlook, look: Sequence[int], if_yes: tuple[float, list[float]], if_no: tuple[float, list[float]]
) -> tuple[After, After]:
    """What holds after each answer, from its chance and the chances of the causes then."""
    net = outlook.net
    yes, no = counted(net, if_yes[1]), counted(net, if_no[1])
    linked = cast(list[bool], net.net.links[list(look)].any(axis=0).tolist())
    able = frozenset(cause for cause in yes if linked[net.column[cause]])
    return (
        After("yes", if_yes[0], yes, outlook.of(yes), joined(outlook.rivals, able)),
        After("no", if_no[0], no, outlook.of(no), outlook.rivals),
    )


def chances_of(outlook: Outlook, rows: Sequence[int]) -> list[float]:
    """The chance of a yes to each finding."""
    return foresee(outlook.net, outlook.found, rows).yes.tolist() if rows else []


def all_met(outlook: Outlook) -> float:
    """The chance that all that is not known of the work turns out well, as far as it counts here."""
    best, likely, worst = (outlook.now(view).fits for view in ("best", "likely", "worst"))
    return min(1.0, max(0.0, (likely - worst) / (best - worst))) if best - worst > 1e-9 else 1.0
