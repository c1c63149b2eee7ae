"""The work in order: operations of all chosen methods as one directed graph; each seam opened once and closed once."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from math import sqrt
from typing import get_args

import networkx as nx

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import Method, Minutes, Operation, Stage
from fitdoctor.shop import Shop

STAGES: tuple[Stage, ...] = get_args(Stage)
STAGE_WORDS: dict[Stage, str] = {
    "shoulder": "Shoulders",
    "neck": "Neck and collar",
    "armhole": "Armholes",
    "sleeve": "Sleeves",
    "girth": "Girth",
    "waist": "Waist",
    "seat": "Seat",
    "leg": "Legs",
    "length": "Length",
    "closing": "Closing",
}


@dataclass(frozen=True)
class PlannedOperation:
    """One line of the plan.

    Attributes:
        id: method and operation, joined by a dot.
        text: what to do, with the amounts filled in.
        opens, closes: seam ids this line opens or closes for the whole job.
        minutes: low, likely, high.
        for_methods: the methods it serves; more than one where a seam is shared.
    """

    id: str
    text: str
    opens: tuple[str, ...]
    closes: tuple[str, ...]
    try_on: bool
    stage: Stage
    minutes: Minutes
    layer: str
    care: str
    for_methods: tuple[str, ...]


@dataclass(frozen=True)
class Plan:
    """The operations in order and the time they take together.

    Attributes:
        operations: in working order.
        minutes: at best, likely, at worst; the sum of PERT means, give or take two spreads, within the plain sums.
    """

    operations: tuple[PlannedOperation, ...] = ()
    minutes: Minutes = (0.0, 0.0, 0.0)

    def stages(self) -> tuple[tuple[Stage, tuple[PlannedOperation, ...]], ...]:
        """The operations by stage, in order."""
        runs: list[tuple[Stage, list[PlannedOperation]]] = []
        for operation in self.operations:
            if not runs or runs[-1][0] != operation.stage:
                runs.append((operation.stage, []))
            runs[-1][1].append(operation)
        return tuple((stage, tuple(run)) for stage, run in runs)


def make_plan(methods: Sequence[Method], fill: Callable[[Method, str], str], unlined: bool = False, shop: Shop | None = None) -> Plan:
    """Put the operations of all methods in one order.

    Args:
        methods: the chosen methods.
        fill: puts the worked-out amounts into an operation's text.
        unlined: leave out what only a lining needs.
        shop: whose minutes are counted; without it the printed ones.

    Raises:
        FitdoctorError: a method's operations go in a circle.
    """
    graph = _graph(methods, fill, unlined, shop or Shop())
    for seam in sorted({seam for _, data in graph.nodes(data=True) for seam in data["step"].opens}):
        _share(graph, seam, "opens", keep_first=True)
    for seam in sorted({seam for _, data in graph.nodes(data=True) for seam in data["step"].closes}):
        _share(graph, seam, "closes", keep_first=False)
    ordered = [graph.nodes[node]["step"] for node in _in_order(graph)]
    operations = tuple(_join_try_ons(ordered))
    return Plan(operations, total_minutes(operation.minutes for operation in operations))


def total_minutes(each: Iterable[Minutes]) -> Minutes:
    """Low, likely and high of a sum: PERT mean (l + 4m + h) / 6 and spread (h - l) / 6 (Malcolm et al., 1959)."""
    rows = list(each)
    mean = sum((low + 4 * likely + high) / 6 for low, likely, high in rows)
    spread = sqrt(sum(((high - low) / 6) ** 2 for low, _, high in rows))
    low, high = sum(row[0] for row in rows), sum(row[2] for row in rows)
    return max(low, mean - 2 * spread), mean, min(high, mean + 2 * spread)


def method_minutes(method: Method, shop: Shop, unlined: bool = False) -> Minutes:
    """The time one method takes this shop by itself: low, likely, high."""
    needed = (op for op in method.operations if not (unlined and op.needs_lining))
    return total_minutes(shop.own_minutes(op.minutes, op.stage or method.stage) for op in needed)


def _graph(methods: Sequence[Method], fill: Callable[[Method, str], str], unlined: bool, shop: Shop) -> nx.DiGraph[str]:
    graph: nx.DiGraph[str] = nx.DiGraph()
    for number, method in enumerate(sorted(methods, key=lambda m: STAGES.index(m.stage))):
        known = {op.id for op in method.operations}
        previous: str | None = None
        tried = 0
        for place, op in enumerate(method.operations):
            node = f"{method.id}.{op.id}"
            step = _planned(method, op, fill, shop)
            graph.add_node(node, step=step, key=(tried + op.try_on, number, place), dropped=unlined and op.needs_lining)
            earlier = [f"{method.id}.{before}" for before in op.after if before in known] or ([previous] if previous else [])
            graph.add_edges_from((before, node) for before in earlier)
            tried = 2 if op.try_on else tried
            previous = node
    if not nx.is_directed_acyclic_graph(graph):
        circle = " → ".join(edge[0] for edge in nx.find_cycle(graph))
        raise FitdoctorError(f"The operations go in a circle: {circle}.", "Mend ‘after’ in the method's entry.")
    for node in [node for node, data in graph.nodes(data=True) if data["dropped"]]:
        _take_out(graph, node)
    return graph


def _planned(method: Method, op: Operation, fill: Callable[[Method, str], str], shop: Shop) -> PlannedOperation:
    stage = op.stage or method.stage
    return PlannedOperation(
        f"{method.id}.{op.id}",
        fill(method, op.do),
        op.opens,
        op.closes,
        op.try_on,
        stage,
        shop.own_minutes(op.minutes, stage),
        op.layer,
        op.care,
        (method.id,),
    )


def _take_out(graph: nx.DiGraph[str], node: str) -> None:
    graph.add_edges_from((before, after) for before in list(graph.predecessors(node)) for after in list(graph.successors(node)))
    graph.remove_node(node)


def _share(graph: nx.DiGraph[str], seam: str, way: str, keep_first: bool) -> None:
    """Let one operation open (or close) the seam for all; the others lose it, and go where nothing else is left to them."""
    order = [node for node in _in_order(graph) if seam in getattr(graph.nodes[node]["step"], way)]
    if len({graph.nodes[node]["step"].for_methods for node in order}) < 2:
        return
    keeper = order[0] if keep_first else order[-1]
    for other in order:
        if other == keeper or not _may_share(graph, keeper, other, keep_first):
            continue
        _hand_over(graph, keeper, other, seam, way, keep_first)


def _may_share(graph: nx.DiGraph[str], keeper: str, other: str, keep_first: bool) -> bool:
    """Sharing must not put an operation before what it depends on."""
    trial = graph.copy()
    edges = (
        [(keeper, after) for after in trial.successors(other)] if keep_first else [(before, keeper) for before in trial.predecessors(other)]
    )
    trial.add_edges_from(edge for edge in edges if edge[0] != edge[1])
    return bool(nx.is_directed_acyclic_graph(trial))


def _hand_over(graph: nx.DiGraph[str], keeper: str, other: str, seam: str, way: str, keep_first: bool) -> None:
    kept: PlannedOperation = graph.nodes[keeper]["step"]
    given: PlannedOperation = graph.nodes[other]["step"]
    left = tuple(s for s in getattr(given, way) if s != seam)
    edges = (
        [(keeper, after) for after in graph.successors(other)] if keep_first else [(before, keeper) for before in graph.predecessors(other)]
    )
    graph.add_edges_from(edge for edge in edges if edge[0] != edge[1])
    methods = tuple(dict.fromkeys((*kept.for_methods, *given.for_methods)))
    emptied = not left and not (given.opens if way == "closes" else given.closes) and not given.try_on
    if not emptied:
        graph.nodes[other]["step"] = replace(
            given, opens=left if way == "opens" else given.opens, closes=left if way == "closes" else given.closes
        )
        graph.nodes[keeper]["step"] = replace(kept, for_methods=methods)
        return
    text = kept.text if given.text in kept.text else f"{kept.text} {given.text}"
    graph.nodes[keeper]["step"] = replace(kept, text=text, minutes=_longer(kept.minutes, given.minutes), for_methods=methods)
    _take_out(graph, other)
    graph.remove_edges_from(list(nx.selfloop_edges(graph)))


def _in_order(graph: nx.DiGraph[str]) -> list[str]:
    """Top of the garment first; within a stage all that comes before its try-on, the try-on, then the rest."""

    def key(node: str) -> tuple[int, int, int, int]:
        data = graph.nodes[node]
        phase, number, place = data["key"]
        return STAGES.index(data["step"].stage), phase, number, place

    return list(nx.lexicographical_topological_sort(graph, key))


def _join_try_ons(operations: Sequence[PlannedOperation]) -> list[PlannedOperation]:
    """Two try-ons with nothing done between them are one."""
    joined: list[PlannedOperation] = []
    for operation in operations:
        last = joined[-1] if joined else None
        if last and last.try_on and operation.try_on:
            text = last.text if operation.text in last.text else f"{last.text} {operation.text}"
            methods = tuple(dict.fromkeys((*last.for_methods, *operation.for_methods)))
            joined[-1] = replace(last, text=text, minutes=_longer(last.minutes, operation.minutes), for_methods=methods)
        else:
            joined.append(operation)
    return joined


def _longer(one: Minutes, other: Minutes) -> Minutes:
    return max(one[0], other[0]), max(one[1], other[1]), max(one[2], other[2])
