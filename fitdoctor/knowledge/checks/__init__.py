"""What must hold over the whole of the knowledge: every rule runs, every problem comes out in one run."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from pathlib import Path

from fitdoctor.amounts.marks import Calculator
from fitdoctor.knowledge.checks import cases, causes, conditions, figures, links, look_alikes, methods  # noqa: F401  (each registers its rules)
from fitdoctor.knowledge.checks.claims import unsourced
from fitdoctor.knowledge.checks.rule import ON_ASKING, RULES, Finding, Look, Rule
from fitdoctor.knowledge.knowledge import Knowledge, Problem
from fitdoctor.knowledge.read import line_in

__all__ = ["ON_ASKING", "RULES", "check_cases", "check_knowledge", "unsourced"]

_OF_CASES = ("case", "case-expects-nothing")


def check_knowledge(
    knowledge: Knowledge, calculators: Mapping[str, Calculator] | None = None, also: Collection[str] = ()
) -> tuple[Problem, ...]:
    """Every problem: those met while reading and those of the whole, by file and line.

    Args:
        calculators: by name; without them nothing is said about amounts.
        also: names of rules of ON_ASKING to run as well.
    """
    rules: dict[str, Rule] = {**RULES, **{name: ON_ASKING[name] for name in also}}
    return _in_order([*knowledge.problems, *_problems(knowledge, calculators, rules)])


def check_cases(knowledge: Knowledge) -> tuple[Problem, ...]:
    """What is wrong with the solved cases alone: unreadable files, and cases that name what is not there or expect nothing."""
    unread = [problem for problem in knowledge.problems if not _of_an_entry(knowledge, problem)]
    return _in_order([*unread, *_problems(knowledge, None, {name: run for name, run in RULES.items() if name in _OF_CASES})])


def _of_an_entry(knowledge: Knowledge, problem: Problem) -> bool:
    """Whether a problem of reading lies in a file of the knowledge proper."""
    folders = {place.file.parent for (kind, _), place in knowledge.places.items() if kind != "cases"}
    return any(problem.file.is_relative_to(folder) for folder in folders)


def _problems(knowledge: Knowledge, calculators: Mapping[str, Calculator] | None, rules: Mapping[str, Rule]) -> Iterator[Problem]:
    look = Look(knowledge, calculators, frozenset(problem.file.stem for problem in knowledge.problems))
    for name, run in rules.items():
        for finding in run(look):
            yield _problem(knowledge, name, finding)


def _in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(problems, key=lambda problem: (str(problem.file), problem.line, problem.text)))


def _problem(knowledge: Knowledge, name: str, finding: Finding) -> Problem:
    """A finding with its file and line; in knowledge that was never read from files the entry's usual place stands in."""
    place = knowledge.places.get((finding.kind, finding.id))
    if place is None:
        return Problem(Path(finding.kind, f"{finding.id}.yaml"), 1, finding.text, name)
    line = line_in(place.file, *finding.path) if finding.path else place.line
    return Problem(place.file, line, finding.text, name)
