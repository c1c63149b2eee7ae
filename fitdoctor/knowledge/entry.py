"""What every record of the knowledge is made of: words allowed, lengths, the common fields, conditions as trees, sources."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

Id = Annotated[str, Meta(pattern="^[a-z0-9]+(-[a-z0-9]+)*$")]
Text = Annotated[str, Meta(min_length=1)]
Minutes = tuple[float, float, float]
View = Literal["front", "back", "side"]
Line = Literal["fold", "strain", "gape", "droop", "swing", "twist", "ripple", "step"]
Runs = Literal["level", "upright", "slanting", "curved-up", "curved-down"]
LiesIn = Literal["cut", "size", "making", "cloth", "wearing", "none"]
Needs = Literal["wearer", "garment", "inside"]
Effect = Literal["forbids", "limits", "adds-work", "needs-care"]
Stage = Literal["shoulder", "neck", "armhole", "sleeve", "girth", "waist", "seat", "leg", "length", "closing"]
Skill = Literal["easy", "moderate", "hard", "master"]
Sense = Literal["in-all", "depth-or-all", "each-side", "length", "girth"]


class LengthMm(float):
    """A length in mm, written in YAML with its unit (``3/4 in``, ``19 mm``)."""


class Entry(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What every entry has."""

    id: Id
    "The file's name without .yaml; readable; never used again for something else."
    title: Text
    "What the entry is called on the screen."
    short: Annotated[str, Meta(max_length=34)] = ""
    "A title of at most 34 letters where room is small."
    also_called: tuple[str, ...] = ()
    "Other names: of the trade, of lay people. They lead the search here."
    sources: tuple[str, ...] = ()
    "Sources of the entry as a whole: ids of sources.yaml, or common-practice."
    formerly: tuple[Id, ...] = ()
    "Ids this entry had before a rename."


class When(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A small three-valued tree: exactly one of its tests, never code.

    ``{fact: F, is: V}``, ``{amount: A, exceeds: L}``, ``{amount: A, below: L}``, ``{measurement: M, exceeds|below: L}``,
    ``{check: C, is: yes}``, ``{symptom: S}``, ``{garment: G}``, ``{all: [...]}``, ``{any: [...]}``, ``{not: ...}``.
    """

    all: tuple[When, ...] = ()
    any: tuple[When, ...] = ()
    not_: When | None = msgspec.field(default=None, name="not")
    fact: str = ""
    check: str = ""
    is_: tuple[str, ...] = msgspec.field(default=(), name="is")
    "One value, or a list of values any of which will do."
    symptom: str = ""
    garment: str = ""
    amount: str = ""
    "total, each, or a named effect of the method's calculators."
    measurement: str = ""
    exceeds: LengthMm | None = None
    below: LengthMm | None = None


class Source(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One published source, in sources.yaml under its id."""

    title: Text
    by: str = ""
    "Author or body."
    year: str = ""
    address: str = ""
    kind: Literal["book", "bulletin", "standard", "magazine", "newspaper", "teaching-page", "page"]
    note: str = ""
    "What of it was read, how far to trust it."


class Region(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A part of a garment as a fitter names it, in regions.yaml under its id."""

    title: Text
    zones: tuple[Id, ...]
