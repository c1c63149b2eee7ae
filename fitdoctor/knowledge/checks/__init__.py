"""What must hold over the whole of the knowledge: every rule runs, every problem comes out in one run."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from pathlib import Path

from fitdoctor.amounts.marks import Calculator
from fitdoctor.knowledge.checks import cases, causes, conditions, figures, links, look_alikes, methods  # noqa: F401  (each registers its rules)
from fitdoctor.knowledge.checks.claims import unsourced
from fitdoctor.knowledge.checks.rule import ON_ASKING, RULES, Finding, Look, Rule
from fitdoctor.knowledge.knowledge import Knowledge, Problem
from fitdoctor.knowledge.read import line_in

__all__ = ["ON_ASKING", "RULES", "check_knowledge", "unsourced"]


def check_knowledge(
    knowledge: Knowledge, calculators: Mapping[str, Calculator] | None = None, also: Collection[str] = ()
) -> tuple[Problem, ...]:
    """Every problem: those met while reading and those of the whole, by file and line.

    Args:
        calculators: by name; without them nothing is said about amounts.
        also: names of rules of ON_ASKING to run as well.
    """
    look = Look(knowledge, calculators, frozenset(problem.file.stem for problem in knowledge.problems))
    rules: dict[str, Rule] = {**RULES, **{name: ON_ASKING[name] for name in also}}
    found = [_problem(knowledge, name, finding) for name, finding in _findings(look, rules)]
    return tuple(sorted([*knowledge.problems, *found], key=lambda problem: (str(problem.file), problem.line, problem.text)))


def _findings(look: Look, rules: Mapping[str, Rule]) -> Iterator[tuple[str, Finding]]:
    for name, run in rules.items():
        for finding in run(look):
            yield name, finding


def _problem(knowledge: Knowledge, name: str, finding: Finding) -> Problem:
    """A finding with its file and line; in knowledge that was never read from files the entry's usual place stands in."""
    place = knowledge.places.get((finding.kind, finding.id))
    if place is None:
        return Problem(Path(finding.kind, f"{finding.id}.yaml"), 1, finding.text, name)
    line = line_in(place.file, *finding.path) if finding.path else place.line
    return Problem(place.file, line, finding.text, name)
