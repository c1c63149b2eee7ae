"""The record of a solved case: a case with its known answer."""

from __future__ import annotations

import msgspec

from fitdoctor.knowledge.entry import Entry, LengthMm


class ExpectedAmount(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    method: str
    at: str
    each_mm: LengthMm | None = msgspec.field(default=None, name="each")
    total_mm: LengthMm | None = msgspec.field(default=None, name="total")
    stations: tuple[tuple[float, LengthMm], ...] = ()
    "(share of the way from the first station to the last, offset)."
    within_mm: LengthMm = msgspec.field(default_factory=lambda: LengthMm(0.5), name="within")


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
