"""What each kind of entry says of itself, under headings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from fitdoctor.amounts.work_out import fill
from fitdoctor.knowledge.entries import Cause, Check, Condition, Effect, Entry, Feature, Garment, LiesIn, Measurement, Method, Symptom, When
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import tests
from fitdoctor.shop import Shop
from fitdoctor.when import in_words

EFFECT_WORDS: dict[Effect, str] = {
    "forbids": "Forbids the work.",
    "limits": "Limits the work.",
    "adds-work": "Adds work.",
    "needs-care": "Asks for care.",
}
_LIES_IN_WORDS: dict[LiesIn, str] = {
    "cut": "In the cut.",
    "size": "In the size.",
    "making": "In the making.",
    "cloth": "In the cloth.",
    "wearing": "In the way it is worn.",
    "none": "Nowhere: it is as it should be.",
}
_NEEDS_WORDS = {"wearer": "It needs the wearer.", "garment": "The garment in the hand is enough.", "inside": "It needs a look inside."}


@dataclass(frozen=True)
class Section:
    """Lines of text under a heading."""

    heading: str
    lines: tuple[str, ...]


Lines = Iterator[tuple[str, Iterable[str]]]


def sections(knowledge: Knowledge, shop: Shop, kind: str, entry: Entry) -> tuple[Section, ...]:
    """The text of an entry's page; sections that would be empty are left out."""
    says = _OF_KIND.get(kind)
    made = says(knowledge, shop, entry) if says else iter(())
    found = (Section(heading, tuple(line for line in lines if line)) for heading, lines in made)
    return tuple(section for section in found if section.lines)


def _symptom(knowledge: Knowledge, _: Shop, entry: Symptom) -> Lines:
    zones = {z.title for g in knowledge.garments.values() for z in g.zones if z.id == entry.zone and z.view == entry.view}
    yield "What it looks like", [entry.look]
    yield "Where", [f"On the {entry.view}, {(min(zones) if zones else entry.zone.replace('-', ' ')).lower()}."]
    yield "The line", [f"{entry.line.capitalize()}, {entry.runs.replace('-', ' ')}."]


def _cause(knowledge: Knowledge, _: Shop, entry: Cause) -> Lines:
    yield "Why", [entry.why]
    yield "Where it lies", [_LIES_IN_WORDS[entry.lies_in]]
    yield "How common", [f"{_title(knowledge, g)}: {word.replace('-', ' ')}" for g, word in entry.how_common.items()]
    yield "Ruled out where", [in_words(when, knowledge) for when in entry.impossible_if]
    yield "Why nothing is done", [entry.no_method]


def _check(_: Knowledge, __: Shop, entry: Check) -> Lines:
    yield "The question", [entry.ask]
    yield "How", entry.how
    yield "The answers", [entry.yes, entry.no]
    yield "What it takes", [f"About {entry.minutes:g} minutes.", _NEEDS_WORDS[entry.needs], entry.tools and f"Tools: {entry.tools}."]
    yield "At the rack", ["It can be done in the shop, without tools."] if entry.at_the_rack else []
    yield "Mind", [entry.care]


def _measurement(_: Knowledge, shop: Shop, entry: Measurement) -> Lines:
    yield "How", entry.how
    yield "Usual", [f"{shop.length(entry.usual_mm[0])} to {shop.length(entry.usual_mm[1])}"]
    yield "Possible", [f"{shop.length(entry.possible_mm[0])} to {shop.length(entry.possible_mm[1])}"]
    yield "Give or take", [shop.length(entry.tolerance_mm), entry.repeat]
    yield "What it takes", [f"About {entry.minutes:g} minutes.", _NEEDS_WORDS[entry.needs]]


def _method(knowledge: Knowledge, shop: Shop, entry: Method) -> Lines:
    yield "Why it is right", [entry.because]
    yield "When", [entry.preferred, f"Where {in_words(entry.only_if, knowledge)}." if entry.only_if else ""]
    yield "Skill", [entry.skill] if entry.kind == "alteration" else []
    steps = [
        f"{number}. {fill(op.do, (), entry, shop.length)} ({op.minutes[0]:g} to {op.minutes[2]:g} min)"
        for number, op in enumerate(entry.operations, 1)
    ]
    yield "Step by step", steps
    needs = [f"{knowledge.seam_title(need.seam)}: {shop.length(need.keep_mm)} must stay" for need in entry.cloth_needed]
    yield "Cloth it draws on", needs
    yield "Lining", [entry.lining]
    yield "Pressing", [entry.pressing]


def _condition(knowledge: Knowledge, _: Shop, entry: Condition) -> Lines:
    yield "What the work needs", [f"{entry.needs}."]
    yield "What it does", [EFFECT_WORDS[entry.effect], "It protects people." if entry.safety else ""]
    yield "When", [in_words(entry.when, knowledge) if entry.when else "Always."]
    yield "Why", [entry.because]
    yield "How to see it", [entry.ask, *_looks(knowledge, entry.when), entry.at_the_rack and f"At the rack: {entry.at_the_rack}"]
    yield "What to do instead", [entry.instead]
    yield "Added time", [f"{entry.minutes[0]:g} to {entry.minutes[2]:g} minutes."] if entry.minutes else []


def _looks(knowledge: Knowledge, when: When | None) -> Iterator[str]:
    """How the facts that decide are recognised."""
    for node, _ in tests(when, ()):
        if feature := knowledge.features.get(node.fact):
            yield from (f"{value.title}: {value.look}" for value in feature.values if value.id in node.is_ and value.look)


def _feature(_: Knowledge, __: Shop, entry: Feature) -> Lines:
    yield "The question", [entry.ask]
    yield "The answers", [f"{value.title}: {value.look}" if value.look else value.title for value in entry.values]
    yield "At the rack", [entry.at_the_rack]


def _garment(_: Knowledge, __: Shop, entry: Garment) -> Lines:
    yield "Places", [f"{zone.title} ({zone.view})" for zone in entry.zones]
    yield "Seams", [seam.title for seam in entry.seams]
    yield "Lining", [entry.lining]


def _title(knowledge: Knowledge, garment: str) -> str:
    return knowledge.garments[garment].title if garment in knowledge.garments else garment


_OF_KIND: dict[str, Callable[[Knowledge, Shop, Any], Lines]] = {
    "symptoms": _symptom,
    "causes": _cause,
    "checks": _check,
    "measurements": _measurement,
    "methods": _method,
    "conditions": _condition,
    "features": _feature,
    "garments": _garment,
}
