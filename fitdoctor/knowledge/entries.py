"""The records of the knowledge: one struct a kind, one entry a file.

Field docstrings are the handbook for whoever writes entries: ``knowledge/README.md`` is generated from them.
Lengths are written with their unit in YAML and held in mm.
"""

from __future__ import annotations

from typing import Literal

import msgspec

from fitdoctor.knowledge.drawn import (
    Bump as Bump,
)
from fitdoctor.knowledge.drawn import (
    Drawing as Drawing,
)
from fitdoctor.knowledge.drawn import (
    Figure as Figure,
)
from fitdoctor.knowledge.drawn import (
    MechanismArrow as MechanismArrow,
)
from fitdoctor.knowledge.drawn import (
    Piece as Piece,
)
from fitdoctor.knowledge.drawn import (
    PointList as PointList,
)
from fitdoctor.knowledge.drawn import (
    SeamLine as SeamLine,
)
from fitdoctor.knowledge.drawn import (
    Stroke as Stroke,
)
from fitdoctor.knowledge.drawn import (
    ZoneShape as ZoneShape,
)
from fitdoctor.knowledge.entry import (
    Effect as Effect,
)
from fitdoctor.knowledge.entry import (
    Entry as Entry,
)
from fitdoctor.knowledge.entry import (
    Id as Id,
)
from fitdoctor.knowledge.entry import (
    LengthMm as LengthMm,
)
from fitdoctor.knowledge.entry import (
    LiesIn as LiesIn,
)
from fitdoctor.knowledge.entry import (
    Line as Line,
)
from fitdoctor.knowledge.entry import (
    Minutes as Minutes,
)
from fitdoctor.knowledge.entry import (
    Needs as Needs,
)
from fitdoctor.knowledge.entry import (
    Region as Region,
)
from fitdoctor.knowledge.entry import (
    Runs as Runs,
)
from fitdoctor.knowledge.entry import (
    Sense as Sense,
)
from fitdoctor.knowledge.entry import (
    Skill as Skill,
)
from fitdoctor.knowledge.entry import (
    Source as Source,
)
from fitdoctor.knowledge.entry import (
    Stage as Stage,
)
from fitdoctor.knowledge.entry import (
    Text as Text,
)
from fitdoctor.knowledge.entry import (
    View as View,
)
from fitdoctor.knowledge.entry import (
    When as When,
)
from fitdoctor.knowledge.remedies import (
    AmountSpec as AmountSpec,
)
from fitdoctor.knowledge.remedies import (
    AppliesTo as AppliesTo,
)
from fitdoctor.knowledge.remedies import (
    ClothNeeded as ClothNeeded,
)
from fitdoctor.knowledge.remedies import (
    Condition as Condition,
)
from fitdoctor.knowledge.remedies import (
    MayBringOn as MayBringOn,
)
from fitdoctor.knowledge.remedies import (
    Method as Method,
)
from fitdoctor.knowledge.remedies import (
    Operation as Operation,
)
from fitdoctor.knowledge.solved import (
    Expected as Expected,
)
from fitdoctor.knowledge.solved import (
    ExpectedAmount as ExpectedAmount,
)
from fitdoctor.knowledge.solved import (
    SolvedCase as SolvedCase,
)


class Zone(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A place on the drawn garment."""

    id: Id
    title: Text
    "As in: Under the band."
    view: View


class Seam(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A seam, hem or edge that operations open and close."""

    id: Id
    title: Text


class Garment(Entry, frozen=True, kw_only=True):
    """A kind of garment."""

    kind_of: str = ""
    "The wider kind: what is said of that kind holds for this one."
    umbrella: bool = False
    "True where a case may name the wide kind because the exact one is not known (trousers)."
    figures: dict[View, str] = {}
    "View -> figure id."
    zones: tuple[Zone, ...] = ()
    seams: tuple[Seam, ...] = ()
    "Those of the wider kind hold too."
    lining: Literal["usual", "sometimes", "seldom"] = "seldom"


class FeatureValue(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    id: Id
    title: Text
    look: str = ""
    "How to recognise it."
    no_cloth: bool = False
    "Whether nothing is there to be let out; a length measured in the seam goes before it."


class Feature(Entry, frozen=True, kw_only=True):
    """A fact about a garment that a condition or a method depends on."""

    ask: Text
    garments: tuple[str, ...]
    values: tuple[FeatureValue, ...]
    at_the_rack: str = ""
    "How to find out in seconds, without tools."
    seconds: float = 10
    usual: str = ""
    "The value most garments have, for the order of questions only; never assumed."


class MistakenFor(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    symptom: str
    tell_apart: Text


class Symptom(Entry, frozen=True, kw_only=True):
    """What is seen on the worn garment."""

    garments: tuple[str, ...]
    view: View
    zone: Id
    line: Line
    runs: Runs
    look: Text
    "One sentence by which a trainee recognises it."
    draw: tuple[Drawing, ...] = ()
    mistaken_for: tuple[MistakenFor, ...] = ()
    leak: str = "leak"
    "Word of scale.yaml: how often it shows without any cause known here."


class Shows(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    symptom: str
    strength: str
    "Word of scale.yaml."
    sources: tuple[str, ...]
    garments: tuple[str, ...] = ()
    "Where the link holds only for some garments."


class Answers(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    check: str
    yes: str
    "Word of scale.yaml: how often the answer is yes from this cause alone."
    sources: tuple[str, ...]


class ToldApart(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    cause: str
    by: Text
    "Why no check parts the two, and what to do about it."


class Cause(Entry, frozen=True, kw_only=True):
    """What is the matter: how garment and figure differ, or what went wrong in making, cloth or wearing."""

    lies_in: LiesIn
    how_common: dict[str, str]
    "Garment -> word of scale.yaml; the garments not named do not have it."
    why: Text
    "Why the cloth does that: where it is short, where it stacks, what it hangs from."
    shows_as: tuple[Shows, ...] = ()
    answers: tuple[Answers, ...] = ()
    measure: tuple[str, ...] = ()
    "Measurements that settle how much."
    no_method: str = ""
    "Why there is no method, where there is none."
    impossible_if: tuple[When, ...] = ()
    "Facts or answers that rule it out altogether."
    told_apart: tuple[ToldApart, ...] = ()
    mechanism: tuple[MechanismArrow, ...] = ()
    "Arrows of the explaining picture."


class Check(Entry, frozen=True, kw_only=True):
    """A question or a try that tells causes apart; its answer is yes, no or not known."""

    ask: Text
    "The question itself, ending in a question mark."
    how: tuple[str, ...] = ()
    "Steps, one sentence each."
    yes: str = "Yes"
    no: str = "No"
    "What the two answers are called on their buttons: Yes, they go / No, they stay."
    minutes: float
    needs: Needs
    tools: str = ""
    garments: tuple[str, ...] = ()
    "Only for these; empty: wherever a cause names it."
    leak: str = "leak"
    at_the_rack: bool = False
    "True where it can be done in a shop in seconds without tools."
    draw: tuple[Drawing, ...] = ()
    "How it is done: what the hands do, on the garment."
    view: View = "back"
    "The side it is drawn from."
    care: str = ""
    "A caution shown with it (pins, irons)."


class Measurement(Entry, frozen=True, kw_only=True):
    """A length to take on the wearer or the garment."""

    how: tuple[str, ...]
    of: Literal["garment", "wearer", "garment-on-wearer"]
    sense: Sense
    "in-all: total; depth-or-all: a pinned fold, ask which of the two; each-side; length; girth."
    garments: tuple[str, ...] = ()
    usual_mm: tuple[LengthMm, LengthMm] = msgspec.field(name="usual")
    possible_mm: tuple[LengthMm, LengthMm] = msgspec.field(name="possible")
    tolerance_mm: LengthMm = msgspec.field(name="tolerance")
    "Give or take of one careful reading."
    repeat: str = ""
    "When to take it twice, and what to do if the two differ."
    minutes: float = 2
    needs: Needs = "wearer"
    draw: tuple[Drawing, ...] = ()
    line: tuple[tuple[float, float], ...] = ()
    "From where to where on the figure, mm."
    view: View = "back"


KINDS: dict[str, type[Entry]] = {
    "garments": Garment,
    "figures": Figure,
    "features": Feature,
    "symptoms": Symptom,
    "causes": Cause,
    "checks": Check,
    "measurements": Measurement,
    "methods": Method,
    "conditions": Condition,
    "cases": SolvedCase,
}
