"""What entries and sources say differently of the same thing, side by side."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from fitdoctor.knowledge.entries import Cause, Condition, Entry, Method, Symptom, When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import tests
from fitdoctor.knowledge.watching import watched, watches
from fitdoctor.shop import Shop


@dataclass(frozen=True)
class Said:
    """One of several things said of the same matter: which entry says it, what, and after which sources."""

    entry: str
    title: str
    says: str
    sources: tuple[str, ...]


@dataclass(frozen=True)
class SideBySide:
    """A matter, and what is said of it."""

    matter: str
    said: tuple[Said, ...]


def side_by_side(knowledge: Knowledge, shop: Shop, entry: Entry) -> Iterator[SideBySide]:
    """The matters of an entry on which more than one thing is said."""
    if isinstance(entry, Symptom):
        yield from _matter("Easily mistaken", _mistaken(knowledge, entry), least=1)
    elif isinstance(entry, Cause):
        yield from _matter("Ways to treat it", _ways(knowledge, entry))
    elif isinstance(entry, Method):
        yield from _limits(knowledge, shop, entry)
    elif isinstance(entry, Condition) and _limited(entry):
        for method in watched(knowledge, entry):
            yield from (m for m in _limits(knowledge, shop, method) if any(said.entry == entry.id for said in m.said))


def _matter(matter: str, said: Iterable[Said], least: int = 2) -> Iterator[SideBySide]:
    found = tuple(said)
    if len(found) >= least:
        yield SideBySide(matter, found)


def _mistaken(knowledge: Knowledge, entry: Symptom) -> Iterator[Said]:
    for other in entry.mistaken_for:
        if other.symptom in knowledge.symptoms:
            symptom = knowledge.symptoms[other.symptom]
            yield Said(symptom.id, symptom.title, other.tell_apart, symptom.sources)


def _ways(knowledge: Knowledge, entry: Cause) -> Iterator[Said]:
    methods = sorted((m for m in knowledge.methods.values() if entry.id in m.treats), key=lambda m: (m.rank, m.id))
    for method in methods:
        if method.preferred or method.because:
            yield Said(method.id, method.title, method.preferred or method.because, method.sources)


def _limits(knowledge: Knowledge, shop: Shop, method: Method) -> Iterator[SideBySide]:
    """Limits that different entries set to the same amount of one method."""
    limits: dict[str, list[Said]] = defaultdict(list)
    setting = (c for c in knowledge.conditions.values() if _limited(c) and watches(knowledge, c, method))
    for condition in setting:
        for node in _limited(condition):
            limit = node.exceeds if node.exceeds is not None else node.below
            if limit is not None:
                says = f"{'no more' if node.exceeds is not None else 'no less'} than {shop.length(limit)}: {condition.because}"
                limits[node.amount].append(Said(condition.id, condition.title, says, condition.sources))
    for amount, said in limits.items():
        yield from _matter(f"How much ({amount.replace('-', ' ')}) in ‘{method.title}’", said)


def _limited(condition: Condition) -> list[When]:
    """The tests of a condition that set a limit to an amount."""
    return [node for node, _ in tests(condition.when, ()) if node.amount]
