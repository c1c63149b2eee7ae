"""What a set is about: garment, place, level and kinds, as a teacher chooses or types them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from fitdoctor.errors import FitdoctorError
from fitdoctor.figure.choose import views_of
from fitdoctor.knowledge.entries import Cause, Symptom
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.practice.exercise import KINDS, LEVELS, Kind, Level

OF_LEVEL: dict[Level, tuple[Kind, ...]] = {
    "easy": ("lines", "cause", "amount", "verdict"),
    "moderate": ("lines", "cause", "check", "amount", "verdict", "order", "garment"),
    "hard": ("cause", "check", "amount", "verdict", "order", "garment"),
}
KIND_OF_WORD: dict[str, Kind] = {**{kind: kind for kind in KINDS}, **{f"{kind}s": kind for kind in KINDS}, "whole": "garment"}


@dataclass(frozen=True)
class Scope:
    """What to practise.

    Attributes:
        garment: empty for any; region: words of a view or a zone, all of which must fit; empty for anywhere.
        kinds: empty for those of the level.
    """

    garment: str = ""
    region: tuple[str, ...] = ()
    level: Level = "moderate"
    kinds: tuple[Kind, ...] = ()

    @property
    def asked_kinds(self) -> tuple[Kind, ...]:
        return self.kinds or OF_LEVEL[self.level]

    @property
    def words(self) -> str:
        """The scope as it is typed."""
        return " ".join(part for part in (self.garment, *self.region, self.level, *self.kinds) if part)

    def covers(self, symptom: Symptom) -> bool:
        """Whether the symptom lies in the region."""
        here = {symptom.view, *symptom.zone.split("-")}
        return all(word in here for word in self.region)

    def symptoms(self, knowledge: Knowledge, garment: str) -> dict[str, Symptom]:
        """The symptoms of a garment in the region that can be drawn, by id."""
        views = views_of(knowledge, garment)
        known = knowledge.symptoms_of(garment).items()
        return {id_: symptom for id_, symptom in known if self.covers(symptom) and symptom.draw and symptom.view in views}

    def causes(self, knowledge: Knowledge, garment: str) -> dict[str, Cause]:
        """The causes of a garment that show in the region, by id."""
        here = self.symptoms(knowledge, garment)
        return {
            id_: cause
            for id_, cause in knowledge.causes_of(garment).items()
            if any(s.symptom in here and knowledge.suits(s.garments, garment) for s in cause.shows_as)
        }

    def garments(self, knowledge: Knowledge) -> tuple[str, ...]:
        """The garments to choose from, in order."""
        if self.garment:
            return (self.garment,)
        return tuple(id_ for id_ in sorted(knowledge.garments) if len(self.symptoms(knowledge, id_)) > 1)


def read_scope(knowledge: Knowledge, words: str) -> Scope:
    """A scope as it is typed: ``trousers back``, ``jacket upper sleeve hard``, ``skirt cause``.

    Raises:
        FitdoctorError: a word is neither garment, view, place, level nor kind of exercise, or nothing is seen there.
    """
    scope = Scope()
    for word in words.lower().replace("’", "").replace("'", "").split():
        scope = _with(knowledge, scope, word)
    if not any(scope.symptoms(knowledge, garment) for garment in scope.garments(knowledge)):
        raise FitdoctorError(f"Nothing is described for ‘{words}’.", "Choose another place.")
    return scope


def regions(knowledge: Knowledge, garment: str) -> tuple[str, ...]:
    """The views and the words of zones in which something can be seen on a garment."""
    return tuple(dict.fromkeys(_words_of_regions(knowledge, garment)))


def _words_of_regions(knowledge: Knowledge, garment: str) -> Iterator[str]:
    symptoms = Scope(garment).symptoms(knowledge, garment).values() if garment else knowledge.symptoms.values()
    yield from sorted({symptom.view for symptom in symptoms})
    yield from sorted({word for symptom in symptoms for word in symptom.zone.split("-")})


def _with(knowledge: Knowledge, scope: Scope, word: str) -> Scope:
    level = next((level for level in LEVELS if level == word), None)
    if level:
        return replace(scope, level=level)
    if word in knowledge.garments:
        return replace(scope, garment=word)
    if word in KIND_OF_WORD:
        return replace(scope, kinds=(*scope.kinds, KIND_OF_WORD[word]))
    if word in regions(knowledge, ""):
        return replace(scope, region=(*scope.region, word))
    known = [*knowledge.garments, *LEVELS, *KIND_OF_WORD, *regions(knowledge, "")]
    raise FitdoctorError(
        f"‘{word}’ is no garment, view, place, level or kind of exercise{did_you_mean(word, known)}.",
        f"Garments: {', '.join(sorted(knowledge.garments))}. Kinds: {', '.join(KINDS)}.",
    )
