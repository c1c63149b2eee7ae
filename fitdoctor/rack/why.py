"""What decided it, what to check at home, which size to look for instead."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from fitdoctor.assess import Assessment
from fitdoctor.conditions import ConditionState
from fitdoctor.rack.decision import Stand
from fitdoctor.rack.outlook import COUNTED_FROM, Outlook
from fitdoctor.rack.prospects import Prospect
from fitdoctor.reason import Reason

Money = Callable[[float], str]
"""An amount of money in words."""
_MAY_BE = 0.3
"""From this chance on a cause is reckoned with in words."""
_MOST_DOUBTS = 3


def weighed(outlook: Outlook) -> list[str]:
    """The causes reckoned with in words, the likeliest first; where none stands out, the likeliest one that shows."""
    ranked = sorted((cause for cause in outlook.chances if cause in outlook.net.able), key=lambda cause: -outlook.chances[cause])
    return [cause for cause in ranked if outlook.chances[cause] >= _MAY_BE] or ranked[:1]


def deciding_reason(outlook: Outlook, now: Stand, only_if: Sequence[ConditionState], money: Money, looked_over: bool) -> Reason:
    """The reason that decided it; `looked_over` where no side was left out."""
    if now.decision == "NOT_KNOWN":
        return Reason(f"It turns on an answer: {now.asks[0].ask}", now.asks[0].id)
    if now.decision == "BUY_IF":
        return only_if[0].reason if only_if else Reason("It turns on how the garment is made.", "")
    return _for_buying(outlook, money, looked_over) if now.decision == "BUY" else _against(outlook, money)


def at_home(outlook: Outlook, assessment: Assessment) -> str:
    """The one thing to check before cutting: what the chosen work needs and nobody knows, else the check that tells most, else a length."""
    return next(_at_home(outlook, assessment), "") if assessment.methods else ""


def other_sizes(outlook: Outlook) -> tuple[Reason, ...]:
    """Which garment to look for instead, where the trade has a rule for what is likely the matter."""
    found = dict.fromkeys(_other_sizes(outlook))
    return tuple(found)


def may_fail(outlook: Outlook) -> tuple[Reason, ...]:
    """What it may fail by: the causes that may be there and may not be cured, the gravest first."""
    prospects = outlook.of(outlook.chances)
    stuck = {cause: outlook.chances[cause] * (1 - prospects[cause].cured["likely"]) for cause in outlook.chances}
    gravest = sorted((cause for cause in stuck if stuck[cause] >= COUNTED_FROM), key=lambda cause: -stuck[cause])
    return tuple(_failing(outlook, prospects[cause]) for cause in gravest[:_MOST_DOUBTS])


def _failing(outlook: Outlook, prospect: Prospect) -> Reason:
    cause, choice = outlook.knowledge.causes[prospect.cause], prospect.choice
    sentence = choice.chosen.sentence if choice.chosen else choice.why_none
    return Reason(f"{cause.title.rstrip('.')}. {sentence}".strip(), cause.id, cause.sources, "not-met")


def _for_buying(outlook: Outlook, money: Money, looked_over: bool) -> Reason:
    now, stake = outlook.now(), outlook.stake
    if not weighed(outlook):
        unseen = "At this price nothing that may show where nobody looked is likely enough to turn it."
        return Reason("Nothing shows that asks for work." if looked_over else unseen, "")
    total = stake.price + now.work + now.risk
    first = weighed(outlook)[0]
    chosen = outlook.of([first])[first].choice.chosen
    sentence = chosen.sentence if chosen else ""
    return Reason(f"Price, work and risk come to {money(total)}; it is worth {money(stake.worth)}. {sentence}".strip(), first)


def _against(outlook: Outlook, money: Money) -> Reason:
    now, stake = outlook.now(), outlook.stake
    if stake.price > stake.worth:
        return Reason(f"The price alone is more than the {money(stake.worth)} it would be worth.", "")
    if stake.price + now.work > stake.worth:
        return Reason(f"Price and work come to {money(stake.price + now.work)}; it would be worth {money(stake.worth)}.", "")
    prospects = outlook.of(outlook.chances)
    worst = max(prospects, key=lambda cause: outlook.chances[cause] * (1 - prospects[cause].cured["likely"]))
    choice = prospects[worst].choice
    if choice.chosen and choice.chosen.level != "CANNOT":
        total = money(stake.price + now.work + now.risk)
        return Reason(f"Price, work and risk come to {total}; it would be worth {money(stake.worth)}. {choice.chosen.sentence}", worst)
    return _failing(outlook, prospects[worst])


def _at_home(outlook: Outlook, assessment: Assessment) -> Iterator[str]:
    measurements = outlook.knowledge.measurements
    for state in (s for choice in assessment.choices if choice.chosen for s in choice.chosen.conditions if _stops(s)):
        lengths = [measurements[m].title for m in state.missing if m in measurements]
        yield f"Measure: {lengths[0]}. {state.needs}." if lengths else state.ask or f"Make sure: {state.needs}."
    yield from (ask.ask for ask in assessment.next if ask.kind == "check")
    yield from (f"Measure: {measurements[wanted.measurement].title}." for wanted in assessment.wanted if not wanted.taken)


def _stops(state: ConditionState) -> bool:
    """Whether something not known could stop the work."""
    return state.state in ("not-known", "borderline") and state.effect in ("forbids", "limits") and not state.everywhere


def _other_sizes(outlook: Outlook) -> Iterator[Reason]:
    knowledge = outlook.knowledge
    for cause, prospect in outlook.of(weighed(outlook)).items():
        for method in knowledge.methods_for(cause, outlook.case.garment):
            if method.kind == "other-garment":
                yield Reason(f"{method.title}. {method.because}".strip(), method.id, method.sources)
        states = prospect.choice.chosen.conditions if prospect.choice.chosen else ()
        for state in states:
            if state.instead and state.effect in ("forbids", "limits") and state.state == "not-met":
                yield Reason(state.instead, state.condition, state.sources)
