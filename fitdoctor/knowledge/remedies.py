"""The records of what is done and what it needs: methods with their operations, conditions."""

from __future__ import annotations

from typing import Literal

import msgspec

from fitdoctor.knowledge.entry import Effect, Entry, Id, LengthMm, Minutes, Skill, Stage, Text, When


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
