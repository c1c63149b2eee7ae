"""Reading: plain text, every problem with its line, layers one over another."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.entries import LengthMm
from fitdoctor.knowledge.read import document as document_room
from fitdoctor.knowledge.read import read_knowledge, read_solved_cases, shipped_folder
from fitdoctor.knowledge.read.document import DEEPEST, MOST_ALIASES, parse_document, read_document

Plain = dict[str, dict[str, dict[str, Any]]]
Write = Callable[[Plain], Path]


def refused(text: str) -> tuple[int, str]:
    """Line and words of the one problem a text is refused for."""
    document = parse_document(Path("x.yaml"), text)
    assert document.plain is None
    (problem,) = document.problems
    return problem.line, problem.text


def test_scalars_stay_text() -> None:
    text = "answer: no\ntime: 12:30\nnumber: 1e3\nempty:\ndate: 2001-01-01\nnothing: ~\noctal: 010\n"
    plain = parse_document(Path("x.yaml"), text).plain
    assert plain == {
        "answer": "no", "time": "12:30", "number": "1e3", "empty": "", "date": "2001-01-01", "nothing": "~", "octal": "010",
    }  # fmt: skip


def test_the_same_key_twice_is_refused_with_its_line() -> None:
    assert refused("a: 1\nb:\n  c: 1\n  c: 2\n") == (4, "the key ‘c’ stands here twice")


@pytest.mark.parametrize("tag", ["!!python/object/apply:os.system [ls]", "!!int 3", "!!str x", "! x", "!mine {a: b}", "!!binary aGk="])
def test_any_tag_is_refused(tag: str) -> None:
    line, text = refused(f"a: 1\nb: {tag}\n")
    assert line == 2
    assert "tag" in text


def test_a_few_aliases_are_understood_and_many_refused() -> None:
    few = parse_document(Path("x.yaml"), "a: &x [1, 2]\nb: *x\n")
    assert few.plain == {"a": ["1", "2"], "b": ["1", "2"]}
    line, text = refused("a: &x 1\nb:\n" + "- *x\n" * (MOST_ALIASES + 1))
    assert (line, text) == (3 + MOST_ALIASES, f"more than {MOST_ALIASES} aliases")


def test_an_alias_that_holds_itself_is_refused() -> None:
    assert "nested" in refused("a: &x [*x]\n")[1]


def test_swelling_by_aliases_stays_small() -> None:
    lines = ["a0: &a0 [x, x]"] + [f"a{n}: &a{n} [*a{n - 1}, *a{n - 1}]" for n in range(1, MOST_ALIASES // 2 + 1)]
    document = parse_document(Path("x.yaml"), "\n".join(lines))
    assert document.plain is not None
    assert len(json.dumps(document.plain)) < 200_000


@pytest.mark.parametrize("nested", ["[" * 60_000, "- " * 60_000 + "a", "{a: " * 5_000, "[" * (DEEPEST + 2) + "]" * (DEEPEST + 2)])
def test_deep_nesting_is_refused(nested: str) -> None:
    assert refused(f"a: 1\nb: {nested}")[0] >= 1


def test_a_second_document_and_broken_yaml_are_refused_with_their_line() -> None:
    assert refused("a: 1\n---\nb: 2\n")[0] == 2
    assert refused("a: 1\nb: [1, 2\nc: 3\n")[0] == 3
    assert refused("") == (1, "the file is empty")


def test_what_is_not_utf8_is_refused_with_its_line(tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    file.write_bytes(b"id: x\ntitle: Gr\xfcn\n")
    (problem,) = read_document(file).problems
    assert (problem.line, problem.text) == (2, "the file is not UTF-8 text; save it as UTF-8")


def test_a_byte_order_mark_is_passed_over(tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    file.write_bytes(b"\xef\xbb\xbfid: x\n")
    assert read_document(file).plain == {"id": "x"}


def test_a_huge_file_is_refused_unread(tmp_path: Path) -> None:
    file = tmp_path / "x.yaml"
    file.write_text("a: " + "b" * 300_000)
    assert "larger than 256 KB" in read_document(file).problems[0].text


def test_without_libyaml_the_same_is_read(small: Plain, written: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = written(small)
    fast = read_knowledge([folder])
    monkeypatch.setattr(document_room, "_Loader", yaml.BaseLoader)
    assert read_knowledge([folder]) == fast


def test_a_missing_libyaml_is_said_aloud(small: Plain, written: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = written(small)
    monkeypatch.setattr("fitdoctor.knowledge.read.folders.HAS_LIBYAML", False)
    with pytest.warns(RuntimeWarning, match="libyaml"):
        read_knowledge([folder])


def test_lengths_are_read_with_their_unit_and_trees_with_one_word_or_several(small: Plain, written: Write) -> None:
    knowledge = read_knowledge([written(small)])
    assert knowledge.measurements["tuck"].usual_mm == (LengthMm(6), LengthMm(25.4))
    assert knowledge.causes["too-tight"].impossible_if[0].is_ == ("none",)
    when = knowledge.conditions["no-needle-holes"].when
    assert when is not None
    assert [test.is_ for test in when.any] == [(), ("lined",)]


def test_all_problems_of_all_files_come_out_in_one_run(small: Plain, written: Write) -> None:
    small["symptoms"]["folds"] |= {"vjew": "back", "line": "foldd", "garments": "skirt"}
    del small["symptoms"]["folds"]["zone"]
    small["measurements"]["tuck"]["tolerance"] = "2"
    small["checks"]["pin"]["minutes"] = "two"
    small["causes"]["too-long"]["shows_as"][0]["strengthh"] = "usually"
    knowledge = read_knowledge([written(small)])
    assert [(p.file.name, p.text) for p in knowledge.problems] == [
        ("folds.yaml", "there is no field ‘vjew’ (did you mean ‘view’?)"),
        ("folds.yaml", "garments: ‘skirt’ stands where a list is wanted"),
        ("folds.yaml", "the field ‘zone’ is missing"),
        ("folds.yaml", "line: ‘foldd’ is none of fold, strain, gape, droop, swing, twist, ripple, step (did you mean ‘fold’?)"),
        ("too-long.yaml", "there is no field ‘strengthh’ in shows_as.1 (did you mean ‘strength’?)"),
        ("pin.yaml", "minutes: ‘two’ is not a number"),
        ("tuck.yaml", "tolerance: ‘2’ needs a unit: mm, cm or in."),
    ]
    assert "pulls" in knowledge.symptoms


def test_minutes_that_are_no_number_of_this_world_are_refused(small: Plain, written: Write) -> None:
    small["checks"]["pin"]["minutes"] = "nan"
    small["methods"]["let-out"]["operations"][0]["minutes"] = ["1", "2", "inf"]
    problems = read_knowledge([written(small)]).problems
    assert [p.text for p in problems] == ["minutes: ‘nan’ is not a number", "operations.1.minutes.3: ‘inf’ is not a number"]


def test_a_problem_stands_at_the_line_of_its_key(tmp_path: Path) -> None:
    file = tmp_path / "checks" / "pin.yaml"
    file.parent.mkdir()
    file.write_text("# a comment\nid: pin\ntitle: Pin\nask: Pin. Does it go?\nneeds: wearer\nminutes: 2\nlevel: 3\nshort: " + "x" * 40)
    problems = read_knowledge([tmp_path]).problems
    assert [(p.line, p.rule) for p in problems] == [(7, "record"), (8, "record")]


def test_the_id_must_be_the_name_of_the_file_and_stand_once(small: Plain, written: Write) -> None:
    folder = written(small)
    (folder / "checks" / "waist").mkdir()
    text = (folder / "checks" / "pin.yaml").read_text()
    (folder / "checks" / "waist" / "pin.yaml").write_text(text)
    (folder / "checks" / "needle.yaml").write_text(text)
    problems = read_knowledge([folder]).problems
    assert sorted(p.rule for p in problems) == ["id", "twice", "twice"]
    assert "the id is ‘pin’ but the file is called needle.yaml; the two must agree" in [p.text for p in problems]


def test_what_would_be_passed_over_in_silence_is_reported(small: Plain, written: Write) -> None:
    folder = written(small)
    (folder / "symptom").mkdir()
    (folder / "symptom" / "lost.yaml").write_text("id: lost\n")
    (folder / "source.yaml").write_text("a: b\n")
    assert sorted(p.text for p in read_knowledge([folder]).problems) == [
        "there is no kind of entry ‘symptom’ (did you mean ‘symptoms’?)",
        "‘source.yaml’ belongs in the folder of its kind (did you mean ‘sources.yaml’?)",
    ]


def test_a_shops_own_folder_lies_over_the_shipped_one(small: Plain, written: Callable[[Plain, str], Path]) -> None:
    shipped = written(small, "shipped")
    own = {"checks": {"pin": small["checks"]["pin"] | {"title": "Pin it our way"}, "pull": small["checks"]["pin"] | {"id": "pull"}}}
    knowledge = read_knowledge([shipped, written(own, "own")])
    assert not knowledge.problems
    assert knowledge.checks["pin"].title == "Pin it our way"
    assert set(knowledge.checks) == {"pin", "pull"}
    assert knowledge.places[("checks", "pin")].file.is_relative_to(shipped.parent / "own")
    assert set(knowledge.symptoms) == {"folds", "pulls"}


def test_places_tell_where_an_entry_was_read(small: Plain, written: Write) -> None:
    folder = written(small)
    (folder / "checks" / "pull.yaml").write_text("# Level.\n\nid: pull\ntitle: Pull\nask: Pull. Does it go?\nminutes: 1\nneeds: wearer\n")
    place = read_knowledge([folder]).places[("checks", "pull")]
    assert (place.file, place.line) == (folder / "checks" / "pull.yaml", 3)


def test_reading_tells_how_far_it_is_and_can_be_stopped(small: Plain, written: Write) -> None:
    folder = written(small)
    told: list[tuple[int, int]] = []

    def tell(done: int, whole: int) -> bool:
        told.append((done, whole))
        return True

    read_knowledge([folder], tell)
    files = len(list(folder.rglob("*/*.yaml")))
    assert told == [(number, files) for number in range(1, files + 1)]
    with pytest.raises(FitdoctorError, match="stopped"):
        read_knowledge([folder], lambda done, _: done < 3)


def test_a_folder_that_is_not_there_is_a_known_error(tmp_path: Path) -> None:
    with pytest.raises(FitdoctorError, match="no folder of knowledge"):
        read_knowledge([tmp_path / "nowhere"])


def test_solved_cases_of_another_folder_take_the_place_of_the_knowledges_own(small: Plain, written: Write, tmp_path: Path) -> None:
    knowledge = read_knowledge([written(small)])
    other = tmp_path / "more"
    other.mkdir()
    (other / "b.yaml").write_text("id: b\ntitle: B\ngarment: skirt\n")
    (other / "c.yaml").write_text("id: c\ntitle: C\n")
    found = read_solved_cases(knowledge, other)
    assert set(found.cases) == {"b"}
    assert [p.text for p in found.problems] == ["the field ‘garment’ is missing"]
    assert found.places[("cases", "b")].file == other / "b.yaml"


def test_the_shipped_knowledge_is_found() -> None:
    assert (shipped_folder() / "scale.yaml").is_file()
