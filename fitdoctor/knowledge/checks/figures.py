"""Figures that ask for what is not there, and zones that nobody can click."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from fitdoctor.knowledge.checks.links import NOT_KNOWN, seams_of, zones_of
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import Figure
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.references import Path_


@rule("figure")
def figure_asks_for_what_is_not_there(look: Look) -> Iterator[Finding]:
    """A figure paints a piece for a fact that no feature has."""
    features = {id_: [v.id for v in entry.values] for id_, entry in look.knowledge.features.items()}
    for figure in look.knowledge.figures.values():
        for fact, values, path in _facts_named(figure):
            known = list(look.knowledge.garments) if fact == "garment" else features.get(fact)
            if known is None:
                yield Finding("figures", figure.id, f"there is no feature ‘{fact}’{did_you_mean(fact, features)}", path)
                continue
            for value in values:
                if value not in known and value != NOT_KNOWN:
                    yield Finding("figures", figure.id, f"‘{fact}’ cannot be ‘{value}’: {', '.join(known)}", path)


@rule("figure-place")
def figure_shows_a_place_of_no_garment(look: Look) -> Iterator[Finding]:
    """A figure has a zone or a seam that none of the garments drawn with it has."""
    for figure in look.knowledge.figures.values():
        garments = [g.id for g in look.knowledge.garments.values() if figure.id in g.figures.values()]
        zones = {zone for g in garments for view, zone in zones_of(look.knowledge, g) if view == figure.view}
        for name, places, known in (("zone", figure.zones, zones), ("seam", figure.seams, seams_of(look.knowledge, garments))):
            for place in places if garments else ():
                if place not in known:
                    text = f"no garment drawn with this has a {name} ‘{place}’ on the {figure.view}{did_you_mean(place, known)}"
                    yield Finding("figures", figure.id, text, (f"{name}s", place))


@rule("zone-not-drawn")
def zone_that_cannot_be_clicked(look: Look) -> Iterator[Finding]:
    """A garment has a zone on a view whose figure does not show where it is."""
    for garment in look.knowledge.garments.values():
        drawn_as = {str(view): figure for view, figure in garment.figures.items()}
        for view, zone in zones_of(look.knowledge, garment.id):
            figure = look.knowledge.figures.get(drawn_as.get(view, ""))
            if figure and zone not in figure.zones:
                yield Finding("garments", garment.id, f"the figure ‘{figure.id}’ does not show the zone ‘{zone}’", ("figures", view))


def _facts_named(figure: Figure) -> Iterator[tuple[str, Iterable[str], Path_]]:
    for number, piece in enumerate(figure.pieces):
        for name in ("only", "but_not"):
            for fact, values in getattr(piece, name).items():
                yield fact, values, ("pieces", number, name, fact)
    for part, facts in figure.implies.items():
        for fact, value in facts.items():
            yield fact, (value,), ("implies", part, fact)
