"""Links to nothing: entries, words for chances, values of facts, zones, seams."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import Cause, Check, Entry, Method, Symptom
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE, Knowledge
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.references import Path_, references, trees

ALL_KINDS = ("garments", "figures", "features", "symptoms", "causes", "checks", "measurements", "methods", "conditions", "cases")
NOT_KNOWN = "not-known"


def all_entries(knowledge: Knowledge) -> Iterator[tuple[str, Entry]]:
    """Every entry with its kind, figures and solved cases too."""
    for kind in ALL_KINDS:
        for entry in knowledge.kind(kind).values():
            yield kind, entry


@rule("link")
def link_to_nothing(look: Look) -> Iterator[Finding]:
    """An entry names another that is not there."""
    known = {kind: look.knowledge.kind(kind).keys() for kind in ALL_KINDS} | {"sources": {*look.knowledge.sources, COMMON_PRACTICE}}
    for kind, entry in all_entries(look.knowledge):
        for to in references(entry):
            elsewhere = kind == "cases" or to.role == "worked-out-from"
            if not elsewhere and to.id not in known[to.kind] and to.id not in look.unsound:
                yield Finding(kind, entry.id, f"there is no {one_of(to.kind)} ‘{to.id}’{did_you_mean(to.id, known[to.kind])}", to.path)


@rule("word")
def word_not_on_the_scale(look: Look) -> Iterator[Finding]:
    """A word for a chance that scale.yaml does not have."""
    scale = {name: look.knowledge.scale.get(name, {}).keys() for name in ("strength", "how-common", "leak")}
    for kind, entry in all_entries(look.knowledge):
        for word, allowed, path in _words(entry):
            words = [w for name in allowed for w in scale[name]]
            if word not in words:
                text = f"‘{word}’ is no word of scale.yaml here: {', '.join(words)}{did_you_mean(word, words)}"
                yield Finding(kind, entry.id, text, path)


@rule("chance")
def chance_out_of_range(look: Look) -> Iterator[Finding]:
    """A chance of scale.yaml that is not between 0 and 1."""
    for name, words in look.knowledge.scale.items():
        for word, chance in words.items():
            if not 0 < chance < 1:
                yield Finding("scale", name, f"the chance of ‘{word}’ must lie between 0 and 1, not at {chance:g}", (name, word))


@rule("value")
def value_of_a_fact_that_is_not_there(look: Look) -> Iterator[Finding]:
    """A tree asks for a value that its feature, or an answer that a check, does not have."""
    features = {id_: [v.id for v in entry.values] for id_, entry in look.knowledge.features.items()}
    for kind, entry in all_entries(look.knowledge):
        for node, path in trees(entry):
            values = features.get(node.fact, []) if node.fact else ["yes", "no"] if node.check else []
            for value in node.is_ if values else ():
                if value not in (*values, NOT_KNOWN):
                    text = f"‘{node.fact or node.check}’ cannot be ‘{value}’: {', '.join(values)}{did_you_mean(value, values)}"
                    yield Finding(kind, entry.id, text, (*path, "is"))
    for feature in look.knowledge.features.values():
        if feature.usual and feature.usual not in features[feature.id]:
            yield Finding("features", feature.id, f"the usual value ‘{feature.usual}’ is none of its values", ("usual",))


@rule("zone")
def zone_not_on_the_garment(look: Look) -> Iterator[Finding]:
    """A symptom lies in a zone that its garment does not have on that view."""
    for symptom in look.knowledge.symptoms.values():
        for garment in symptom.garments:
            zones = zones_of(look.knowledge, garment)
            if garment in look.knowledge.garments and (symptom.view, symptom.zone) not in zones:
                seen = [zone for view, zone in zones if view == symptom.view]
                text = f"{garment} has no zone ‘{symptom.zone}’ on the {symptom.view}{did_you_mean(symptom.zone, seen)}"
                yield Finding("symptoms", symptom.id, text, ("zone",))


@rule("seam")
def seam_not_on_the_garment(look: Look) -> Iterator[Finding]:
    """A method or a condition names a seam that none of its garments has."""
    for method in look.knowledge.methods.values():
        seams = seams_of(look.knowledge, method.garments)
        for seam, path in _seams_named(method):
            if seam not in seams:
                yield Finding("methods", method.id, f"none of its garments has a seam ‘{seam}’{did_you_mean(seam, seams)}", path)
    for condition in look.knowledge.conditions.values():
        seams = seams_of(look.knowledge, condition.garments)
        for number, seam in enumerate(condition.applies_to.seams):
            if seam not in seams:
                text = f"no garment it holds for has a seam ‘{seam}’{did_you_mean(seam, seams)}"
                yield Finding("conditions", condition.id, text, ("applies_to", "seams", number))


def one_of(kind: str) -> str:
    """A kind as one of it: symptoms -> symptom."""
    return kind.removesuffix("s")


def zones_of(knowledge: Knowledge, garment: str) -> dict[tuple[str, str], str]:
    """(view, zone) -> title of a garment, those of its wider kinds too."""
    return {(zone.view, zone.id): zone.title for id_ in wider(knowledge, garment) for zone in knowledge.garments[id_].zones}


def wider(knowledge: Knowledge, garment: str) -> tuple[str, ...]:
    """The garment and its wider kinds, itself first."""
    chain: list[str] = []
    while garment in knowledge.garments and garment not in chain:
        chain.append(garment)
        garment = knowledge.garments[garment].kind_of
    return tuple(chain)


def seams_of(knowledge: Knowledge, garments: Iterable[str]) -> set[str]:
    """The seams of garments, of what they are kinds of, and of what is a kind of them; of none named: of all."""
    named = set(garments)
    kinds = [id_ for id_ in knowledge.garments if not named or named & {*wider(knowledge, id_)}]
    return {seam.id for kind in kinds for id_ in wider(knowledge, kind) for seam in knowledge.garments[id_].seams}


def _seams_named(method: Method) -> Iterator[tuple[str, Path_]]:
    for number, operation in enumerate(method.operations):
        for name in ("opens", "closes"):
            for place, seam in enumerate(getattr(operation, name)):
                yield seam, ("operations", number, name, place)
    for number, need in enumerate(method.cloth_needed):
        yield need.seam, ("cloth_needed", number, "seam")
    for name, spec in method.amounts.items():
        for option in ("at", "seams"):
            yield from ((seam, ("amounts", name, "options", option)) for seam in spec.options.get(option, "").split())


def _words(entry: Entry) -> Iterator[tuple[str, tuple[str, ...], Path_]]:
    """Every word for a chance, the scales it may come from, its place."""
    if isinstance(entry, Symptom | Check):
        yield entry.leak, ("leak", "strength"), ("leak",)
    if isinstance(entry, Cause):
        yield from ((word, ("how-common",), ("how_common", garment)) for garment, word in entry.how_common.items())
        yield from ((s.strength, ("strength",), ("shows_as", n, "strength")) for n, s in enumerate(entry.shows_as))
        yield from ((a.yes, ("strength",), ("answers", n, "yes")) for n, a in enumerate(entry.answers))
    if isinstance(entry, Method):
        yield from ((m.chance, ("strength",), ("may_bring_on", n, "chance")) for n, m in enumerate(entry.may_bring_on))
