"""The kinds of entry by the names the window gives them, and where an entry is found by its id."""

from __future__ import annotations

from collections.abc import Collection

from fitdoctor.desk.handbook.narrowing import Choices
from fitdoctor.desk.words import tr
from fitdoctor.knowledge.entries import Cause, Entry
from fitdoctor.knowledge.filters import CLOTH
from fitdoctor.knowledge.knowledge import Knowledge

Key = tuple[str, str]
"""(kind, id)."""

KIND_TITLES: dict[str, str] = {
    "symptoms": "What shows",
    "causes": "Causes",
    "methods": "Ways to alter",
    "conditions": "What the work needs",
    "checks": "Checks",
    "measurements": "Measurements",
    "features": "What to know of a garment",
    "garments": "Garments",
    "sources": "Sources",
}
CASES = "Solved cases"
"Their pages are reached from the entries they use."
MAPPED = tuple(kind for kind in KIND_TITLES if kind not in ("garments", "sources"))
"Kinds with a map: too much is tied to a garment or a source."
_NAMED_GARMENTS = 3


def garments_of(entry: Entry) -> tuple[str, ...]:
    """The garments an entry is for; none means all."""
    return tuple(entry.how_common) if isinstance(entry, Cause) else tuple(getattr(entry, "garments", ()))


def over_title(knowledge: Knowledge, key: Key) -> str:
    """What stands over the title of a page: ‘Ways to alter, skirt, trousers’."""
    kind, id_ = key
    named = garments_of(knowledge.kind(kind)[id_]) if kind != "sources" else ()
    names = [knowledge.garments[g].title for g in named if g in knowledge.garments]
    shown = names[:_NAMED_GARMENTS] + (["and others"] if len(names) > _NAMED_GARMENTS else [])
    return ", ".join([tr(KIND_TITLES.get(kind, CASES)), *(name[:1].lower() + name[1:] for name in shown)])


def key_of(knowledge: Knowledge, id_: str) -> Key | None:
    """Where an entry that is known by its id alone is found."""
    return next(((kind, id_) for kind in KIND_TITLES if id_ in getattr(knowledge, kind)), None)


def choices_of(knowledge: Knowledge, cloths: Collection[str]) -> tuple[Choices, ...]:
    """What the finds can be narrowed to; of the cloths those that something is said of."""
    cloth = knowledge.features.get(CLOTH)
    return (
        Choices("kind", tr("Kind"), tuple((kind, tr(title)) for kind, title in KIND_TITLES.items())),
        Choices("garment", tr("Garment"), tuple((g.id, g.title) for g in knowledge.garments.values())),
        Choices("region", tr("Region"), tuple((id_, region.title) for id_, region in knowledge.regions.items())),
        Choices("cloth", tr("Cloth"), tuple((v.id, v.title) for v in (cloth.values if cloth else ()) if v.id in cloths)),
    )
