"""How the rack's values are said in the window."""

from __future__ import annotations

from fitdoctor.conditions import ConditionState
from fitdoctor.desk.rack.money import Money
from fitdoctor.desk.rack.sum_sheet import SumLine
from fitdoctor.desk.words import count, lower_first, tr, upper_first
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.rack.answer import RackAnswer, RackSum
from fitdoctor.rack.decision import Decision
from fitdoctor.rack.question import RackQuestion

DECISIONS: dict[Decision, str] = {
    "BUY": "Buy",
    "BUY_IF": "Buy, if …",
    "LEAVE_IT": "Leave it",
    "NOT_KNOWN": "Not known yet",
}
SIDES = {"front": "the front", "back": "the back", "side": "the side"}
HOURS_FROM = 90
"Minutes from which a time is said in hours."
_SURE, _SELDOM, _OFTEN = 0.02, 0.98, 0.4


def time_said(seconds: float) -> str:
    """‘about 10 seconds’, ‘about 2 minutes’."""
    if seconds < 90:
        return tr("about {number} seconds", number=round(seconds))
    return count(round(seconds / 60), "about {number} minute", "about {number} minutes")


def asked(number: int, question: RackQuestion) -> str:
    """‘Question 3. About 10 seconds, no tools.’"""
    taken = time_said(question.seconds)
    return tr("Question {number}. {time}, no tools.", number=number, time=taken[:1].upper() + taken[1:])


def work_said(minutes: float, by_the_hour: bool = False) -> str:
    """‘45 minutes’, ‘1 h 45’."""
    whole = round(minutes)
    if whole < (60 if by_the_hour else HOURS_FROM):
        return count(whole, "{number} minute", "{number} minutes")
    return tr("{hours} h {minutes}", hours=whole // 60, minutes=f"{whole % 60:02}") if whole % 60 else tr("{hours} h", hours=whole // 60)


def work_between(minutes: tuple[float, float]) -> str:
    """‘50 to 71 minutes’, ‘1 h 11 to 2 h 10’, ‘none’."""
    likely, most = (round(one) for one in minutes)
    if not most:
        return tr("none")
    if likely == most:
        return work_said(most)
    first = str(likely) if most < HOURS_FROM else work_said(likely, by_the_hour=True)
    return tr("{likely} to {most}", likely=first, most=work_said(most))


def fails_in(fits: float) -> str:
    """‘1 in 6’; a chance where money hangs on it."""
    fails = 1 - fits
    if fails < _SURE:
        return tr("hardly")
    if fails > _SELDOM:
        return tr("nearly certain")
    if fails > _OFTEN:
        return tr("{number} in 10", number=max(4, min(9, round(fails * 10))))
    return tr("1 in {number}", number=round(1 / fails))


def risk_said(fits: float) -> str:
    """‘It may fail: 1 in 6’."""
    return tr("It may fail: {chance}", chance=fails_in(fits))


def balance_said(money: Money, gain: float) -> str:
    """‘£13.67 ahead’."""
    return tr("{amount} ahead", amount=money.say(gain)) if gain >= 0 else tr("{amount} lost", amount=money.say(-gain))


def work_price(money: Money, rack_sum: RackSum, rate: float) -> str:
    """What the work costs, or that no wages are counted, with its time."""
    time = work_between(rack_sum.minutes)
    if not rate:
        return tr("{time}, no wages counted", time=time)
    return tr("{time}, at most {amount}", time=time, amount=money.say(rack_sum.minutes[1] / 60 * rate))


def comparison_lines(money: Money, answer: RackAnswer) -> list[SumLine]:
    """A garment's sum as it is compared."""
    total = answer.sum
    return [
        SumLine("price", tr("Price"), money.say(total.price)),
        SumLine("work", tr("Work, on average"), money.say(total.work)),
        SumLine("risk", tr("Risk that it fails"), money.say(total.risk)),
        SumLine("total", tr("In all"), money.say(total.total), adds_up=True),
        SumLine("worth", tr("Worth to you"), money.say(total.worth)),
        SumLine("gain", tr("On balance"), balance_said(money, total.gain), adds_up=True),
        SumLine("fits", tr("It may fail"), fails_in(total.fits)),
        SumLine("time", tr("Time it takes"), work_between(total.minutes)),
        SumLine("worst", tr("At worst, for nothing"), money.say(total.worst)),
    ]


def condition_said(state: ConditionState) -> str:
    """What must be so, within a sentence."""
    return lower_first(state.needs.rstrip("."))


def told_said(knowledge: Knowledge, question: RackQuestion, answer: str) -> str:
    """What was told, in a few words: ‘The back: something does’."""
    if question.kind == "symptom":
        return answer
    title = {
        "side": lambda id_: upper_first(tr(SIDES[id_])),
        "check": lambda id_: knowledge.checks[id_].title,
        "feature": lambda id_: knowledge.features[id_].title,
    }[question.kind](question.id)
    return f"{title.rstrip('.')}: {lower_first(answer)}"


def aloud(money: Money, answer: RackAnswer) -> str:
    """The decision as it is said aloud when it changes."""
    decision, balance = tr(DECISIONS[answer.decision]), balance_said(money, answer.sum.gain)
    return tr("As things stand: {decision}. {amount}.", decision=decision, amount=balance)
