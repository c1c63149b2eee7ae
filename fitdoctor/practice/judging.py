"""What an answer is worth and what is said to it."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise

from fitdoctor.errors import FitdoctorError
from fitdoctor.practice.exercise import POINTS, Amount, Choice, Feedback, Kind, Mark, Order, Question, Told
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop
from fitdoctor.units import parse_length

_LOOK: dict[Kind, str] = {
    "lines": "Look at how the line lies.",
    "cause": "Look at what the cloth does.",
    "check": "Ask what would part the causes.",
    "amount": "Follow how it is shared out.",
    "verdict": "Look at what the work needs.",
    "order": "Think of what lies over what.",
    "garment": "Look at the whole of it.",
}
_PART_WITHIN = 3
"""How many times over the tolerance an amount still counts in part."""


def judge(question: Question, answer: str, shop: Shop | None = None) -> Feedback:
    """Judge an answer.

    Args:
        answer: id of an option; or a length as it is typed; or the ids of the operations in the order given, with spaces between.

    Raises:
        FitdoctorError: the answer is none to this question.
    """
    shop = shop or Shop()
    if isinstance(question, Choice):
        return _chosen(question, answer)
    if isinstance(question, Amount):
        return _measured(question, parse_length(answer, shop.unit), shop)
    assert isinstance(question, Order)
    return _ordered(question, tuple(answer.split()))


def right_answer(question: Question) -> str:
    """An answer that is right, as `judge` takes it."""
    if isinstance(question, Choice):
        return max(question.options, key=lambda option: POINTS[option.mark]).id
    if isinstance(question, Amount):
        return f"{question.right_mm!r} mm"
    assert isinstance(question, Order)
    return " ".join(question.order)


def _chosen(question: Choice, answer: str) -> Feedback:
    if answer not in {option.id for option in question.options}:
        raise FitdoctorError(f"‘{answer}’ is none of the answers.", "Choose one of those that are shown.")
    option = question.option(answer)
    return _feedback(question, option.mark, option.told)


def _measured(question: Amount, mm: float, shop: Shop) -> Feedback:
    off = abs(abs(mm) - question.right_mm)
    mark: Mark = "right" if off <= question.within_mm else "part" if off <= _PART_WITHIN * question.within_mm else "wrong"
    slip = next((said for slip, said in question.slips if mark == "wrong" and abs(abs(mm) - slip) <= question.within_mm), "")
    so = (f"It comes to {shop.length(question.right_mm)}.",) if mark != "right" else ()
    text = tuple(part for part in (slip, *so, *(reason.text for reason in question.because)) if part)
    confused = ("in all", "each side or layer") if slip else ()
    return _feedback(question, "part" if slip else mark, Told(text, speaks_for=question.because, confused=confused))


def _ordered(question: Order, answer: tuple[str, ...]) -> Feedback:
    if sorted(answer) != sorted(question.order):
        raise FitdoctorError("Some operations have no place yet.", "Give each of them its place.")
    places = [question.order.index(id_) for id_ in answer]
    turned = [(one, other) for one, other in pairwise(places) if one > other]
    swapped = sum(a > b for at, a in enumerate(places) for b in places[at + 1 :])
    mark: Mark = "right" if not swapped else "part" if swapped == 1 else "wrong"
    titles = dict(question.steps)
    text = tuple(f"‘{_short(titles[question.order[b]])}’ comes before ‘{_short(titles[question.order[a]])}’." for a, b in turned[:1])
    return _feedback(question, mark, Told(text))


def _feedback(question: Question, mark: Mark, told: Told) -> Feedback:
    first = {"right": "Yes.", "part": "In part.", "wrong": "Not this time."}[mark]
    rest = question.right if mark == "right" else _LOOK[question.kind]
    sources = _sources((*told.speaks_for, *told.speaks_against), question.sources)
    return Feedback(mark, f"{first} {rest}", question.right, told, question.shows, question.entry, sources)


def _sources(reasons: Iterable[Reason], own: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*own, *(source for reason in reasons for source in reason.sources))))


def _short(text: str) -> str:
    """The first sentence of an operation."""
    return text.split(". ")[0].rstrip(".")
