"""The answer to a buyer: buy, buy only if, or leave it, with the sum behind it; and what to ask next."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fitdoctor.assess import Assessment, assess
from fitdoctor.case import Case
from fitdoctor.conditions import ConditionState
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.cautions import Caution, safety_cautions
from fitdoctor.rack.decision import Decision, Stand, stand
from fitdoctor.rack.likelihood import met_chance
from fitdoctor.rack.outlook import Outlook, look_out
from fitdoctor.rack.prospects import Prospects
from fitdoctor.rack.question import HURRY_SECONDS, Rack, RackQuestion
from fitdoctor.rack.stake import Outcome, Stake
from fitdoctor.rack.trials import order_of_trials
from fitdoctor.rack.why import Money, at_home, deciding_reason, may_fail, other_sizes, weighed
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop

_MOST_CONDITIONS = 4


@dataclass(frozen=True)
class RackSum:
    """The sum, in the money of the price.

    Attributes:
        work: expected cost of the work; risk: what is lost on average because it may not come to fit.
        total: price, work and risk; worth: of the garment if it fitted; gain: what is left.
        fits: chance that it can be made to fit.
        minutes: likely work and the most.
        likely, left_over: cost of the likely work, and what is left after it, where it can be made to fit.
        worst: price and the most work, spent for nothing.
    """

    price: float
    work: float
    risk: float
    total: float
    worth: float
    gain: float
    fits: float
    minutes: tuple[float, float]
    likely: float
    left_over: float
    worst: float


@dataclass(frozen=True)
class RackAnswer:
    """The answer.

    Attributes:
        reason: what decided it.
        only_if: what must be so, the gravest doubt first.
        at_home: the one thing to check at home before cutting; empty where nothing is to be cut.
        other_size: which size to look for instead.
        may_fail: what it may fail by.
        cautions: what must not be altered for people's safety, beside an advice to buy.
        asks: what could still change it, the best first.
        assessment: of the chain, as far as seen.
    """

    rack: Rack
    title: str
    decision: Decision
    sum: RackSum
    reason: Reason
    only_if: tuple[ConditionState, ...]
    at_home: str
    other_size: tuple[Reason, ...]
    may_fail: tuple[Reason, ...]
    cautions: tuple[Caution, ...]
    asks: tuple[RackQuestion, ...]
    assessment: Assessment

    @property
    def question(self) -> RackQuestion | None:
        """The question to ask next; None where no answer could change the decision."""
        return self.asks[0] if self.asks else None


def rack_answer(knowledge: Knowledge, case: Case, price: float, worth: float, shop: Shop | None = None, hurry: bool = False) -> RackAnswer:
    """Whether to buy a garment.

    Args:
        worth: of the garment to the buyer if it fitted, in the money of the price.
        shop: its rate counts the work; without one the buyer's time counts nothing.
        hurry: only the deal breakers.

    Raises:
        FitdoctorError: the case names a garment that is not known.
    """
    shop = shop or Shop()
    return answer_at(knowledge, Rack(price, worth, shop.rate_per_hour or 0.0, case, hurry=hurry), shop)


def answer_at(
    knowledge: Knowledge, rack: Rack, shop: Shop | None = None, prospects: Prospects | None = None, money: Money | None = None
) -> RackAnswer:
    """The same for a buyer who has answered questions already; prospects kept from the last answer save work.

    Args:
        money: how amounts of money are said in the reasons; the shop's sign before two decimals if left out.
    """
    shop = shop or Shop()
    money = money or (lambda amount: f"{shop.currency}{amount:.2f}")
    knowledge.garment(rack.case.garment)
    outlook = _outlook(knowledge, rack, prospects or prospects_for(knowledge, rack, shop))
    now = _stand(rack, outlook)
    assessment = assess(knowledge, rack.as_far_as_seen, shop)
    only_if = _only_if(outlook) if now.decision == "BUY_IF" else ()
    return RackAnswer(
        rack=rack,
        title=rack.case.title or knowledge.garment(rack.case.garment).title,
        decision=now.decision,
        sum=_sum(rack, outlook, assessment),
        reason=deciding_reason(outlook, now, only_if, money, not rack.sides_not_looked_over),
        only_if=only_if,
        at_home=at_home(outlook, assessment),
        other_size=other_sizes(outlook) if now.decision in ("LEAVE_IT", "BUY_IF") else (),
        may_fail=may_fail(outlook),
        cautions=safety_cautions(knowledge, rack.case) if now.decision in ("BUY", "BUY_IF") else (),
        asks=now.asks,
        assessment=assessment,
    )


def next_question(knowledge: Knowledge, rack: Rack, shop: Shop | None = None, prospects: Prospects | None = None) -> RackQuestion | None:
    """The question worth most a second; None when no answer could change the decision."""
    asks = _stand(rack, _outlook(knowledge, rack, prospects or prospects_for(knowledge, rack, shop or Shop()))).asks
    return asks[0] if asks else None


def prospects_for(knowledge: Knowledge, rack: Rack, shop: Shop) -> Prospects:
    """What is worked out once for a buyer and kept from question to question."""
    return Prospects(knowledge, shop, breakers_only=rack.hurry)


def _outlook(knowledge: Knowledge, rack: Rack, prospects: Prospects) -> Outlook:
    return look_out(knowledge, rack.as_far_as_seen, Stake(rack.price, rack.worth, rack.rate_per_hour), prospects)


def _stand(rack: Rack, outlook: Outlook) -> Stand:
    """In a hurry only what could break the deal is asked, as much of it as time is left for, the soonest to end it first."""
    if not rack.hurry:
        return stand(rack, outlook)
    left = HURRY_SECONDS - rack.spent_seconds
    return stand(rack, outlook, lambda asks: _breakers(asks, left))


def _breakers(asks: Sequence[RackQuestion], seconds: float) -> list[RackQuestion]:
    quick = [ask for ask in asks if (ask.breaks > 0 or ask.kind == "symptom") and ask.seconds <= seconds]
    return order_of_trials(quick, lambda ask: ask.breaks, lambda ask: ask.seconds)


def _sum(rack: Rack, outlook: Outlook, assessment: Assessment) -> RackSum:
    now: Outcome = outlook.now()
    likely = now.minutes / 60 * rack.rate_per_hour
    most = max([assessment.plan.minutes[2], *(p.most_minutes for p in outlook.of(weighed(outlook)).values())], default=0.0)
    return RackSum(
        price=rack.price,
        work=now.work,
        risk=now.risk,
        total=rack.price + now.work + now.risk,
        worth=rack.worth,
        gain=now.gain,
        fits=now.fits,
        minutes=(now.minutes, max(most, now.minutes)),
        likely=likely,
        left_over=rack.worth - rack.price - likely,
        worst=rack.price + max(most, now.minutes) / 60 * rack.rate_per_hour,
    )


def _only_if(outlook: Outlook) -> tuple[ConditionState, ...]:
    """What the likely work needs and nobody knows, the gravest doubt first, each once."""
    doubts: dict[str, tuple[float, ConditionState]] = {}
    for doubt, state in _doubts(outlook):
        if doubt > doubts.get(state.condition, (0.0, state))[0]:
            doubts[state.condition] = doubt, state
    ordered = sorted(doubts.values(), key=lambda pair: (-pair[0], pair[1].condition))
    return tuple(state for _, state in ordered[:_MOST_CONDITIONS])


def _doubts(outlook: Outlook) -> Iterator[tuple[float, ConditionState]]:
    for cause, prospect in outlook.of(weighed(outlook)).items():
        for state in prospect.open:
            yield outlook.chances[cause] * (1 - met_chance(outlook.knowledge, state)), state


def in_a_hurry(rack: Rack) -> Rack:
    """The same buyer with ten seconds."""
    return replace(rack, hurry=True, spent_seconds=0.0)
