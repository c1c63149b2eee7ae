"""The knowledge as a graph: every link once as written, and the way back, for the look-up and the map.

Whoever needs it imports it when it is needed: networkx costs a tenth of a second at the start.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterator
from dataclasses import dataclass

import networkx as nx

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import Entry, Symptom
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.references import references
from fitdoctor.knowledge.watching import watched

Key = tuple[str, str]
"""(kind, id)."""

HEADINGS: dict[str, tuple[str, str]] = {
    "shows": ("Shows as", "Shown by"),
    "mistaken-for": ("Mistaken for", "Mistaken for"),
    "answers": ("Told by", "Tells"),
    "ruled-out-by": ("Ruled out by", "Rules out"),
    "told-apart": ("Hard to tell from", "Hard to tell from"),
    "measured-by": ("Measured by", "Measures"),
    "treats": ("Treats", "Treated by"),
    "may-bring-on": ("May bring on", "May follow"),
    "needs-condition": ("Depends on", "Holds for"),
    "watches": ("Holds for", "Depends on"),
    "only-if": ("Suits where", "Decides"),
    "not-for": ("Not where", "Rules out"),
    "asks": ("Turns on", "Decides"),
    "worked-out-from": ("Worked out from", "Needed by"),
    "draws-on": ("Draws cloth from", "Limits"),
    "kind-of": ("A kind of", "Kinds of it"),
    "occurs-on": ("Occurs on", "Occurs here"),
    "cites": ("Sources", "Cited by"),
}
"""Role of a link -> its heading read forward and read backward, in the order of the page."""

MAP_KINDS = ("symptoms", "causes", "checks", "measurements", "methods", "conditions")
"""Kinds a map runs through; garments and sources would tie everything to everything."""


@dataclass(frozen=True)
class Link:
    """One link seen from one end.

    Attributes:
        kind, id, title: the other end.
        word: the word for its chance, where it has one.
        note: how to tell the two apart, where the link says so.
    """

    kind: str
    id: str
    title: str
    word: str = ""
    note: str = ""


@dataclass(frozen=True)
class LinkGroup:
    """Links under one heading; chances from high to low, then by title."""

    heading: str
    links: tuple[Link, ...]


@dataclass(frozen=True)
class Near:
    """An entry near another, and how many links away."""

    kind: str
    id: str
    title: str
    steps: int


@dataclass(frozen=True)
class Edge:
    """A link between two entries of a neighbourhood, as it is written."""

    start: Key
    end: Key
    role: str
    word: str = ""


@dataclass(frozen=True)
class Neighbourhood:
    """Entries near one, nearest first, and the links between them."""

    entries: tuple[Near, ...]
    edges: tuple[Edge, ...]


class EntryGraph:
    """All entries and sources and what they say of each other."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._graph: nx.MultiDiGraph[Key] = nx.MultiDiGraph()
        self._graph.add_nodes_from((("sources", id_), {"title": s.title}) for id_, s in knowledge.sources.items())
        self._graph.add_nodes_from(((kind, e.id), {"title": e.title}) for kind, e in knowledge.entries())
        for kind, entry in knowledge.entries():
            self._graph.add_edges_from(self._edges_of(kind, entry))

    def links_of(self, kind: str, id_: str) -> tuple[LinkGroup, ...]:
        """What an entry says of others and what others say of it, under headings.

        Raises:
            FitdoctorError: there is no such entry.
        """
        here = self._known(kind, id_)
        groups: dict[tuple[int, str], set[Link]] = defaultdict(set)
        order = {role: place for place, role in enumerate(HEADINGS)}
        for _, end, data in self._graph.out_edges(here, data=True):
            groups[(order[data["role"]], HEADINGS[data["role"]][0])].add(self._link(end, data))
        for start, _, data in self._graph.in_edges(here, data=True):
            groups[(order[data["role"]], HEADINGS[data["role"]][1])].add(self._link(start, data))
        return self._in_order(groups)

    def around(self, kind: str, id_: str, steps: int = 1, through: Collection[str] = MAP_KINDS) -> Neighbourhood:
        """What lies within so many links of an entry, either way round.

        Args:
            through: kinds of entry that count; the entry itself always does.

        Raises:
            FitdoctorError: there is no such entry.
        """
        here = self._known(kind, id_)
        within = self._graph.subgraph(key for key in self._graph if key[0] in through or key == here)
        away = nx.single_source_shortest_path_length(within.to_undirected(as_view=True), here, cutoff=steps)
        near = (Near(key[0], key[1], self._graph.nodes[key]["title"], distance) for key, distance in away.items())
        between = within.subgraph(away).edges(data=True)
        return Neighbourhood(
            tuple(sorted(near, key=lambda entry: (entry.steps, entry.kind, entry.title))),
            tuple(sorted({Edge(start, end, d["role"], d["word"]) for start, end, d in between}, key=lambda e: (e.start, e.end, e.role))),
        )

    def _known(self, kind: str, id_: str) -> Key:
        if (kind, id_) not in self._graph:
            raise FitdoctorError(f"There is no entry ‘{id_}’ among the {kind}.", "Look for it by words.")
        return kind, id_

    def _edges_of(self, kind: str, entry: Entry) -> Iterator[tuple[Key, Key, dict[str, str]]]:
        notes = {m.symptom: m.tell_apart for m in entry.mistaken_for} if isinstance(entry, Symptom) else {}
        for to in references(entry):
            if to.role in HEADINGS and (to.kind, to.id) in self._graph and to.id != COMMON_PRACTICE:
                yield (kind, entry.id), (to.kind, to.id), {"role": to.role, "word": to.word, "note": notes.get(to.id, "")}
        if kind == "conditions" and not self._knowledge.conditions[entry.id].applies_to.all:
            for method in watched(self._knowledge, self._knowledge.conditions[entry.id]):
                yield (kind, entry.id), ("methods", method.id), {"role": "watches", "word": "", "note": ""}

    def _link(self, key: Key, data: dict[str, str]) -> Link:
        return Link(key[0], key[1], self._graph.nodes[key]["title"], data["word"], data["note"])

    def _in_order(self, groups: dict[tuple[int, str], set[Link]]) -> tuple[LinkGroup, ...]:
        merged: dict[str, set[Link]] = {}
        for (_, heading), links in sorted(groups.items(), key=lambda group: group[0]):
            merged.setdefault(heading, set()).update(links)
        return tuple(LinkGroup(heading, tuple(sorted(links, key=self._rank))) for heading, links in merged.items())

    def _rank(self, link: Link) -> tuple[float, str, str]:
        chances = self._knowledge.scale.get("strength", {}) | self._knowledge.scale.get("how-common", {})
        return -chances.get(link.word, 0.0), link.title, link.id
