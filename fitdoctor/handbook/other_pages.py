"""The pages of what is no entry of the handbook itself: a source, and a solved case that entries are used in."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator

from fitdoctor.handbook.sections import Section
from fitdoctor.knowledge.entries import SolvedCase, Source
from fitdoctor.knowledge.graph import Link, LinkGroup
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import references
from fitdoctor.verdict import LEVEL_WORDS

_CITED_BY = {
    "symptoms": "Cited for what shows",
    "causes": "Cited for causes",
    "methods": "Cited for ways to alter",
    "conditions": "Cited for what the work needs",
    "checks": "Cited for checks",
    "measurements": "Cited for measurements",
    "features": "Cited for what to know of a garment",
    "garments": "Cited for garments",
}
_IN_A_CASE = {
    ("seen", "symptoms"): "What showed",
    ("not_seen", "symptoms"): "Looked for and not there",
    ("answered", "checks"): "Checks that were done",
    ("measured", "measurements"): "What was measured",
    ("expects", "causes"): "What was the matter",
    ("expects", "methods"): "What was done",
    ("occurs-on", "garments"): "The garment",
}


def source_sections(source: Source) -> tuple[Section, ...]:
    """Who, when, what it is, what of it was read, where it is found."""
    said = (
        ("Who says so", source.by),
        ("Year", source.year),
        ("What it is", source.kind.replace("-", " ").capitalize()),
        ("What of it was read", source.note),
        ("Address", source.address),
    )
    return tuple(Section(heading, (text,)) for heading, text in said if text)


def cited_by(links: Iterable[Link]) -> tuple[LinkGroup, ...]:
    """Where a source is used, kind by kind."""
    groups: dict[str, list[Link]] = defaultdict(list)
    for link in links:
        groups[link.kind].append(link)
    return tuple(LinkGroup(heading, tuple(groups[kind])) for kind, heading in _CITED_BY.items() if kind in groups)


def case_sections(knowledge: Knowledge, case: SolvedCase) -> tuple[Section, ...]:
    """What was said, what is known of the garment, what was answered and measured, what it came to."""
    verdicts = ", or: ".join(words for level, words in LEVEL_WORDS.items() if level in case.expect.verdict)
    found = (
        ("What was said", (case.words,)),
        ("What is known of it", tuple(_facts(knowledge, case))),
        ("What was answered", tuple(_answers(knowledge, case))),
        ("What was measured", tuple(f"{_title(knowledge, 'measurements', id_)}: {length}" for id_, length in case.measured.items())),
        ("What it came to", (verdicts,)),
        ("Mind", (case.note,)),
    )
    return tuple(Section(heading, kept) for heading, lines in found if (kept := tuple(line for line in lines if line)))


def case_links(knowledge: Knowledge, case: SolvedCase) -> tuple[LinkGroup, ...]:
    """The entries a case speaks of."""
    groups: dict[str, dict[str, Link]] = defaultdict(dict)
    for to in references(case):
        heading = _IN_A_CASE.get((to.role, to.kind))
        if heading and to.id in knowledge.kind(to.kind):
            groups[heading][to.id] = Link(to.kind, to.id, _title(knowledge, to.kind, to.id))
    return tuple(LinkGroup(heading, tuple(groups[heading].values())) for heading in _IN_A_CASE.values() if heading in groups)


def _facts(knowledge: Knowledge, case: SolvedCase) -> Iterator[str]:
    for id_, value in case.facts.items():
        feature = knowledge.features.get(id_)
        titles = {v.id: v.title for v in feature.values} if feature else {}
        yield f"{feature.title if feature else id_}: {titles.get(value, value).lower()}"


def _answers(knowledge: Knowledge, case: SolvedCase) -> Iterator[str]:
    for id_, answer in case.answers.items():
        check = knowledge.checks.get(id_)
        said = {"yes": check.yes, "no": check.no}.get(answer, "Not known") if check else answer
        yield f"{check.ask if check else id_} {said}."


def _title(knowledge: Knowledge, kind: str, id_: str) -> str:
    entry = knowledge.kind(kind).get(id_)
    return entry.title if entry else id_.replace("-", " ")
