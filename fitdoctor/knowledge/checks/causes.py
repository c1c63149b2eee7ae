"""Symptoms and causes that lead nowhere: nothing brings them on, nothing shows them, nothing confirms or mends them."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import Cause
from fitdoctor.knowledge.knowledge import Knowledge


@rule("symptom-without-cause")
def symptom_without_cause(look: Look) -> Iterator[Finding]:
    """A symptom that no cause shows, on one of its garments or at all."""
    for symptom in look.knowledge.symptoms.values():
        causes = [c for c in look.knowledge.causes.values() if any(s.symptom == symptom.id for s in c.shows_as)]
        if not causes:
            yield Finding("symptoms", symptom.id, "no cause shows this")
            continue
        for number, garment in enumerate(symptom.garments):
            if garment in look.knowledge.garments and not any(symptom.id in shown_on(look.knowledge, c, garment) for c in causes):
                yield Finding("symptoms", symptom.id, f"no cause shows this on {garment}", ("garments", number))


@rule("cause-without-symptom")
def cause_without_symptom(look: Look) -> Iterator[Finding]:
    """A cause that shows as nothing, on one of its garments or at all."""
    for cause in look.knowledge.causes.values():
        if not cause.shows_as:
            yield Finding("causes", cause.id, "nothing is seen of this: shows_as is empty")
            continue
        for garment in cause.how_common:
            if garment in look.knowledge.garments and not _may_show(look, cause, garment):
                yield Finding("causes", cause.id, f"nothing is seen of this on {garment}", ("how_common", garment))


@rule("cause-without-method")
def cause_without_method(look: Look) -> Iterator[Finding]:
    """A cause that no method treats on a garment it occurs on, without a written reason."""
    for cause in look.knowledge.causes.values():
        if cause.no_method:
            continue
        lacking = [g for g in cause.how_common if g in look.knowledge.garments and not look.knowledge.methods_for(cause.id, g)]
        if lacking and len(lacking) == len(cause.how_common):
            yield Finding("causes", cause.id, "no method treats this; write one, or say in no_method why there is none")
        elif lacking:
            text = f"no method treats this on {', '.join(lacking)}; name the garment in a method, or say in no_method why there is none"
            yield Finding("causes", cause.id, text, ("how_common", lacking[0]))


@rule("cause-unconfirmed")
def cause_unconfirmed(look: Look) -> Iterator[Finding]:
    """A cause that no check and no measurement confirms."""
    often = look.knowledge.scale.get("strength", {}).get("often", 0.5)
    for cause in look.knowledge.causes.values():
        if not cause.measure and not any(chance(look.knowledge, answer.yes) >= often for answer in cause.answers):
            yield Finding("causes", cause.id, "no check answers yes to this (often or more) and no measurement settles it")


def shown_on(knowledge: Knowledge, cause: Cause, garment: str) -> dict[str, float]:
    """Symptom -> strength, of all that shows the cause on this garment; empty where the cause does not occur there."""
    if not _occurs(knowledge, cause, garment):
        return {}
    return {
        shows.symptom: chance(knowledge, shows.strength)
        for shows in cause.shows_as
        if knowledge.suits(shows.garments, garment)
        and shows.symptom in knowledge.symptoms
        and knowledge.suits(knowledge.symptoms[shows.symptom].garments, garment)
    }


def chance(knowledge: Knowledge, word: str) -> float:
    """The chance behind a word for strength; 0 where the scale does not have it, which another rule reports."""
    return knowledge.scale.get("strength", {}).get(word, 0.0)


def _may_show(look: Look, cause: Cause, garment: str) -> bool:
    """Something shows, or would if it had been readable."""
    unread = any(shows.symptom not in look.knowledge.symptoms for shows in cause.shows_as)
    return unread or bool(shown_on(look.knowledge, cause, garment))


def _occurs(knowledge: Knowledge, cause: Cause, garment: str) -> bool:
    return not knowledge.kinds_of(garment).isdisjoint(cause.how_common)
