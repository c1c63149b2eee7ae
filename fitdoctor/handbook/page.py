"""One entry as a page: text, links both ways, sources, disagreements side by side, the cases it is used in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import Any

from fitdoctor.errors import FitdoctorError
from fitdoctor.handbook.opposed import SideBySide, side_by_side
from fitdoctor.handbook.other_pages import case_links, case_sections, cited_by, source_sections
from fitdoctor.handbook.sections import Section, sections
from fitdoctor.knowledge.entries import Entry
from fitdoctor.knowledge.graph import EntryGraph, LinkGroup
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.references import references
from fitdoctor.shop import Shop


@dataclass(frozen=True)
class PageSource:
    """A source the entry cites: who and what, where it stands, what of it was read."""

    id: str
    line: str
    address: str
    note: str


@dataclass(frozen=True)
class UsedIn:
    """A solved case that speaks of the entry."""

    case: str
    title: str


@dataclass(frozen=True)
class Page:
    """A page of the handbook.

    Attributes:
        links: what it says of others and what others say of it, under headings.
        used_in: solved cases that speak of it.
        opposed: what entries and sources say differently of the same thing.
    """

    kind: str
    id: str
    title: str
    also_called: tuple[str, ...]
    sections: tuple[Section, ...]
    links: tuple[LinkGroup, ...]
    sources: tuple[PageSource, ...]
    used_in: tuple[UsedIn, ...]
    opposed: tuple[SideBySide, ...]


def entry_page(knowledge: Knowledge, kind: str, id_: str, graph: EntryGraph | None = None, shop: Shop | None = None) -> Page:
    """The page of one entry.

    Args:
        graph: kept by whoever shows more than one page.

    Raises:
        FitdoctorError: there is no such entry.
    """
    if kind == "cases":
        return _case_page(knowledge, id_)
    graph = graph or EntryGraph(knowledge)
    links = tuple(group for group in graph.links_of(kind, id_) if group.heading != "Sources")
    if kind == "sources":
        return _source_page(knowledge, id_, links)
    entry = knowledge.kind(kind)[id_]
    return Page(
        kind=kind,
        id=id_,
        title=entry.title,
        also_called=entry.also_called,
        sections=sections(knowledge, shop or Shop(), kind, entry),
        links=links,
        sources=tuple(_sources(knowledge, entry)),
        used_in=tuple(_used_in(knowledge, kind, id_)),
        opposed=tuple(side_by_side(knowledge, shop or Shop(), entry)),
    )


def find_entry(knowledge: Knowledge, named: str) -> tuple[str, str]:
    """Kind and id of an entry named by its id, an id it had before a rename, or `kind/id`; a solved case where no entry has that id.

    Raises:
        FitdoctorError: nothing has that name, or several have.
    """
    kind, _, id_ = named.rpartition("/")
    everything = [*((k, e.id) for k, e in knowledge.entries()), *(("sources", s) for s in knowledge.sources)]
    found = [key for key in everything if key[1] == id_ and kind in ("", key[0])]
    found = found or [(k, now) for (k, before), now in knowledge.renamed.items() if before == id_ and kind in ("", k)]
    found = found or [("cases", id_)] * (id_ in knowledge.cases and kind in ("", "cases"))
    if len(found) == 1:
        return found[0]
    if found:
        raise FitdoctorError(f"‘{id_}’ is the name of more than one entry.", f"Say which: {', '.join(f'{k}/{i}' for k, i in found)}.")
    raise FitdoctorError(f"There is no entry ‘{named}’{did_you_mean(id_, (i for _, i in everything))}.", "Look for it by words: search.")


def page_json(page: Page) -> dict[str, Any]:
    """A page as plain values for JSON."""
    return {"format": 1, **asdict(page)}


def _sources(knowledge: Knowledge, entry: Entry) -> Iterator[PageSource]:
    for id_ in dict.fromkeys(to.id for to in references(entry) if to.kind == "sources"):
        source = knowledge.sources.get(id_)
        if source is not None and id_ != COMMON_PRACTICE:
            yield PageSource(id_, knowledge.source_line(id_), source.address, source.note)
        else:
            yield PageSource(id_, knowledge.source_line(id_), "", "")


def _used_in(knowledge: Knowledge, kind: str, id_: str) -> Iterator[UsedIn]:
    for case in knowledge.cases.values():
        if any((to.kind, to.id) == (kind, id_) for to in references(case)):
            yield UsedIn(case.id, case.title)


def _source_page(knowledge: Knowledge, id_: str, links: tuple[LinkGroup, ...]) -> Page:
    source = knowledge.sources[id_]
    cited = cited_by(link for group in links for link in group.links)
    used_in = tuple(_used_in(knowledge, "sources", id_))
    return Page("sources", id_, source.title, (), source_sections(source), cited, (), used_in, ())


def _case_page(knowledge: Knowledge, id_: str) -> Page:
    case = knowledge.cases.get(id_)
    if case is None:
        raise FitdoctorError(f"There is no solved case ‘{id_}’{did_you_mean(id_, knowledge.cases)}.")
    sources = tuple(_sources(knowledge, case))
    return Page("cases", id_, case.title, case.also_called, case_sections(knowledge, case), case_links(knowledge, case), sources, (), ())
