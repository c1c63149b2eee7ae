"""Every link once as written, and the way back, under headings."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

import networkx as nx

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import Entry, Symptom
from fitdoctor.knowledge.graph.chain import LEFT_OUT_OF_MAPS, EntryMap, Key, map_of
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.references import references
from fitdoctor.knowledge.watching import watched

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

_GRAVITY = ("forbids", "limits", "adds-work", "needs-care")


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


class EntryGraph:
    """All entries and sources and what they say of each other."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._graph: nx.MultiDiGraph[Key] = nx.MultiDiGraph()
        self._graph.add_nodes_from((("sources", id_), {"title": s.title, "short": s.title}) for id_, s in knowledge.sources.items())
        self._graph.add_nodes_from(((kind, e.id), {"title": e.title, "short": e.short or e.title}) for kind, e in knowledge.entries())
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

    def around(self, kind: str, id_: str) -> EntryMap:
        """The map of an entry.

        Raises:
            FitdoctorError: there is no such entry, or its kind has no map.
        """
        here = self._known(kind, id_)
        if kind in LEFT_OUT_OF_MAPS:
            raise FitdoctorError(f"There is no map of {kind}.", "Too much is tied to each of them; its page lists it.")
        return map_of(self._graph, here, self._early)

    def _early(self, key: Key, word: str) -> float:
        """The likelier first, the method to be preferred, the graver condition."""
        kind, id_ = key
        if kind == "methods":
            return self._knowledge.methods[id_].rank
        if kind == "conditions":
            return _GRAVITY.index(self._knowledge.conditions[id_].effect)
        return -self._chances().get(word, 0.0)

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
        return -self._chances().get(link.word, 0.0), link.title, link.id

    def _chances(self) -> dict[str, float]:
        return self._knowledge.scale.get("strength", {}) | self._knowledge.scale.get("how-common", {})
