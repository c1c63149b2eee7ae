"""The records of the knowledge: one struct a kind, one entry a file.

Field docstrings are the handbook for whoever writes entries: ``knowledge/README.md`` is generated from them.
Lengths are written with their unit in YAML and held in mm.
"""

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


PointList = Annotated[str, Meta(pattern=r"^-?[0-9.]+,-?[0-9.]+c?( -?[0-9.]+,-?[0-9.]+c?)*$")]
"Points of a curve, `x,y` in mm with a space between; `c` behind a point makes it a corner, the others are smooth."


class Piece(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """One thing painted on a figure; a figure paints its pieces in order."""

    paint: Literal[
        "wearer", "gapes", "strokes", "part", "seam", "edge", "line", "crease", "soft", "spot", "hollow", "swell", "button", "fading", "mouth"
    ]
    "What is painted; wearer, gapes and strokes say when the wearer's body and the symptom's strokes have their turn."
    name: str = ""
    "What outline changes and strokes call it; a part on both sides becomes name.r and name.l."
    on: str = ""
    "Part or group of parts it lies on and is clipped to."
    points: PointList | None = None
    "The curve, or a whole outline."
    half: PointList | None = None
    "The right half of a symmetrical outline, from the top at the centre to the bottom."
    far: PointList | None = None
    "Of a mouth: where its other edge stands while it is open."
    at: tuple[float, float] | None = None
    r: tuple[float, float] = (5, 5)
    angle: float = 0
    both: bool = False
    "Also mirrored about the centre line."
    tone: str = "cloth"
    span: tuple[float, float] | None = None
    "From where to where the light runs round the part; parts of one tube share it."
    rim: float = 1
    outline: float = 2.2
    drawn: tuple[int, int] | None = None
    "First and last point of the outline that is drawn as a line, where not all of it is."
    casts: tuple[float, float, float] | None = None
    "Shadow of the part on what lies under it: shift to the right, shift down, darkness."
    width: float | None = None
    strength: float | None = None
    fade: tuple[float, float] = (0.4, 0.4)
    drop: float = 9
    "How far the shade of an edge falls; below 0 it falls to the other side."
    dash: tuple[float, ...] = ()
    down: tuple[float, float] | None = None
    "Heights between which a fading piece comes or goes."
    lit: bool = False
    only: dict[str, tuple[str, ...]] = {}
    "Painted only where each of these facts has one of these values; a fact not told has the value not-known, `garment` is the kind."
    but_not: dict[str, tuple[str, ...]] = {}
    "Left out where any of these facts has one of these values."
    closed: str = ""
    "Painted only while the opening of this name is closed."
    opened: str = ""
    "Painted only while a drawing opens it."


class ZoneShape(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """Where a zone lies on a figure: the parts it is on, cut out by a convex shape."""

    within: PointList
    on: tuple[str, ...] = ()
    "Parts or groups; empty: the shape itself."
    both: bool = False


class SeamLine(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """Where a seam, dart, hem or edge of the garment lies on a figure: amounts and new lines are drawn beside it."""

    points: PointList
    "From the end where a mark counts first: centre to side, top to bottom."
    into: tuple[float, float]
    "Direction from the seam into the cloth on the right half; taking in goes there."
    both: bool = False


class Figure(Entry, frozen=True, kw_only=True):
    """A garment drawn from one side on its wearer, in mm of a real body (x from the centre line, y down from the nape)."""

    view: View
    box: tuple[float, float, float, float]
    "x, y, width, height of the whole picture."
    wearer: tuple[Id, ...] = ()
    "Figures of the wearer's body painted where the piece `wearer` stands."
    main: str = ""
    "Part or group that strokes lie on when they name none."
    groups: dict[str, tuple[str, ...]] = {}
    "Names for several parts together."
    implies: dict[str, dict[str, str]] = {}
    "Part -> facts that a stroke on this part stands for where they are not told (a stroke on a sleeve: there are sleeves)."
    pieces: tuple[Piece, ...]
    landmarks: dict[str, tuple[float, float]] = {}
    levels: dict[str, tuple[float, float, float]] = {}
    "Height, left edge and right edge at places other figures have too: they carry a drawing from one figure to another."
    zones: dict[str, ZoneShape] = {}
    seams: dict[str, SeamLine] = {}


class FeatureValue(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    id: Id
    title: Text
    look: str = ""
    "How to recognise it."


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


class Bump(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A change of the outline: p += (dx, dy) exp(-((x-cx)/rx)^2 - ((y-cy)/ry)^2)."""

    at: tuple[float, float]
    r: tuple[float, float]
    move: tuple[float, float]
    on: tuple[str, ...] = ()
    both: bool = False


class Stroke(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """One stroke of a drawn symptom, in mm of a real body (x from the centre line, y down from the nape)."""

    stroke: Literal["fold", "taut", "fan", "spot", "soft", "swell", "hollow", "gape", "line", "crease", "dent", "dart", "seam", "dots"]
    on: str = ""
    "Part it is clipped to; empty is the main cloth of the view."
    from_: tuple[float, float] | None = msgspec.field(default=None, name="from")
    to: tuple[float, float] | None = None
    at: tuple[float, float] | None = None
    through: tuple[tuple[float, float], ...] = ()
    near: tuple[tuple[float, float], ...] = ()
    far: tuple[tuple[float, float], ...] = ()
    r: tuple[float, float] | None = None
    bow: float = 0
    depth: float | None = None
    fade: tuple[float, float] | None = None
    side: int = 0
    seed: int = 0
    k: float = 1
    n: int = 5
    toward: float = 0
    spread: float = 30
    length: float = 140
    start: float = 8
    width: float | None = None
    strength: float | None = None
    lit: bool = False
    angle: float = 0
    both: bool = False
    "Also mirrored about the centre line."


class Drawing(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """A symptom as strokes on one figure."""

    garments: tuple[str, ...] = ()
    "Garments this drawing is for; empty: all of the symptom's."
    crop: tuple[float, float, float, float]
    "x, y, width, height shown in a small picture."
    outline: tuple[Bump, ...] = ()
    strokes: tuple[Stroke, ...] = ()
    opens: tuple[str, ...] = ()
    "Openings of the figure drawn spread: vent, pockets, fly, pleats."


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


class MechanismArrow(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    kind: Literal["pull", "stack", "hang", "ledge"]
    from_: tuple[float, float] = msgspec.field(name="from")
    to: tuple[float, float]
    bow: float = 0
    both_ends: bool = False
    both: bool = False
    says: str = ""
    view: View = "back"


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


class AmountSpec(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How a method's marks are worked out: a calculator and where its inputs come from."""

    calculator: str
    inputs: dict[str, str]
    "Input -> measurement id, or a length with its unit, or a plain number."
    options: dict[str, str] = {}
    "Words a calculator needs: the seam, the layer."


class ClothNeeded(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    seam: str
    "Seam or hem of the garment that gives the cloth."
    measurement: str
    "Measurement that tells how much is there."
    amount: str
    "Name of the effect that tells how much is needed there."
    keep_mm: LengthMm = msgspec.field(name="keep")
    "What must stay."
    sources: tuple[str, ...]


class MayBringOn(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    cause: str
    chance: str


class Operation(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """One step of a method."""

    id: Id
    do: Text
    "Sentence; {name}, {name.each}, {name.effect} stand for worked-out amounts."
    opens: tuple[str, ...] = ()
    closes: tuple[str, ...] = ()
    after: tuple[str, ...] = ()
    "Operations of the same method that come before; empty: the one above it."
    minutes: Minutes
    try_on: bool = False
    stage: Stage | None = None
    "Where it differs from the method's."
    layer: Literal["shell", "lining"] = "shell"
    care: str = ""
    needs_lining: bool = False
    "Left out where the fact lining says none."


class Method(Entry, frozen=True, kw_only=True):
    """An alteration (or buying another size, or leaving it alone)."""

    kind: Literal["alteration", "leave", "other-garment"] = "alteration"
    treats: tuple[str, ...]
    garments: tuple[str, ...]
    only_if: When | None = None
    preferred: str = ""
    "When this one is to be preferred among several."
    rank: int = 50
    "Order among methods whose verdict is alike; the lower first."
    amounts: dict[str, AmountSpec] = {}
    "Name -> how it is worked out."
    cloth_needed: tuple[ClothNeeded, ...] = ()
    may_bring_on: tuple[MayBringOn, ...] = ()
    stage: Stage
    skill: Skill = "moderate"
    operations: tuple[Operation, ...] = ()
    conditions: tuple[str, ...] = ()
    lining: str = ""
    pressing: str = ""
    because: str = ""
    "Why it cures; for leave and other-garment why that is right."


class AppliesTo(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What a condition watches: a method, any method that opens one of these seams, or everything."""

    methods: tuple[str, ...] = ()
    seams: tuple[str, ...] = ()
    let_out: bool = False
    "Any method with cloth_needed."
    all: bool = False


class Condition(Entry, frozen=True, kw_only=True):
    """A no-go, a limit, extra work or a care."""

    effect: Effect
    needs: Text
    "What the work needs, so that met is good: The dart ends are not punched through."
    applies_to: AppliesTo = AppliesTo()
    "Besides the methods that name it."
    garments: tuple[str, ...] = ()
    when: When | None = None
    "True when the effect strikes; absent: a care that always holds."
    ask: str = ""
    at_the_rack: str = ""
    because: Text
    instead: str = ""
    "What to do instead."
    minutes: Minutes | None = None
    "Added work."
    safety: bool = False
    "True for cautions that protect people; printed on every sheet they touch."


class Expected(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """What a solved case says should come out; every part optional."""

    causes: tuple[str, ...] = ()
    "All that are present."
    also: tuple[str, ...] = ()
    "Other causes a source accepts."
    clean: bool = False
    "Nothing may be named but leaving alone."
    methods: tuple[str, ...] = ()
    verdict: tuple[str, ...] = ()
    "One verdict, or several any of which will do."
    amounts: tuple[ExpectedAmount, ...] = ()
    opened_once: tuple[str, ...] = ()
    "Seams the plan must open exactly once."


class ExpectedAmount(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    method: str
    at: str
    each_mm: LengthMm | None = msgspec.field(default=None, name="each")
    total_mm: LengthMm | None = msgspec.field(default=None, name="total")
    stations: tuple[tuple[float, LengthMm], ...] = ()
    "(share of the way from the first station to the last, offset)."
    within_mm: LengthMm = msgspec.field(default_factory=lambda: LengthMm(0.5), name="within")


class SolvedCase(Entry, frozen=True, kw_only=True):
    """A case with its known answer, run by `fitdoctor evaluate`."""

    words: str = ""
    "What a person said, for the search to be tried on."
    words_lead_to: tuple[str, ...] = ()
    "Symptoms the words should find among the first three."
    garment: str
    facts: dict[str, str] = {}
    seen: tuple[str, ...] = ()
    looked: tuple[str, ...] = ()
    not_seen: tuple[str, ...] = ()
    answers: dict[str, str] = {}
    measured: dict[str, str] = {}
    treat: tuple[str, ...] = ()
    methods: dict[str, str] = {}
    expect: Expected = Expected()
    held_back: bool = False
    note: str = ""


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
