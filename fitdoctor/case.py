"""A case: one garment on one wearer, with what is known, seen, answered and measured."""

from __future__ import annotations

from typing import Literal

import msgspec

Answer = Literal["yes", "no", "not-known"]


class Measured(msgspec.Struct, frozen=True):
    """One measured length.

    Attributes:
        mm: the length in the sense its measurement counts in (a tuck: taken up in all).
        give_mm: give or take, mm; None stands for the measurement's own tolerance.
    """

    mm: float
    give_mm: float | None = None


class Case(msgspec.Struct, frozen=True, kw_only=True):
    """One garment on one wearer. Ids refer to entries of the knowledge.

    Attributes:
        garment: garment id.
        title: the garment in a few words; wearer: initials or ticket number only.
        facts: feature id -> value id; a feature not in it is not known.
        seen: symptom ids.
        looked: views looked over ("nothing else there"); what is not seen there counts as absent.
        not_seen: symptoms answered no one by one.
        unsure: symptoms looked for of which one cannot tell; they change nothing and are not asked again.
        answers: check id -> yes, no or not-known.
        measured: measurement id -> length.
        treat: cause ids to treat; empty means the likely ones.
        left_alone: cause ids that are left as they are by choice, likely or not.
        methods: cause id -> method id chosen for it.
        past_limits: condition ids the fitter decided to go past this once.
        notes: free text, and lines seen that no symptom fits.
        done: operation ids ticked off.
    """

    garment: str
    title: str = ""
    wearer: str = ""
    facts: dict[str, str] = {}
    seen: tuple[str, ...] = ()
    looked: tuple[str, ...] = ()
    not_seen: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()
    answers: dict[str, Answer] = {}
    measured: dict[str, Measured] = {}
    treat: tuple[str, ...] = ()
    left_alone: tuple[str, ...] = ()
    methods: dict[str, str] = {}
    past_limits: tuple[str, ...] = ()
    notes: str = ""
    done: tuple[str, ...] = ()
