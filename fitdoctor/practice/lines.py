"""Name the lines on a drawn garment."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.case import Case
from fitdoctor.knowledge.entries import Symptom
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.practice.bench import Bench
from fitdoctor.practice.exercise import LEAVE_ALONE, Choice, Exercise, Option, Picture, Skill, Told
from fitdoctor.practice.lots import Lots
from fitdoctor.practice.scope import Scope
from fitdoctor.practice.wording import lower, without

CLEAN = "Nothing: the cloth hangs as it should"
_ANSWERS = 4
_CLEAN_SHARE = 0.15
_OFFERED_SHARE = 0.4
"""How often nothing is among the answers where something shows, so that its being there tells nothing."""


def lines_exercise(bench: Bench, lots: Lots, scope: Scope, garment: str, focus: Skill | None = None) -> Exercise | None:
    """A garment with one line to name, at times with none.

    Args:
        focus: a symptom, a pair of them, or a clean garment; None leaves it to the lots.
    """
    here = sorted(scope.symptoms(bench.knowledge, garment))
    if (focus and focus.kind == "clean") or (not focus and here and lots.happens(_CLEAN_SHARE)):
        question = clean_question(bench, lots, garment, here)
        return _exercise(scope, garment, question, ())
    wanted = [id_ for id_ in here if focus is None or id_ in focus.ids]
    if not wanted:
        return None
    symptom = lots.one(wanted)
    question = line_question(bench, lots, garment, symptom, (symptom,), focus)
    return _exercise(scope, garment, question, (symptom,))


def line_question(bench: Bench, lots: Lots, garment: str, symptom: str, seen: tuple[str, ...], focus: Skill | None = None) -> Choice | None:
    """Which of several lines that look alike this one is; None where it has no look-alikes on this garment."""
    knowledge = bench.knowledge
    entry = knowledge.symptoms[symptom]
    alike = [id_ for id_ in look_alikes(knowledge, garment, symptom) if id_ not in seen]
    others = without((*(id_ for id_ in alike if focus and id_ in focus.ids), *alike))[: _ANSWERS - 1]
    if len(others) < _ANSWERS - 1:
        return None
    options = [_named(knowledge, symptom, id_) for id_ in (symptom, *others)]
    if lots.happens(_OFFERED_SHARE):
        options[-1] = _nothing(entry)
    here = tuple(id_ for id_ in seen if knowledge.symptoms[id_].view == entry.view)
    both = focus and focus.kind == "pair" and set(focus.ids) <= {symptom, *others}
    return Choice(
        kind="lines",
        ask="Which line is marked?" if len(here) > 1 else "What shows here?",
        given=(f"{knowledge.garment(garment).title}, from the {entry.view}",),
        skill=focus if focus and both else Skill("symptom", symptom),
        right=entry.look,
        entry=("symptoms", symptom),
        picture=Picture(entry.view, here, symptom if len(here) > 1 else ""),
        shows=Picture(entry.view, here, symptom),
        sources=entry.sources,
        options=tuple(lots.shuffled(options)),
    )


def clean_question(bench: Bench, lots: Lots, garment: str, symptoms: list[str]) -> Choice | None:
    """A garment on which nothing shows, and lines that could be read into it."""
    views = [view for view in bench.views(garment) if sum(bench.knowledge.symptoms[id_].view == view for id_ in symptoms) >= _ANSWERS - 1]
    if not views:
        return None
    view = lots.one(views)
    others = lots.shuffled([id_ for id_ in symptoms if bench.knowledge.symptoms[id_].view == view])[: _ANSWERS - 1]
    read_in = "Nothing shows here. A line that is not there leads to work that spoils a garment."
    named = [Option(id_, bench.knowledge.symptoms[id_].title, "wrong", Told((read_in,))) for id_ in others]
    right = Option(LEAVE_ALONE, CLEAN, "right")
    return Choice(
        kind="lines",
        ask="What shows here?",
        given=(f"{bench.knowledge.garment(garment).title}, from the {view}",),
        skill=Skill("clean", garment),
        right="Nothing shows: the cloth hangs clean.",
        entry=("garments", garment),
        picture=Picture(view),
        shows=Picture(view),
        options=tuple(lots.shuffled([right, *named])),
    )


def look_alikes(knowledge: Knowledge, garment: str, symptom: str) -> list[str]:
    """The lines of the same view that may be taken for this one: first those that are said to be, then by place and by kind of line."""
    known = knowledge.symptoms_of(garment)
    return without(_alike(known, knowledge.symptoms[symptom]), symptom)


def _alike(known: dict[str, Symptom], entry: Symptom) -> Iterator[str]:
    same_view = [other for other in known.values() if other.view == entry.view and other.draw]
    seen_there = {other.id for other in same_view}
    yield from (m.symptom for m in entry.mistaken_for if m.symptom in seen_there)
    yield from (other.id for other in same_view if any(m.symptom == entry.id for m in other.mistaken_for))
    yield from (other.id for other in same_view if other.zone == entry.zone)
    yield from (other.id for other in same_view if other.line == entry.line and other.runs == entry.runs)
    yield from (other.id for other in same_view if other.line == entry.line)
    yield from (other.id for other in same_view)


def tell_apart(knowledge: Knowledge, one: str, other: str) -> str:
    """How to tell two lines apart, where an entry says so."""
    both = ((one, other), (other, one))
    said = (m.tell_apart for a, b in both for m in knowledge.symptoms[a].mistaken_for if m.symptom == b)
    return next(said, "")


def _named(knowledge: Knowledge, right: str, id_: str) -> Option:
    entry, chosen = knowledge.symptoms[right], knowledge.symptoms[id_]
    if id_ == right:
        return Option(id_, chosen.title, "right", Told((*_mistakes(knowledge, right),)))
    apart = tell_apart(knowledge, right, id_)
    text = (f"‘{chosen.title}’ looks otherwise: {lower(chosen.look)}.", f"This one: {lower(entry.look)}.", *((apart,) if apart else ()))
    return Option(id_, chosen.title, "wrong", Told(text, confused=(right, id_)))


def _mistakes(knowledge: Knowledge, symptom: str) -> Iterator[str]:
    for mistaken in knowledge.symptoms[symptom].mistaken_for:
        if mistaken.symptom in knowledge.symptoms:
            yield f"Easily mistaken for ‘{knowledge.symptoms[mistaken.symptom].title}’. {mistaken.tell_apart}"


def _nothing(entry: Symptom) -> Option:
    return Option(LEAVE_ALONE, CLEAN, "wrong", Told((f"A line shows: {lower(entry.look)}.",)))


def _exercise(scope: Scope, garment: str, question: Choice | None, seen: tuple[str, ...]) -> Exercise | None:
    return Exercise("", "lines", scope.level, Case(garment=garment, seen=seen), (question,)) if question else None
