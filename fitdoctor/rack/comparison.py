"""Several garments side by side."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from fitdoctor.rack.answer import RackAnswer
from fitdoctor.rack.decision import DECISION_WORDS, Decision
from fitdoctor.rack.question import RackQuestion

_ORDER: tuple[Decision, ...] = ("BUY", "BUY_IF", "NOT_KNOWN", "LEAVE_IT")


@dataclass(frozen=True)
class Compared:
    """One garment in a comparison; money as in its own sum."""

    title: str
    decision: Decision
    price: float
    work: float
    risk: float
    total: float
    worth: float
    gain: float
    worst: float
    reason: str

    @property
    def words(self) -> str:
        return DECISION_WORDS[self.decision]


def order(answer: RackAnswer) -> tuple[int, float, str]:
    """The place of an answer among others: what to buy first, then by what is gained."""
    return _ORDER.index(answer.decision), -answer.sum.gain, answer.title


def compare(answers: Iterable[RackAnswer]) -> tuple[Compared, ...]:
    """The garments side by side, in their order."""
    return tuple(
        Compared(a.title, a.decision, a.sum.price, a.sum.work, a.sum.risk, a.sum.total, a.sum.worth, a.sum.gain, a.sum.worst, a.reason.text)
        for a in sorted(answers, key=order)
    )


def rack_json(answer: RackAnswer) -> dict[str, Any]:
    """An answer as plain values for JSON; money in the money of the price, chances from 0 to 1."""
    total, ask = answer.sum, answer.question
    return {
        "format": 1,
        "garment": answer.rack.case.garment,
        "decision": answer.decision,
        "reason": {"text": answer.reason.text, "entry": answer.reason.entry, "sources": list(answer.reason.sources)},
        "sum": {name: round(getattr(total, name), 2) for name in ("price", "work", "risk", "total", "worth", "gain", "worst")},
        "fits": round(total.fits, 4),
        "minutes": [round(minutes, 1) for minutes in total.minutes],
        "only_if": [{"id": s.condition, "needs": s.needs, "how": s.at_the_rack or s.ask} for s in answer.only_if],
        "at_home": answer.at_home,
        "cautions": [{"id": c.condition, "needs": c.needs, "how": c.how} for c in answer.cautions],
        "other_size": [reason.text for reason in answer.other_size],
        "next": None if ask is None else _question_json(ask),
    }


def _question_json(ask: RackQuestion) -> dict[str, Any]:
    answers = [{"value": answer.value, "title": answer.title} for answer in ask.answers]
    return {"id": ask.id, "kind": ask.kind, "ask": ask.ask, "seconds": ask.seconds, "gain": round(ask.gain, 2), "answers": answers}
