"""How the chain's values are said on the pages: evidence, sources, minutes, places."""

from __future__ import annotations

from collections.abc import Iterable

from fitdoctor.assess import Assessment
from fitdoctor.desk.parts.reason_note import WhoSays
from fitdoctor.desk.words import and_list, lower_first, minutes, tr
from fitdoctor.diagnosis.next_checks import NextCheck
from fitdoctor.diagnosis.ranking import Evidence, NotLooked
from fitdoctor.knowledge.entries import Check, Measurement, Symptom
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge

NEEDS = {"wearer": "Needs the wearer", "garment": "On the garment alone", "inside": "Look inside the garment"}
EFFECTS = {"forbids": "stops the work", "limits": "a limit", "adds-work": "extra work", "needs-care": "care"}
KIND_OF_SOURCE = {
    "book": "A book.",
    "bulletin": "A bulletin.",
    "standard": "A standard.",
    "magazine": "A magazine.",
    "newspaper": "A newspaper.",
    "teaching-page": "A teaching page.",
    "page": "A page.",
}


def first_sentence(text: str) -> str:
    """The first sentence of a text."""
    head, stop, _ = text.partition(". ")
    return head + ("." if stop else "")


def evidence_line(knowledge: Knowledge, evidence: Evidence) -> str:
    """‘**Strongly:** level folds under the band’."""
    word = tr(evidence.word.capitalize())
    title = lower_first(evidence.title.rstrip("."))
    if evidence.kind == "symptom":
        said = title if evidence.answer == "yes" else tr("not seen: {what}", what=title)
    else:
        check = knowledge.checks[evidence.finding]
        said = f"{title}: {lower_first((check.yes if evidence.answer == 'yes' else check.no).rstrip('.'))}"
    return f"**{word}:** {said}"


def not_looked_line(left: NotLooked) -> str:
    """A finding still to look for."""
    return left.title.rstrip(".")


def who_says(knowledge: Knowledge, sources: Iterable[str]) -> tuple[WhoSays, ...]:
    """Sources as they are shown in a margin note; common practice says so."""
    shown = []
    for source in dict.fromkeys(sources):
        entry = knowledge.sources.get(source)
        if source == COMMON_PRACTICE or entry is None:
            shown.append(WhoSays(tr("Common practice, no source.")))
        else:
            shown.append(WhoSays(knowledge.source_line(source), entry.note or tr(KIND_OF_SOURCE[entry.kind])))
    return tuple(shown) or (WhoSays(tr("Worked out here from what was measured.")),)


def check_needs(check: Check) -> str:
    """‘2 minutes. Needs the wearer and three pins.’"""
    tools = tr(" and {tools}", tools=check.tools) if check.tools and check.needs == "wearer" else ""
    more = tr(" With {tools}.", tools=check.tools) if check.tools and check.needs != "wearer" else ""
    taken = minutes(check.minutes)
    return f"{taken[:1].upper()}{taken[1:]}. {tr(NEEDS[check.needs])}{tools}.{more}"


def place_of(knowledge: Knowledge, symptom: Symptom, garment: str) -> str:
    """‘Back, under the band’."""
    view = tr(symptom.view.capitalize())
    zone = zone_title(knowledge, garment, symptom.zone, symptom.view)
    return f"{view}, {lower_first(zone)}" if zone else view


def zone_title(knowledge: Knowledge, garment: str, zone: str, view: str) -> str:
    """What a place of the garment is called."""
    return zones_of(knowledge, garment, view).get(zone, "")


def zones_of(knowledge: Knowledge, garment: str, view: str) -> dict[str, str]:
    """The places of a garment on one side, id to title; those of the wider kind hold where it names none of its own."""
    entry = knowledge.garments.get(garment)
    while entry is not None:
        zones = {zone.id: zone.title for zone in entry.zones if zone.view == view}
        if zones:
            return zones
        entry = knowledge.garments.get(entry.kind_of)
    return {}


def for_causes(knowledge: Knowledge, assessment: Assessment) -> str:
    """‘For: the back is longer than the wearer.’"""
    titles = [lower_first(knowledge.causes[cause].title.rstrip(".")) for cause in assessment.treat]
    return tr("For: {causes}.", causes=and_list(titles)) if titles else ""


def convention_of(measurement: Measurement) -> str:
    """How a measurement counts, as it stands before the number: in all, each side; nothing for plain lengths."""
    return {"in-all": tr("in all"), "depth-or-all": tr("in all"), "each-side": tr("each side")}.get(measurement.sense, "")


LINE_WORDS = {
    "fold": "soft folds",
    "strain": "taut lines",
    "gape": "stands away",
    "droop": "sags",
    "swing": "swings out of place",
    "twist": "twists",
    "ripple": "ripples",
    "step": "a step",
}
RUNS_WORDS = {
    "level": "level",
    "upright": "upright",
    "slanting": "slanting",
    "curved-up": "in upward curves",
    "curved-down": "in hanging curves",
}


def how_it_lies(symptom: Symptom) -> str:
    """‘taut lines, slanting’: the kind of line and how it runs."""
    return f"{tr(LINE_WORDS[symptom.line])}, {tr(RUNS_WORDS[symptom.runs])}"


def question_of(knowledge: Knowledge, ask: NextCheck) -> str:
    """The question in hand; for something to look at the picture beside it says what."""
    if ask.kind == "check":
        return ask.ask
    return tr("Look at the {view}. Does this show?", view=knowledge.symptoms[ask.id].view)


def look_for(knowledge: Knowledge, ask: NextCheck) -> str:
    """Something to look at, on one line."""
    symptom = knowledge.symptoms[ask.id]
    return tr("Look at the {view} for this: {what}", view=symptom.view, what=lower_first(symptom.title.rstrip(".")))
