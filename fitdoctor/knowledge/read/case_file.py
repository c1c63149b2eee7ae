"""Case files: one garment on one wearer as a person writes it, checked against the knowledge; and back to text."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any, cast

import msgspec

from fitdoctor.case import Answer, Case, Measured
from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import LengthMm, SolvedCase, View
from fitdoctor.knowledge.knowledge import Knowledge, Problem
from fitdoctor.knowledge.nearest import did_you_mean
from fitdoctor.knowledge.read.document import Document, read_document, write_document
from fitdoctor.knowledge.read.records import Fault, Path_, length_with_unit, record

ANSWERS = ("yes", "no", "not-known")
VIEWS = ("front", "back", "side")


class Reading(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A measured length: as it counts, or as the depth of a pinned fold; with its own give or take."""

    length: LengthMm | None = None
    depth: LengthMm | None = None
    give: LengthMm | None = None


class CaseFile(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A case as it is written."""

    garment: str
    title: str = ""
    wearer: str = ""
    facts: dict[str, str] = {}
    seen: tuple[str, ...] = ()
    looked: tuple[View, ...] = ()
    not_seen: tuple[str, ...] = ()
    unsure: tuple[str, ...] = ()
    answers: dict[str, str] = {}
    measured: dict[str, str | Reading] = {}
    treat: tuple[str, ...] = ()
    left_alone: tuple[str, ...] = ()
    methods: dict[str, str] = {}
    past_limits: tuple[str, ...] = ()
    notes: str = ""
    done: tuple[str, ...] = ()


_LISTS = ("seen", "looked", "not_seen", "unsure", "treat", "left_alone", "past_limits", "done")
_ONLY_SOLVED = frozenset(SolvedCase.__struct_fields__) - frozenset(CaseFile.__struct_fields__)


def read_case_file(path: Path, knowledge: Knowledge) -> tuple[Case, list[Problem]]:
    """Read a case; what is not sound is left out of it and reported with its line.

    A solved case may be read too: what should come out of it is passed over. Ids from before a rename are understood.
    """
    document = _as_case(read_document(path))
    file, problems = record(document, CaseFile)
    if file is None:
        return Case(garment=""), list(problems)
    checked = _Checked(knowledge)
    case = checked.case(file)
    return case, [document.problem(fault.path, fault.text, "case") for fault in checked.faults]


def write_case_file(case: Case) -> str:
    """A case as YAML; reading it again gives the same case, to the last digit."""
    plain: dict[str, Any] = {"garment": case.garment}
    for name in Case.__struct_fields__:
        value = getattr(case, name)
        if name == "measured":
            value = {id_: _written(measured) for id_, measured in value.items()}
        if value and name != "garment":
            plain[name] = list(value) if isinstance(value, tuple) else value
    return write_document(plain)


def case_of(solved: SolvedCase) -> Case:
    """A solved case as it would be entered, without what should come out.

    Raises:
        FitdoctorError: a length cannot be read.
    """
    return Case(
        garment=solved.garment,
        title=solved.title,
        facts=solved.facts,
        seen=solved.seen,
        looked=solved.looked,
        not_seen=solved.not_seen,
        answers=cast(dict[str, Answer], solved.answers),
        measured={id_: measured_in(text) for id_, text in solved.measured.items()},
        treat=solved.treat,
        methods=solved.methods,
    )


def measured_in(text: str) -> Measured:
    """A length with its unit, and its give or take after ± where it has one: `1 1/2 in ± 1/8 in`.

    Raises:
        FitdoctorError: it cannot be read.
    """
    length, _, give = text.partition("±")
    return Measured(length_with_unit(length), length_with_unit(give) if give else None)


def _as_case(document: Document) -> Document:
    """One word where a list is wanted becomes a list of one; of a solved case only the case stays."""
    if not isinstance(document.plain, dict):
        return document
    dropped = _ONLY_SOLVED if "expect" in document.plain else frozenset()
    plain = {
        key: [value] if key in _LISTS and isinstance(value, str) and value else value
        for key, value in document.plain.items()
        if key not in dropped
    }
    return Document(document.file, document.text, plain, document.problems)


def _written(measured: Measured) -> Any:
    length = _mm(measured.mm)
    return length if measured.give_mm is None else {"length": length, "give": _mm(measured.give_mm)}


def _mm(value: float) -> str:
    return f"{format(Decimal(repr(value)), 'f')} mm"


@dataclass
class _Checked:
    """Holds every id of a case against the knowledge; the faults gather here."""

    knowledge: Knowledge
    faults: list[Fault] = field(default_factory=list)

    def case(self, file: CaseFile) -> Case:
        """The case with all that is sound."""
        return Case(
            garment=self._known("garments", file.garment, ("garment",)),
            title=file.title,
            wearer=file.wearer,
            facts=dict(self._facts(file.facts)),
            seen=self._all_known("symptoms", "seen", file.seen),
            looked=file.looked,
            not_seen=self._all_known("symptoms", "not_seen", file.not_seen),
            unsure=self._all_known("symptoms", "unsure", file.unsure),
            answers=dict(self._answers(file.answers)),
            measured=dict(self._measured(file.measured)),
            treat=self._all_known("causes", "treat", file.treat),
            left_alone=self._all_known("causes", "left_alone", file.left_alone),
            methods=dict(self._methods(file.methods)),
            past_limits=self._all_known("conditions", "past_limits", file.past_limits),
            notes=file.notes,
            done=file.done,
        )

    def _fault(self, path: Path_, text: str) -> None:
        self.faults.append(Fault(path, text))

    def _known(self, kind: str, id_: str, path: Path_) -> str:
        known = self.knowledge.kind(kind)
        if id_ in known:
            return id_
        now = self.knowledge.renamed.get((kind, id_))
        if now:
            return now
        self._fault(path, f"there is no {kind.removesuffix('s')} ‘{id_}’{did_you_mean(id_, known)}")
        return ""

    def _all_known(self, kind: str, name: str, ids: Iterable[str]) -> tuple[str, ...]:
        found = (self._known(kind, id_, (name, number)) for number, id_ in enumerate(ids))
        return tuple(dict.fromkeys(id_ for id_ in found if id_))

    def _facts(self, facts: Mapping[str, str]) -> Iterator[tuple[str, str]]:
        for feature, value in facts.items():
            id_ = self._known("features", feature, ("facts", feature))
            if not id_ or value == "not-known":
                continue
            values = [v.id for v in self.knowledge.features[id_].values]
            if value in values:
                yield id_, value
            else:
                self._fault(("facts", feature), f"‘{feature}’ is none of {', '.join(values)}: ‘{value}’{did_you_mean(value, values)}")

    def _answers(self, answers: Mapping[str, str]) -> Iterator[tuple[str, Answer]]:
        for check, answer in answers.items():
            id_ = self._known("checks", check, ("answers", check))
            if answer not in ANSWERS:
                self._fault(("answers", check), f"the answer to ‘{check}’ is yes, no or not-known, not ‘{answer}’")
            elif id_:
                yield id_, cast(Answer, answer)

    def _methods(self, methods: Mapping[str, str]) -> Iterator[tuple[str, str]]:
        for cause, method in methods.items():
            at = ("methods", cause)
            pair = self._known("causes", cause, at), self._known("methods", method, at)
            if all(pair):
                yield pair

    def _measured(self, measured: Mapping[str, str | Reading]) -> Iterator[tuple[str, Measured]]:
        for measurement, said in measured.items():
            id_ = self._known("measurements", measurement, ("measured", measurement))
            try:
                reading = measured_in(said) if isinstance(said, str) else self._reading(id_, said)
            except FitdoctorError as error:
                self._fault(("measured", measurement), f"{measurement}: {error}")
                continue
            if id_:
                yield id_, reading

    def _reading(self, id_: str, said: Reading) -> Measured:
        """The depth of a pinned fold counts double, and so does its give or take."""
        if said.depth is None and said.length is not None:
            return Measured(said.length, said.give)
        if said.depth is None or said.length is not None:
            raise FitdoctorError("Give either its length or its depth.", "Such as {length: 3/4 in} or {depth: 3/8 in}.")
        if id_ and self.knowledge.measurements[id_].sense != "depth-or-all":
            raise FitdoctorError("Only a pinned fold has a depth.", "Write its length.")
        return Measured(2 * said.depth, None if said.give is None else 2 * said.give)
