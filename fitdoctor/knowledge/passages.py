"""The words of an entry as passages: a title, another name, a sentence, each with how much it says about the entry."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from fitdoctor.knowledge.entries import Entry, Feature, Source, Symptom
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import trees
from fitdoctor.knowledge.stems import stems, words

_WEIGHTS = {"title": 3.0, "also": 2.6, "look": 1.6, "place": 0.8, "why": 0.5}
SAYS_MUCH = _WEIGHTS["look"]
"""From this weight on a passage tells what the entry is about."""

_LOOKS = ("look", "ask", "needs")
_WHYS = ("why", "because", "how", "at_the_rack", "instead", "preferred")
_VIEW_WORDS = {"back": "back behind", "front": "front", "side": "side profile"}


@dataclass(frozen=True)
class Passage:
    """Words that stand together in one entry.

    Attributes:
        entry: number of the entry in its index.
    """

    entry: int
    text: str
    weight: float
    stems: frozenset[str]


def passages_of(knowledge: Knowledge, number: int, entry: Entry) -> Iterator[Passage]:
    """All passages of an entry that say something."""
    texts = [("title", entry.title), ("title", entry.short), *(("also", name) for name in entry.also_called)]
    texts += [("look", text) for name in _LOOKS for text in _texts(getattr(entry, name, ""))]
    texts += [("why", text) for name in _WHYS for text in _texts(getattr(entry, name, ""))]
    texts += [("place", _place(knowledge, entry))] if isinstance(entry, Symptom) else []
    texts += [("look", title) for title in _answers(knowledge, entry)]
    for field, text in texts:
        found = frozenset(stems(text))
        if found:
            yield Passage(number, text, _WEIGHTS[field], found)


def passages_of_source(number: int, id_: str, source: Source) -> Iterator[Passage]:
    """The words of a source: its title; who made it and when; its short name; what of it was read."""
    names = (("title", source.title), ("also", f"{source.by} {source.year}"), ("also", id_.replace("-", " ")))
    for field, text in (*names, ("place", source.kind), ("why", source.note)):
        found = frozenset(stems(text))
        if found:
            yield Passage(number, text, _WEIGHTS[field], found)


def garments_of(kind: str, entry: Entry) -> tuple[str, ...]:
    """The garments an entry is for; none: all."""
    if kind == "garments":
        return (entry.id,)
    return tuple(getattr(entry, "garments", ())) or tuple(getattr(entry, "how_common", ()))


def names_of(garment: Entry) -> set[str]:
    """One-word names of a garment, one or many of it."""
    names = {words(name)[0] for name in (garment.title, *garment.also_called) if len(words(name)) == 1}
    return names | {f"{name}es" if name.endswith("ss") else f"{name.removesuffix('s')}s" for name in names}


def _place(knowledge: Knowledge, symptom: Symptom) -> str:
    """Where a symptom is, in words: view, zone, line."""
    zones = (z.title for g in symptom.garments if g in knowledge.garments for z in knowledge.garments[g].zones)
    titles = {z for z in zones if symptom.zone.replace("-", " ") in z.lower()}
    return " ".join([_VIEW_WORDS[symptom.view], symptom.zone.replace("-", " "), *titles, symptom.line, symptom.runs.replace("-", " ")])


def _answers(knowledge: Knowledge, entry: Entry) -> Iterator[str]:
    """The answers of a question about the garment; those that an entry turns on: velvet, punched, none."""
    if isinstance(entry, Feature):
        yield from (value.title for value in entry.values)
    for node, _ in trees(entry):
        if feature := knowledge.features.get(node.fact):
            yield from (f"{feature.title} {value.title}" for value in feature.values if value.id in node.is_)


def _texts(value: object) -> Iterable[str]:
    return (value,) if isinstance(value, str) else value if isinstance(value, tuple) else ()
