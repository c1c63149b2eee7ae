"""`fitdoctor search`: what it takes and what it says. What searches is imported only when it runs."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterable
from typing import TYPE_CHECKING

from fitdoctor.errors import FitdoctorError

if TYPE_CHECKING:
    from fitdoctor.knowledge.filters import Filter
    from fitdoctor.knowledge.knowledge import Knowledge

KINDS = ("symptoms", "causes", "checks", "measurements", "methods", "conditions", "features", "garments", "sources")


def search_options(parser: argparse.ArgumentParser) -> None:
    """Add words and filters to the parser of `fitdoctor search`."""
    parser.add_argument("words", nargs="*", help="what to look for; none: all that passes the filters")
    parser.add_argument("--kind", choices=KINDS, metavar="KIND", help=f"only one of: {', '.join(KINDS)}")
    parser.add_argument("--garment", help="only what holds for this kind of garment")
    parser.add_argument("--region", help="only what has to do with this region: neck, shoulder, sleeve, waist, …")
    parser.add_argument("--cloth", help="only what speaks of this cloth: leather, velvet, knit, …")
    parser.add_argument("--most", type=int, default=12, metavar="N", help="no more finds than this; 12 if left out")
    parser.add_argument("--json", action="store_true")


def found_said(knowledge: Knowledge, args: argparse.Namespace) -> str:
    """The finds as text, or as JSON.

    Raises:
        FitdoctorError: neither words nor a filter, or a filter names what is not there.
    """
    from fitdoctor.knowledge.search import SearchIndex

    said, only = " ".join(args.words), _filter(knowledge, args)
    if not said and not only:
        raise FitdoctorError("Nothing to look for.", "Say some words, or set a filter such as --garment skirt.")
    index = SearchIndex(knowledge)
    hits = index.search(said, only, args.most) if said else index.browse(only)
    if args.json:
        return json.dumps([{"id": h.id, "kind": h.kind, "title": h.title, "score": h.score} for h in hits], indent=1, ensure_ascii=False)
    return "\n".join(f"{h.kind.rstrip('s'):12} {h.title}  [{h.id}]" for h in hits) or _nothing(said)


def _nothing(said: str) -> str:
    return f"Nothing under ‘{said}’." if said else "Nothing passes these filters."


def _filter(knowledge: Knowledge, args: argparse.Namespace) -> Filter:
    from fitdoctor.knowledge.filters import CLOTH, Filter

    cloth = knowledge.features.get(CLOTH)
    return Filter(
        args.kind or "",
        _known(args.garment, "kind of garment", knowledge.garments),
        _known(args.region, "region", knowledge.regions),
        _known(args.cloth, "cloth", [value.id for value in cloth.values] if cloth else []),
    )


def _known(named: str | None, what: str, known: Iterable[str]) -> str:
    from fitdoctor.knowledge.nearest import did_you_mean

    there = list(known)
    if named and named not in there:
        raise FitdoctorError(f"‘{named}’ is not a {what}{did_you_mean(named, there)}.", f"Known: {', '.join(sorted(there))}.")
    return named or ""
