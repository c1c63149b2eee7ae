"""The map of an entry: what leads to it and what follows from it, in columns from what shows to what the work needs."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import networkx as nx

Key = tuple[str, str]
"""(kind, id)."""

COLUMNS = (("symptoms", "checks"), ("causes",), ("methods",), ("conditions", "features", "measurements"))
"""Kinds by column, the chain read from left to right; the second kind of a column stands below the first."""

LEFT_OUT_OF_MAPS = ("garments", "sources")
"""Kinds that would tie everything to everything."""

_COLUMN = {kind: column for column, kinds in enumerate(COLUMNS) for kind in kinds}
_PLACE = {kind: place for kinds in COLUMNS for place, kind in enumerate(kinds)}
_ALONG = {**_COLUMN, "features": len(COLUMNS)}
"How far along the chain: what is asked about a garment decides the conditions it stands below."
_BESIDE_THE_CHAIN = ("checks", "measurements")
_ROLES = {
    "shows", "answers", "measured-by", "treats", "needs-condition", "watches", "worked-out-from", "draws-on", "asks", "only-if",
    "mistaken-for", "told-apart",
}  # fmt: skip
_MOST, _MOST_BESIDE, _SWEEPS = 8, 3, 4

_Stop = tuple[Key, int | None, str]
"""An entry, which way the chain goes on from it, and the word of the link that led there."""


@dataclass(frozen=True)
class Node:
    """An entry on the map.

    Attributes:
        column, row: its place; rows count from the top of the column.
        steps: how many links away.
        word: the word for the chance of the link it was reached by, where it has one.
    """

    kind: str
    id: str
    title: str
    column: int
    row: int
    steps: int
    word: str = ""

    @property
    def key(self) -> Key:
        """Kind and id."""
        return self.kind, self.id


@dataclass(frozen=True)
class Edge:
    """A link between two entries of the map, as it is written."""

    start: Key
    end: Key
    role: str
    word: str = ""


@dataclass(frozen=True)
class EntryMap:
    """Entries by column and row, the links between them, and how many of each kind the map has no room for."""

    nodes: tuple[Node, ...]
    edges: tuple[Edge, ...]
    more: Mapping[str, int]


def map_of(graph: nx.MultiDiGraph[Key], here: Key, rank: Callable[[Key, str], float]) -> EntryMap:
    """The map of an entry, near ones first.

    Args:
        rank: how early an entry comes among those as near, by its key and the word for its chance; the lower first.
    """
    reached = sorted(_reached(graph, here), key=lambda node: (node.steps, rank(node.key, node.word), node.title))
    kept = _kept(reached)
    keys = {node.key for node in kept}
    edges = tuple(sorted(_edges(graph, keys), key=lambda edge: (edge.start, edge.end, edge.role)))
    more: dict[str, int] = defaultdict(int)
    for node in reached:
        more[node.kind] += node.key not in keys
    return EntryMap(_in_rows(kept, edges), edges, {kind: number for kind, number in more.items() if number})


def _reached(graph: nx.MultiDiGraph[Key], here: Key) -> Iterator[Node]:
    """The entry and its chain: to the right what follows, to the left what leads here, and what stands beside those."""
    seen, steps = {here}, 0
    frontier: list[_Stop] = [(here, 0, "")]
    while frontier:
        following: list[_Stop] = []
        for key, way, word in frontier:
            yield Node(*key, graph.nodes[key]["short"], _COLUMN[key[0]], 0, steps, word)
            for other, its_way, its_word in _onward(graph, key, way):
                if other not in seen:
                    seen.add(other)
                    following.append((other, its_way, its_word))
        frontier, steps = following, steps + 1


def _onward(graph: nx.MultiDiGraph[Key], key: Key, way: int | None) -> Iterator[_Stop]:
    """Where a chain goes on from an entry; `way` is 1 to the right, -1 to the left, 0 from the middle, None nowhere."""
    if way is None:
        return
    for other, word in _neighbours(graph, key):
        turn = (_ALONG[other[0]] > _ALONG[key[0]]) - (_ALONG[other[0]] < _ALONG[key[0]])
        if other[0] in _BESIDE_THE_CHAIN:
            yield other, None, word
        elif way == 0:
            yield other, turn or None, word
        elif turn == way:
            yield other, way, word


def _neighbours(graph: nx.MultiDiGraph[Key], key: Key) -> Iterator[tuple[Key, str]]:
    ends = [(end, data) for _, end, data in graph.out_edges(key, data=True)]
    starts = [(start, data) for start, _, data in graph.in_edges(key, data=True)]
    for other, data in (*ends, *starts):
        if data["role"] in _ROLES and other[0] in _COLUMN and (other[0] != "features" or key[0] == "features"):
            yield other, data["word"]


def _kept(reached: Sequence[Node]) -> list[Node]:
    """As many of each column as are read at one look."""
    kept: list[Node] = []
    for column in range(len(COLUMNS)):
        inside = [node for node in reached if node.column == column]
        beside = [node for node in inside if node.kind in _BESIDE_THE_CHAIN and node.steps][:_MOST_BESIDE]
        chain = [node for node in inside if node.kind not in _BESIDE_THE_CHAIN or not node.steps]
        kept += chain[: _MOST - len(beside)] + beside
    return kept


def _edges(graph: nx.MultiDiGraph[Key], keys: set[Key]) -> Iterator[Edge]:
    drawn: set[frozenset[Key]] = set()
    for start, end, data in graph.subgraph(keys).edges(data=True):
        pair = frozenset((start, end))
        if data["role"] in _ROLES and start != end and pair not in drawn:
            drawn.add(pair)
            yield Edge(start, end, data["role"], data["word"])


def _in_rows(nodes: Sequence[Node], edges: Sequence[Edge]) -> tuple[Node, ...]:
    """Rows in which few links cross: each entry near the mean height of those it is linked with."""
    linked: dict[Key, list[Key]] = defaultdict(list)
    for edge in edges:
        linked[edge.start].append(edge.end)
        linked[edge.end].append(edge.start)
    columns = [[node for node in nodes if node.column == column] for column in range(len(COLUMNS))]
    for sweep in range(_SWEEPS):
        heights = {node.key: (row + 0.5) / len(column) for column in columns for row, node in enumerate(column)}
        for at in range(len(columns)) if sweep % 2 == 0 else reversed(range(len(columns))):
            columns[at] = sorted(columns[at], key=lambda node: (_PLACE[node.kind], _mean(node, linked, heights)))
            heights.update({node.key: (row + 0.5) / len(columns[at]) for row, node in enumerate(columns[at])})
    return tuple(replace(node, row=row) for column in columns for row, node in enumerate(column))


def _mean(node: Node, linked: Mapping[Key, Sequence[Key]], heights: Mapping[Key, float]) -> float:
    others = [heights[key] for key in linked.get(node.key, ()) if _COLUMN[key[0]] != node.column]
    return sum(others) / len(others) if others else heights[node.key]
