"""`fitdoctor search`: words, filters, or both."""

from __future__ import annotations

import json

import pytest

from fitdoctor.cli import DONE, INPUT_HAS_PROBLEMS, main
from fitdoctor.knowledge.filters import Facets, Filter
from fitdoctor.knowledge.knowledge import Knowledge

Capture = pytest.CaptureFixture[str]


def found(capsys: Capture, *args: str) -> list[dict[str, str]]:
    assert main(["search", *args, "--json"]) == DONE
    hits: list[dict[str, str]] = json.loads(capsys.readouterr().out)
    return hits


def test_filters_narrow_what_words_find(capsys: Capture, knowledge: Knowledge) -> None:
    hits = found(capsys, "tight", "--garment", "skirt", "--region", "waist", "--kind", "methods")
    passing = Facets(knowledge).passing(Filter("methods", "skirt", "waist"))
    assert hits
    assert {(hit["kind"], hit["id"]) for hit in hits} <= passing


def test_without_words_everything_that_passes_is_listed(capsys: Capture, knowledge: Knowledge) -> None:
    hits = found(capsys, "--cloth", "leather", "--kind", "conditions")
    assert {(hit["kind"], hit["id"]) for hit in hits} == Facets(knowledge).passing(Filter("conditions", cloth="leather"))


def test_a_source_is_found_and_shown(capsys: Capture, knowledge: Knowledge) -> None:
    first = found(capsys, "hertzer", "1892", "--kind", "sources")[0]["id"]
    assert main(["show", f"sources/{first}"]) == DONE
    said = capsys.readouterr().out
    assert knowledge.sources[first].title in said
    assert "Hertzer" in said


def test_no_more_are_found_than_asked_for(capsys: Capture) -> None:
    assert len(found(capsys, "waist", "--most", "3")) == 3


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (["x", "--garment", "skrit"], "did you mean ‘skirt’"),
        (["x", "--region", "waste"], "did you mean ‘waist’"),
        (["x", "--cloth", "velvit"], "did you mean ‘velvet’"),
        ([], "Nothing to look for"),
    ],
)
def test_a_filter_that_names_nothing_is_answered_with_what_there_is(capsys: Capture, args: list[str], said: str) -> None:
    assert main(["search", *args]) == INPUT_HAS_PROBLEMS
    assert said in capsys.readouterr().err


def test_a_kind_that_is_none_is_wrong_use() -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["search", "x", "--kind", "sings"])
    assert stopped.value.code == 2
