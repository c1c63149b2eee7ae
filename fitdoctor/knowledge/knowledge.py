"""All that was read, and the small questions the chain asks of it."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import (
    Cause,
    Check,
    Condition,
    Entry,
    Feature,
    Figure,
    Garment,
    Measurement,
    Method,
    Region,
    SolvedCase,
    Source,
    Symptom,
)

COMMON_PRACTICE = "common-practice"


@dataclass(frozen=True)
class Problem:
    """One thing wrong with the knowledge: where, what, and what was perhaps meant."""

    file: Path
    line: int
    text: str
    rule: str = ""

    def __str__(self) -> str:
        return f"{self.file}:{self.line}: {self.text}"


@dataclass(frozen=True)
class Place:
    """Where an entry was read."""

    file: Path
    line: int = 1


@dataclass(frozen=True)
class Knowledge:
    """Every sound entry by id, the words for chances, and the problems met while reading."""

    garments: dict[str, Garment] = field(default_factory=dict)
    figures: dict[str, Figure] = field(default_factory=dict)
    features: dict[str, Feature] = field(default_factory=dict)
    symptoms: dict[str, Symptom] = field(default_factory=dict)
    causes: dict[str, Cause] = field(default_factory=dict)
    checks: dict[str, Check] = field(default_factory=dict)
    measurements: dict[str, Measurement] = field(default_factory=dict)
    methods: dict[str, Method] = field(default_factory=dict)
    conditions: dict[str, Condition] = field(default_factory=dict)
    cases: dict[str, SolvedCase] = field(default_factory=dict)
    sources: dict[str, Source] = field(default_factory=dict)
    scale: dict[str, dict[str, float]] = field(default_factory=dict)
    words: dict[str, tuple[str, ...]] = field(default_factory=dict)
    "Lay word or phrase -> words of the trade, for the search."
    regions: dict[str, Region] = field(default_factory=dict)
    places: dict[tuple[str, str], Place] = field(default_factory=dict)
    "(kind, id) -> file and line."
    problems: tuple[Problem, ...] = ()

    def kind(self, kind: str) -> dict[str, Entry]:
        """The entries of one kind (`symptoms`, `causes`, …) by id."""
        return dict(getattr(self, kind))

    def entries(self) -> Iterator[tuple[str, Entry]]:
        """All entries as (kind, entry), solved cases left out."""
        for kind in ("garments", "features", "symptoms", "causes", "checks", "measurements", "methods", "conditions"):
            for entry in getattr(self, kind).values():
                yield kind, entry

    @cached_property
    def renamed(self) -> dict[tuple[str, str], str]:
        """(kind, id of before) -> id of now, for cases kept from before a rename."""
        return {(kind, old): entry.id for kind, entry in self.entries() for old in entry.formerly}

    def garment(self, id_: str) -> Garment:
        """The garment, or a known error that names the kinds there are."""
        if id_ not in self.garments:
            known = ", ".join(sorted(self.garments))
            raise FitdoctorError(f"‘{id_}’ is not a kind of garment.", f"Known: {known}.")
        return self.garments[id_]

    @cached_property
    def _lineage(self) -> dict[str, frozenset[str]]:
        def ancestors(id_: str) -> list[str]:
            chain = [id_]
            while (wider := self.garments[chain[-1]].kind_of) in self.garments and wider not in chain:
                chain.append(wider)
            return chain

        own = {id_: frozenset(ancestors(id_)) for id_ in self.garments}
        below = {id_: frozenset(other for other in own if id_ in own[other]) for id_ in own}
        return {id_: own[id_] | (below[id_] if self.garments[id_].umbrella else frozenset()) for id_ in own}

    def kinds_of(self, garment: str) -> frozenset[str]:
        """The garment and the wider kinds whose entries hold for it; under an umbrella also the narrower ones."""
        return self._lineage.get(garment, frozenset((garment,)))

    def suits(self, garments: Collection[str], garment: str) -> bool:
        """Whether an entry for these garments holds for this one; no garments named means all."""
        return not garments or not self.kinds_of(garment).isdisjoint(garments)

    def strength(self, word: str) -> float:
        """The chance behind a word for strength."""
        return self.scale["strength"][word]

    def leak(self, word: str) -> float:
        """The chance that a sign shows without any cause known here."""
        return self.scale["leak"].get(word) or self.scale["strength"][word]

    def prior(self, cause: Cause, garment: str) -> float:
        """How common the cause is on this garment; 0 where it does not occur. The exact kind wins over the wider one."""
        named = [kind for kind in cause.how_common if kind in self.kinds_of(garment)]
        if garment in cause.how_common:
            named = [garment]
        return max((self.scale["how-common"][cause.how_common[kind]] for kind in named), default=0.0)

    def causes_of(self, garment: str) -> dict[str, Cause]:
        """The causes that occur on this garment, by id."""
        return {id_: cause for id_, cause in self.causes.items() if self.prior(cause, garment) > 0}

    def symptoms_of(self, garment: str) -> dict[str, Symptom]:
        """The symptoms that can show on this garment, by id."""
        return {id_: entry for id_, entry in self.symptoms.items() if self.suits(entry.garments, garment)}

    def methods_for(self, cause: str, garment: str) -> tuple[Method, ...]:
        """The methods that treat the cause on this garment, by rank."""
        fitting = (m for m in self.methods.values() if cause in m.treats and self.suits(m.garments, garment))
        return tuple(sorted(fitting, key=lambda m: (m.rank, m.id)))

    def seam_title(self, seam: str) -> str:
        """What a seam is called; its id where no garment names it."""
        titles = (s.title for g in self.garments.values() for s in g.seams if s.id == seam)
        return next(titles, seam.replace("-", " "))

    def source_line(self, id_: str) -> str:
        """A source as one line of print."""
        if id_ == COMMON_PRACTICE or id_ not in self.sources:
            return "common practice, no source"
        source = self.sources[id_]
        return ", ".join(part for part in (source.by, source.title, source.year) if part)
