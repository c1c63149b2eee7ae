"""Narrowing what is looked up: by kind, garment, region of the garment, cloth. What an entry does not say itself, its links say."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property

from fitdoctor.knowledge.entries import Cause, Entry, Method, Symptom
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.passages import garments_of
from fitdoctor.knowledge.references import references, trees
from fitdoctor.knowledge.watching import watched

Key = tuple[str, str]
"""(kind, id)."""

Told = dict[Key, frozenset[str]]
"""What was found out so far."""

Own = Callable[[Key, Entry], frozenset[str] | None]
"""What an entry says itself; None where it says nothing."""

CLOTH = "cloth"
"""The fact that says what the cloth is."""

_SPEAKS_FOR: dict[str, tuple[str, ...]] = {
    "checks": ("answers",),
    "measurements": ("measured-by", "worked-out-from", "draws-on"),
    "features": ("asks", "only-if", "ruled-out-by"),
    "sources": ("cites",),
}
"""Kind -> roles of the links by which others say for which garment and region it is."""


@dataclass(frozen=True)
class Filter:
    """What may be found; an empty field lets everything pass.

    Attributes:
        kind: symptoms, causes, …, sources.
        garment: only what holds for it.
        region: only what has to do with it, an id of regions.yaml.
        cloth: only what speaks of it, a value of the fact cloth.
    """

    kind: str = ""
    garment: str = ""
    region: str = ""
    cloth: str = ""

    def __bool__(self) -> bool:
        return bool(self.kind or self.garment or self.region or self.cloth)


class Facets:
    """What each entry and source says to the fields of a filter; worked out when first asked."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._passing: dict[Filter, frozenset[Key]] = {}
        self._garments: Told = {}
        self._regions: Told = {}

    def passing(self, only: Filter) -> frozenset[Key]:
        """What passes a filter."""
        if only not in self._passing:
            self._passing[only] = frozenset(key for key in self._entries if self._passes(key, only))
        return self._passing[only]

    def cloths(self) -> frozenset[str]:
        """The cloths that something is said of."""
        return frozenset().union(*self._cloths.values())

    def _passes(self, key: Key, only: Filter) -> bool:
        return (
            only.kind in ("", key[0])
            and (not only.garment or self._holds_for(key, only.garment))
            and (not only.region or only.region in self._told(key, self._regions, self._region_of))
            and (not only.cloth or only.cloth in self._cloths[key])
        )

    def _holds_for(self, key: Key, garment: str) -> bool:
        garments = self._told(key, self._garments, lambda key, entry: frozenset(garments_of(key[0], entry)) or None)
        return not self._knowledge.kinds_of(garment).isdisjoint(garments)

    @cached_property
    def _entries(self) -> dict[Key, Entry | None]:
        sources: dict[Key, Entry | None] = {("sources", id_): None for id_ in self._knowledge.sources}
        return {(kind, entry.id): entry for kind, entry in self._knowledge.entries()} | sources

    # ---- what others say for an entry

    def _told(self, key: Key, told: Told, own: Own, passed: tuple[Key, ...] = ()) -> frozenset[str]:
        """What an entry says; where it says nothing, what those say that speak for it."""
        if key not in told:
            entry = self._entries.get(key)
            said = own(key, entry) if entry else None
            if said is None:
                others = (other for other in self._speakers(key) if other not in passed)
                said = frozenset().union(*(self._told(other, told, own, (*passed, key)) for other in others))
            told[key] = said
        return told[key]

    def _speakers(self, key: Key) -> list[Key]:
        return self._watched[key[1]] if key[0] == "conditions" else self._mentioned_by[key]

    @cached_property
    def _mentioned_by(self) -> dict[Key, list[Key]]:
        found: dict[Key, list[Key]] = defaultdict(list)
        for kind, entry in self._knowledge.entries():
            for to in references(entry):
                if to.role in _SPEAKS_FOR.get(to.kind, ()):
                    found[(to.kind, to.id)].append((kind, entry.id))
        return found

    @cached_property
    def _watched(self) -> dict[str, list[Key]]:
        """Condition -> the methods it holds for."""
        know = self._knowledge
        return {id_: [("methods", method.id) for method in watched(know, condition)] for id_, condition in know.conditions.items()}

    # ---- regions and cloths

    def _region_of(self, _: Key, entry: Entry) -> frozenset[str] | None:
        if isinstance(entry, Symptom):
            return frozenset(id_ for id_, region in self._knowledge.regions.items() if entry.zone in region.zones)
        if isinstance(entry, Cause):
            return self._where_surest(entry)
        if isinstance(entry, Method):
            causes = (self._knowledge.causes[id_] for id_ in entry.treats if id_ in self._knowledge.causes)
            return frozenset().union(*map(self._where_surest, causes))
        return None

    def _where_surest(self, cause: Cause) -> frozenset[str]:
        """A cause belongs where it shows surest; what it seldom does elsewhere would tie everything to everything."""
        know = self._knowledge
        shown = [(know.strength(s.strength), know.symptoms[s.symptom]) for s in cause.shows_as if s.symptom in know.symptoms]
        most = max((strength for strength, _ in shown), default=0.0)
        signs: Iterable[Symptom] = (symptom for strength, symptom in shown if strength == most)
        return frozenset(id_ for sign in signs for id_, region in know.regions.items() if sign.zone in region.zones)

    @cached_property
    def _cloths(self) -> dict[Key, frozenset[str]]:
        """The cloths an entry speaks of; a method also those that its conditions speak of."""
        named = {key: _cloths_named(entry) for key, entry in self._entries.items()}
        for condition, methods in self._watched.items():
            if not self._knowledge.conditions[condition].applies_to.all:
                for method in methods:
                    named[method] |= named[("conditions", condition)]
        return named


def _cloths_named(entry: Entry | None) -> frozenset[str]:
    return frozenset(value for node, _ in (trees(entry) if entry else ()) if node.fact == CLOTH for value in node.is_)
