"""Whatever stands in a file, reading reports it and never falls over."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fitdoctor.knowledge.entries import KINDS
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_case_file
from fitdoctor.knowledge.read.case_file import CaseFile
from fitdoctor.knowledge.read.document import parse_document
from fitdoctor.knowledge.read.records import record

YAMLISH = st.text(st.sampled_from(list("ab: -[]{}\n\t,#&*!|>'\"%@?~\\0é\x00\u2028")), max_size=60)
VALUES = st.recursive(
    st.text(max_size=6) | st.sampled_from(["1", "nan", "yes", "3 mm", "-", "back"]),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=6), inner, max_size=3),
    max_leaves=8,
)
FILE = Path("x.yaml")


@given(text=YAMLISH | st.text(max_size=60))
def test_any_text_becomes_plain_values_or_a_problem(text: str) -> None:
    document = parse_document(FILE, text)
    assert (document.plain is None) == bool(document.problems)
    assert all(1 <= problem.line <= len(text) + 2 for problem in document.problems)


@pytest.mark.parametrize("kind", [*KINDS, "case-file"])
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=60)
@given(data=st.data())
def test_any_values_become_a_record_or_problems_that_say_where(kind: str, data: st.DataObject) -> None:
    wanted: Any = KINDS.get(kind, CaseFile)
    names = [*wanted.__struct_fields__, "sean"]
    values = data.draw(st.dictionaries(st.sampled_from(names), VALUES, max_size=8) | VALUES)
    entry, problems = record(parse_document(FILE, json.dumps(values)), wanted)
    assert (entry is None) == bool(problems)
    assert all(problem.text and "msgspec" not in problem.text for problem in problems)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(values=st.dictionaries(st.sampled_from(list(CaseFile.__struct_fields__)), VALUES, max_size=6))
def test_any_case_file_is_read_as_far_as_it_goes(values: dict[str, Any], tmp_path: Path) -> None:
    file = tmp_path / "case.yaml"
    file.write_text(json.dumps(values), encoding="utf-8")
    case, problems = read_case_file(file, Knowledge())
    assert problems, case
