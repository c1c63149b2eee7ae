"""Every reference an entry makes to another: the one list that the checks, the graph and the look-up stand on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import (
    Cause,
    Check,
    Condition,
    Drawing,
    Entry,
    Feature,
    Figure,
    Garment,
    Measurement,
    Method,
    SolvedCase,
    Symptom,
    When,
)
from fitdoctor.units import parse_length

Step = str | int
Path_ = tuple[Step, ...]


@dataclass(frozen=True)
class Reference:
    """One mention of another entry.

    Attributes:
        path: where in the entry: ("shows_as", 0, "symptom").
        kind: kind of what is meant: symptoms, causes, …, sources.
        id: its id.
        role: what the mention says: shows, answers, measured-by, treats, cites, …
        word: the word for its chance, where it has one.
        garments: the garments it holds for; empty: all.
    """

    path: Path_
    kind: str
    id: str
    role: str
    word: str = ""
    garments: tuple[str, ...] = field(default=())


def references(entry: Entry) -> Iterator[Reference]:
    """All references of an entry, in the order of its fields."""
    yield from _each("sources", entry.sources, "sources", "cites")
    yield from _OF.get(type(entry), _none)(entry)


def tests(when: When | None, path: Path_) -> Iterator[tuple[When, Path_]]:
    """Every node of a tree with its place, the tree itself first."""
    if when is None:
        return
    yield when, path
    for name, branches in (("all", when.all), ("any", when.any)):
        for number, branch in enumerate(branches):
            yield from tests(branch, (*path, name, number))
    yield from tests(when.not_, (*path, "not"))


def trees(entry: Entry) -> Iterator[tuple[When, Path_]]:
    """Every node of every tree an entry has, with its place."""
    if isinstance(entry, Cause):
        for number, tree in enumerate(entry.impossible_if):
            yield from tests(tree, ("impossible_if", number))
    elif isinstance(entry, Method):
        yield from tests(entry.only_if, ("only_if",))
    elif isinstance(entry, Condition):
        yield from tests(entry.when, ("when",))


def is_measurement(value: str) -> bool:
    """Whether a calculator's input names a measurement; else it is a length or a plain number."""
    try:
        parse_length(value)
    except FitdoctorError:
        return True
    return False


def _each(name: str, ids: Iterable[str], kind: str, role: str, at: Path_ = ()) -> Iterator[Reference]:
    for number, id_ in enumerate(ids):
        yield Reference((*at, name, number), kind, id_, role)


def _none(_: Any) -> Iterator[Reference]:
    return iter(())


def _of_tree(entry: Entry, role: str, denied: str = "") -> Iterator[Reference]:
    """What the trees test; `denied` is the role of what must not be so. A feature decides either way."""
    for node, path in trees(entry):
        turned = path.count("not") % 2 == 1
        for name, kind in (("fact", "features"), ("check", "checks"), ("symptom", "symptoms"), ("garment", "garments")):
            if getattr(node, name):
                yield Reference((*path, name), kind, getattr(node, name), denied if denied and turned and name != "fact" else role)
        if node.measurement:
            yield Reference((*path, "measurement"), "measurements", node.measurement, role)


def _of_drawings(drawings: Iterable[Drawing]) -> Iterator[Reference]:
    for number, drawing in enumerate(drawings):
        yield from _each("garments", drawing.garments, "garments", "drawn-on", ("draw", number))


def _of_garment(entry: Garment) -> Iterator[Reference]:
    if entry.kind_of:
        yield Reference(("kind_of",), "garments", entry.kind_of, "kind-of")
    for view, figure in entry.figures.items():
        yield Reference(("figures", view), "figures", figure, "drawn-as")


def _of_figure(entry: Figure) -> Iterator[Reference]:
    yield from _each("wearer", entry.wearer, "figures", "drawn-with")


def _of_feature(entry: Feature) -> Iterator[Reference]:
    yield from _each("garments", entry.garments, "garments", "occurs-on")


def _of_symptom(entry: Symptom) -> Iterator[Reference]:
    yield from _each("garments", entry.garments, "garments", "occurs-on")
    for number, mistaken in enumerate(entry.mistaken_for):
        yield Reference(("mistaken_for", number, "symptom"), "symptoms", mistaken.symptom, "mistaken-for")
    yield from _of_drawings(entry.draw)


def _of_cause(entry: Cause) -> Iterator[Reference]:
    for garment, word in entry.how_common.items():
        yield Reference(("how_common", garment), "garments", garment, "occurs-on", word)
    for number, shows in enumerate(entry.shows_as):
        at: Path_ = ("shows_as", number)
        yield Reference((*at, "symptom"), "symptoms", shows.symptom, "shows", shows.strength, shows.garments)
        yield from _each("garments", shows.garments, "garments", "shows-on", at)
        yield from _each("sources", shows.sources, "sources", "cites", at)
    for number, answer in enumerate(entry.answers):
        at = ("answers", number)
        yield Reference((*at, "check"), "checks", answer.check, "answers", answer.yes)
        yield from _each("sources", answer.sources, "sources", "cites", at)
    yield from _each("measure", entry.measure, "measurements", "measured-by")
    for number, told in enumerate(entry.told_apart):
        yield Reference(("told_apart", number, "cause"), "causes", told.cause, "told-apart")
    yield from _of_tree(entry, "ruled-out-by")


def _of_check(entry: Check) -> Iterator[Reference]:
    yield from _each("garments", entry.garments, "garments", "occurs-on")
    yield from _of_drawings(entry.draw)


def _of_measurement(entry: Measurement) -> Iterator[Reference]:
    yield from _each("garments", entry.garments, "garments", "occurs-on")
    yield from _of_drawings(entry.draw)


def _of_method(entry: Method) -> Iterator[Reference]:
    yield from _each("treats", entry.treats, "causes", "treats")
    yield from _each("garments", entry.garments, "garments", "occurs-on")
    yield from _of_tree(entry, "only-if", "not-for")
    for name, spec in entry.amounts.items():
        for input_, value in spec.inputs.items():
            if is_measurement(value):
                yield Reference(("amounts", name, "inputs", input_), "measurements", value, "worked-out-from")
    for number, need in enumerate(entry.cloth_needed):
        at: Path_ = ("cloth_needed", number)
        yield Reference((*at, "measurement"), "measurements", need.measurement, "draws-on")
        yield from _each("sources", need.sources, "sources", "cites", at)
    for number, brought in enumerate(entry.may_bring_on):
        yield Reference(("may_bring_on", number, "cause"), "causes", brought.cause, "may-bring-on", brought.chance)
    yield from _each("conditions", entry.conditions, "conditions", "needs-condition")


def _of_condition(entry: Condition) -> Iterator[Reference]:
    yield from _each("methods", entry.applies_to.methods, "methods", "watches", ("applies_to",))
    yield from _each("garments", entry.garments, "garments", "occurs-on")
    yield from _of_tree(entry, "asks")


def _of_case(entry: SolvedCase) -> Iterator[Reference]:
    yield Reference(("garment",), "garments", entry.garment, "occurs-on")
    yield from _each("words_lead_to", entry.words_lead_to, "symptoms", "words-lead-to")
    for name, kind, role in (("facts", "features", "knows"), ("answers", "checks", "answered"), ("measured", "measurements", "measured")):
        for id_ in getattr(entry, name):
            yield Reference((name, id_), kind, id_, role)
    for name in ("seen", "not_seen"):
        yield from _each(name, getattr(entry, name), "symptoms", name)
    yield from _each("treat", entry.treat, "causes", "treat")
    for cause, method in entry.methods.items():
        yield Reference(("methods", cause), "causes", cause, "treat")
        yield Reference(("methods", cause), "methods", method, "chosen")
    for name, kind in (("causes", "causes"), ("also", "causes"), ("methods", "methods")):
        yield from _each(name, getattr(entry.expect, name), kind, "expects", ("expect",))
    for number, amount in enumerate(entry.expect.amounts):
        yield Reference(("expect", "amounts", number, "method"), "methods", amount.method, "expects")


_OF: dict[type[Entry], Any] = {
    Garment: _of_garment,
    Figure: _of_figure,
    Feature: _of_feature,
    Symptom: _of_symptom,
    Cause: _of_cause,
    Check: _of_check,
    Measurement: _of_measurement,
    Method: _of_method,
    Condition: _of_condition,
    SolvedCase: _of_case,
}
