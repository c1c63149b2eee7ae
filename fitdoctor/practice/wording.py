"""Sentences that several kinds of exercise use."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from fitdoctor.case import Case
from fitdoctor.diagnosis.diagnose import Diagnosis
from fitdoctor.diagnosis.ranking import Evidence, RankedCause
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.reason import Reason
from fitdoctor.shop import Shop

_MOST_REASONS = 3


def lower(text: str) -> str:
    """A title inside a sentence."""
    return text[:1].lower() + text[1:].rstrip(".")


def fact_line(knowledge: Knowledge, feature: str, value: str) -> str:
    """A fact as `Lining: none`."""
    entry = knowledge.features[feature]
    title = next((v.title for v in entry.values if v.id == value), value)
    return f"{entry.title}: {lower(title)}"


def given_lines(knowledge: Knowledge, case: Case, shop: Shop) -> tuple[str, ...]:
    """What is known of a case, a line each: seen, looked over, facts, answers, lengths."""
    seen = [f"Seen, {knowledge.symptoms[id_].view}: {lower(knowledge.symptoms[id_].title)}" for id_ in case.seen]
    nothing = "Nothing else shows" if case.seen else "Nothing shows"
    looked = [f"{nothing} from {_joined([f'the {view}' for view in case.looked])}"] if case.looked else []
    facts = [fact_line(knowledge, feature, value) for feature, value in case.facts.items()]
    answers = [f"{knowledge.checks[id_].ask} {_said(knowledge, id_, answer)}" for id_, answer in case.answers.items()]
    measured = [f"{knowledge.measurements[id_].title}: {shop.length(length.mm)}" for id_, length in case.measured.items()]
    return (*seen, *looked, *facts, *answers, *measured)


def reasons_for(diagnosis: Diagnosis, cause: RankedCause) -> tuple[Reason, ...]:
    """What speaks for a cause, the weightiest first, each with who says so."""
    return tuple(_reason(diagnosis, cause, item) for item in cause.speaks_for[:_MOST_REASONS])


def reasons_against(diagnosis: Diagnosis, cause: RankedCause) -> tuple[Reason, ...]:
    """What speaks against a cause; what rules it out stands alone."""
    if cause.ruled_out:
        return (cause.ruled_out,)
    return tuple(_reason(diagnosis, cause, item) for item in cause.speaks_against[:_MOST_REASONS])


def _reason(diagnosis: Diagnosis, cause: RankedCause, item: Evidence) -> Reason:
    link = diagnosis.net.links.get((cause.id, (item.kind, item.finding)))
    there = item.answer if item.kind == "check" else ("seen" if item.answer == "yes" else "not there")
    what = f"{item.title.rstrip('.')}: {there}"
    if item.linked and link:
        expected = f"From this cause it is {link.word.replace('-', ' ')} so." if item.answer == "yes" else "It would be expected."
        text = f"{what}. {expected}"
    else:
        text = f"{what}. Another cause accounts for it." if item.weight < 0 else f"{what}. No other cause accounts for it so well."
    return Reason(text, item.finding, link.sources if link else (), "met" if item.weight > 0 else "not-met")


def _said(knowledge: Knowledge, check: str, answer: str) -> str:
    entry = knowledge.checks[check]
    return {"yes": entry.yes, "no": entry.no}.get(answer, "Not known")


def _joined(words: Sequence[str]) -> str:
    return " and ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)


def without(things: Iterable[str], *left_out: str) -> list[str]:
    """The things in order, each once, some left out."""
    return [thing for thing in dict.fromkeys(things) if thing not in left_out]
