"""What a rule is: a small function that looks over the knowledge and yields findings; registered under the name of what it finds."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from fitdoctor.amounts.marks import Calculator
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.references import Path_


@dataclass(frozen=True)
class Finding:
    """One thing wrong: in which entry, at which place of it, and what."""

    kind: str
    id: str
    text: str
    path: Path_ = ()


@dataclass(frozen=True)
class Look:
    """What a rule looks at.

    Attributes:
        knowledge: all that was read.
        calculators: by name; None where they are not at hand and what needs them is passed over.
        unsound: file stems of entries that could not be read; links to them are not reported a second time.
    """

    knowledge: Knowledge
    calculators: Mapping[str, Calculator] | None = None
    unsound: frozenset[str] = frozenset()


Rule = Callable[[Look], Iterator[Finding]]

RULES: dict[str, Rule] = {}
ON_ASKING: dict[str, Rule] = {}
"""Rules that run only when they are asked for by name."""


def rule(name: str, on_asking: bool = False) -> Callable[[Rule], Rule]:
    """Register a rule under the name of what it finds."""

    def register(function: Rule) -> Rule:
        (ON_ASKING if on_asking else RULES)[name] = function
        return function

    return register
