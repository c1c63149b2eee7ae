"""Solved cases that name what is not there."""

from __future__ import annotations

from collections.abc import Iterator

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.checks.links import ALL_KINDS, NOT_KNOWN, one_of
from fitdoctor.knowledge.checks.rule import Finding, Look, rule
from fitdoctor.knowledge.entries import SolvedCase
from fitdoctor.knowledge.knowledge import COMMON_PRACTICE
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.read.case_file import ANSWERS, VIEWS, measured_in
from fitdoctor.knowledge.references import Path_, references

VERDICTS = ("CAN", "CAN_WITHIN_LIMITS", "NEEDS_CARE", "CANNOT", "NOT_KNOWN", "LEAVE_ALONE")


@rule("case")
def case_names_what_is_not_there(look: Look) -> Iterator[Finding]:
    """A solved case names an entry, a value, a word or a length that is not one."""
    known = {kind: look.knowledge.kind(kind).keys() for kind in ALL_KINDS} | {"sources": {*look.knowledge.sources, COMMON_PRACTICE}}
    seams = {seam.id for garment in look.knowledge.garments.values() for seam in garment.seams}
    for case in look.knowledge.cases.values():
        for to in references(case):
            if to.id not in known[to.kind] and to.id not in look.unsound:
                text = f"there is no {one_of(to.kind)} ‘{to.id}’{did_you_mean(to.id, known[to.kind])}"
                yield Finding("cases", case.id, text, to.path)
        for path, word, allowed in (*_words(case), *_values(look, case)):
            if word not in allowed:
                yield Finding("cases", case.id, f"‘{word}’ is none of {', '.join(allowed)}{did_you_mean(word, allowed)}", path)
        for number, seam in enumerate(case.expect.opened_once):
            if seam not in seams:
                yield Finding("cases", case.id, f"there is no seam ‘{seam}’{did_you_mean(seam, seams)}", ("expect", "opened_once", number))
        yield from _unreadable_lengths(case)


@rule("case-expects-nothing")
def case_that_expects_nothing(look: Look) -> Iterator[Finding]:
    """A solved case that could not fail."""
    for case in look.knowledge.cases.values():
        expect = case.expect
        if not (expect.causes or expect.clean or expect.verdict or expect.amounts or expect.methods or case.words_lead_to):
            yield Finding("cases", case.id, "this case expects nothing, so it could not fail")


def _words(case: SolvedCase) -> Iterator[tuple[Path_, str, tuple[str, ...]]]:
    for number, view in enumerate(case.looked):
        yield ("looked", number), view, VIEWS
    for check, answer in case.answers.items():
        yield ("answers", check), answer, ANSWERS
    for number, level in enumerate(case.expect.verdict):
        yield ("expect", "verdict", number), level, VERDICTS


def _values(look: Look, case: SolvedCase) -> Iterator[tuple[Path_, str, tuple[str, ...]]]:
    for fact, value in case.facts.items():
        feature = look.knowledge.features.get(fact)
        if feature:
            yield ("facts", fact), value, (*(v.id for v in feature.values), NOT_KNOWN)


def _unreadable_lengths(case: SolvedCase) -> Iterator[Finding]:
    for measurement, text in case.measured.items():
        try:
            measured_in(text)
        except FitdoctorError as error:
            yield Finding("cases", case.id, f"{measurement}: {error}", ("measured", measurement))
