"""Conditions as small trees: what is not known stays not known, and a limit inside the give or take is borderline."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from enum import Enum

from fitdoctor.amounts.marks import Length
from fitdoctor.case import Case
from fitdoctor.knowledge.entries import LengthMm, When
from fitdoctor.knowledge.knowledge import Knowledge

_ROUNDING_MM = 1e-6


class Truth(Enum):
    """Whether a tree holds; only TRUE and FALSE settle anything."""

    TRUE = "true"
    FALSE = "false"
    NOT_KNOWN = "not-known"
    BORDERLINE = "borderline"


_OPPOSITE = {Truth.TRUE: Truth.FALSE, Truth.FALSE: Truth.TRUE}
_UNSETTLED = (Truth.NOT_KNOWN, Truth.BORDERLINE)


def holds(when: When, case: Case, amounts: Mapping[str, Length] | None, knowledge: Knowledge) -> Truth:
    """Whether the tree holds for the case.

    Args:
        amounts: worked-out amounts of the method by name, mm with give or take; None where there are none yet.
    """
    return _all(_tests(when, case, amounts, knowledge))


def missing(
    when: When, case: Case, amounts: Mapping[str, Length] | None = None, knowledge: Knowledge | None = None
) -> tuple[str, ...]:
    """Ids of the facts, checks, symptoms, measurements and amounts that keep the tree from being settled, each once."""
    known = knowledge or Knowledge()
    return tuple(dict.fromkeys(_missing(when, case, amounts, known)))


def in_words(when: When, knowledge: Knowledge) -> str:
    """The tree as a phrase: ‘lining: none and cloth: knit’."""
    parts = [f"({in_words(part, knowledge)})" if part.any else in_words(part, knowledge) for part in when.all]
    if when.any:
        parts.append(" or ".join(in_words(part, knowledge) for part in when.any))
    if when.not_ is not None:
        inner = in_words(when.not_, knowledge)
        parts.append(inner.replace(": ", ": not ", 1) if when.not_.garment else f"not ({inner})")
    return " and ".join([*parts, *_leaf_words(when, knowledge)])


def _tests(when: When, case: Case, amounts: Mapping[str, Length] | None, knowledge: Knowledge) -> Iterator[Truth]:
    if when.all:
        yield _all(holds(part, case, amounts, knowledge) for part in when.all)
    if when.any:
        yield _any(holds(part, case, amounts, knowledge) for part in when.any)
    if when.not_ is not None:
        inner = holds(when.not_, case, amounts, knowledge)
        yield _OPPOSITE.get(inner, inner)
    if when.fact:
        yield _answered(case.facts.get(when.fact), when.is_)
    if when.check:
        yield _answered(case.answers.get(when.check), when.is_ or ("yes",))
    if when.symptom:
        yield _seen(when.symptom, case, knowledge)
    if when.garment:
        yield _is_kind(when.garment, case.garment, knowledge)
    if when.amount:
        yield _compared((amounts or {}).get(when.amount), when.exceeds, when.below)
    if when.measurement:
        yield _compared(_measured(when.measurement, case, knowledge), when.exceeds, when.below)


def _all(parts: Iterator[Truth]) -> Truth:
    found = set(parts)
    if Truth.FALSE in found:
        return Truth.FALSE
    return next((state for state in _UNSETTLED if state in found), Truth.TRUE if found else Truth.NOT_KNOWN)


def _any(parts: Iterator[Truth]) -> Truth:
    found = set(parts)
    if Truth.TRUE in found:
        return Truth.TRUE
    return next((state for state in _UNSETTLED if state in found), Truth.FALSE)


def _answered(answer: str | None, accepted: tuple[str, ...]) -> Truth:
    if answer is None or (answer == "not-known" and answer not in accepted):
        return Truth.NOT_KNOWN
    return Truth.TRUE if answer in accepted else Truth.FALSE


def _seen(symptom: str, case: Case, knowledge: Knowledge) -> Truth:
    if symptom in case.seen:
        return Truth.TRUE
    entry = knowledge.symptoms.get(symptom)
    looked = entry is not None and entry.view in case.looked
    cannot = entry is not None and not knowledge.suits(entry.garments, case.garment)
    return Truth.FALSE if looked or cannot or symptom in case.not_seen else Truth.NOT_KNOWN


def _is_kind(wanted: str, garment: str, knowledge: Knowledge) -> Truth:
    """A case that names only the wide kind (an umbrella) leaves the exact kind open."""
    kind: str = garment
    passed: set[str] = set()
    while kind and kind not in passed:
        if kind == wanted:
            return Truth.TRUE
        passed.add(kind)
        kind = knowledge.garments[kind].kind_of if kind in knowledge.garments else ""
    return Truth.NOT_KNOWN if wanted in knowledge.kinds_of(garment) else Truth.FALSE


def _measured(measurement: str, case: Case, knowledge: Knowledge) -> Length | None:
    reading = case.measured.get(measurement)
    if reading is None:
        return None
    if reading.give_mm is not None:
        return Length(reading.mm, reading.give_mm)
    entry = knowledge.measurements.get(measurement)
    return Length(reading.mm, entry.tolerance_mm if entry else 0.0)


def _compared(length: Length | None, exceeds: LengthMm | None, below: LengthMm | None) -> Truth:
    if length is None:
        return Truth.NOT_KNOWN
    over = [_over(length.mm - limit, length.give_mm) for limit in (exceeds,) if limit is not None]
    under = [_over(limit - length.mm, length.give_mm) for limit in (below,) if limit is not None]
    return _all(iter([*over, *under]))


def _over(surplus_mm: float, give_mm: float) -> Truth:
    if surplus_mm > give_mm + _ROUNDING_MM:
        return Truth.TRUE
    return Truth.FALSE if surplus_mm <= -give_mm + _ROUNDING_MM else Truth.BORDERLINE


def _missing(when: When, case: Case, amounts: Mapping[str, Length] | None, knowledge: Knowledge) -> Iterator[str]:
    if holds(when, case, amounts, knowledge) is not Truth.NOT_KNOWN:
        return
    for part in (*when.all, *when.any, *((when.not_,) if when.not_ is not None else ())):
        yield from _missing(part, case, amounts, knowledge)
    for name in (when.fact, when.check, when.symptom, when.amount, when.measurement):
        if name:
            yield name


def _leaf_words(when: When, knowledge: Knowledge) -> Iterator[str]:
    if when.fact:
        feature = knowledge.features.get(when.fact)
        titles = {value.id: value.title for value in feature.values} if feature else {}
        values = " or ".join(titles.get(value, value.replace("-", " ")) for value in when.is_)
        yield f"{_title(when.fact, feature)}: {values[:1].lower()}{values[1:]}"
    if when.check:
        check = knowledge.checks.get(when.check)
        yield f"{check.ask if check else when.check} {' or '.join(when.is_ or ('yes',))}"
    if when.symptom:
        yield f"{_title(when.symptom, knowledge.symptoms.get(when.symptom))}: seen"
    if when.garment:
        yield f"the garment: {_title(when.garment, knowledge.garments.get(when.garment))}"
    for name, entry in ((when.amount, None), (when.measurement, knowledge.measurements.get(when.measurement))):
        if name:
            yield f"{_title(name, entry)} {'over' if when.exceeds is not None else 'under'} the limit"


def _title(id_: str, entry: object) -> str:
    title = str(getattr(entry, "title", id_.replace("-", " ")))
    return title[:1].lower() + title[1:]
