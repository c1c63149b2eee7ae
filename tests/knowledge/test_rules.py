"""Every rule fires on its broken example and on nothing else."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from fitdoctor.amounts.marks import Calculation, Calculator, Length
from fitdoctor.knowledge.checks import ON_ASKING, RULES, check_cases, check_knowledge, unsourced
from fitdoctor.knowledge.knowledge import Problem
from fitdoctor.knowledge.read import read_knowledge, read_solved_cases

Plain = dict[str, dict[str, dict[str, Any]]]
Write = Callable[[Plain], Path]


def nothing(_inputs: Mapping[str, Length], _options: Mapping[str, str]) -> Calculation:
    return Calculation((), Length(0), Length(0))


PLAIN = Calculator(
    "plain", nothing, ("total",), {"length": 100.0}, ("per-side",), options={"take": ("in", "lower"), "at": ()}, optional=("limit-1",)
)
CALCULATORS = {"plain": PLAIN}


def method(plain: Plain) -> dict[str, Any]:
    return plain["methods"]["lower-waist"]


def copy_of(plain: Plain, kind: str, id_: str, **changes: Any) -> None:
    new = plain[kind][id_] | changes
    plain[kind][new["id"]] = new


def no_cause_for(plain: Plain) -> None:
    copy_of(plain, "symptoms", "folds", id="twist", title="Twist")


def cause_seen_nowhere(plain: Plain) -> None:
    plain["causes"]["too-tight"]["shows_as"] = []
    plain["causes"]["too-long"]["shows_as"].append({"symptom": "pulls", "strength": "seldom", "sources": ["book"]})


def untold(plain: Plain) -> None:
    plain["causes"]["too-long"]["answers"][0]["yes"] = "sometimes"
    plain["causes"]["too-tight"]["shows_as"][0]["strength"] = "often"
    plain["causes"]["too-tight"]["answers"] = [{"check": "pin", "yes": "sometimes", "sources": ["common-practice"]}]


def needless(plain: Plain) -> None:
    plain["causes"]["too-long"]["told_apart"] = [{"cause": "too-tight", "by": "Nothing parts them."}]


def circle(plain: Plain) -> None:
    method(plain)["operations"][0]["after"] = ["sew"]


def two_tests(plain: Plain) -> None:
    plain["conditions"]["no-needle-holes"]["when"]["any"][1] = {"fact": "lining", "is": ["lined"], "garment": "skirt"}


def never(plain: Plain) -> None:
    lined, unlined = ({"fact": "lining", "is": value} for value in ("lined", "none"))
    plain["conditions"]["no-needle-holes"]["when"] = {"all": [lined, unlined]}


def no_drawing(_plain: Plain) -> None:
    """The small knowledge has none."""


def set_to(*path: str | int, value: Any) -> Callable[[Plain], None]:
    """A change of one value."""

    def change(plain: Plain) -> None:
        inside: Any = plain
        for step in path[:-1]:
            inside = inside[step]
        inside[path[-1]] = value

    return change


BROKEN: list[tuple[str, Callable[[Plain], None]]] = [
    ("link", set_to("symptoms", "folds", "mistaken_for", value=[{"symptom": "pull", "tell_apart": "Look."}])),
    ("link", set_to("methods", "lower-waist", "sources", value=["the-book"])),
    ("link", set_to("features", "lining", "garments", value=["skirt", "kilt"])),
    ("word", set_to("symptoms", "folds", "leak", value="a-drop")),
    ("word", set_to("causes", "too-long", "shows_as", 0, "strength", value="uzually")),
    ("value", set_to("causes", "too-tight", "impossible_if", value=[{"fact": "lining", "is": "silk"}])),
    ("zone", set_to("symptoms", "folds", "zone", value="hem")),
    ("seam", set_to("methods", "lower-waist", "operations", 0, "opens", value=["yoke-seam"])),
    ("seam", set_to("conditions", "no-needle-holes", "applies_to", value={"seams": ["yoke-seam"]})),
    ("seam", set_to("methods", "lower-waist", "amounts", "drop", "options", value={"at": "hem"})),
    ("symptom-without-cause", no_cause_for),
    ("cause-without-symptom", cause_seen_nowhere),
    ("cause-without-method", set_to("methods", "let-out", "treats", value=[])),
    ("cause-unconfirmed", set_to("causes", "too-tight", "measure", value=[])),
    ("look-alikes", untold),
    ("needless-told-apart", needless),
    ("circle", circle),
    ("after", set_to("methods", "lower-waist", "operations", 2, "after", value=["opn"])),
    ("input", set_to("methods", "lower-waist", "amounts", "drop", "inputs", value={"total": "tucks"})),
    ("calculator", set_to("methods", "lower-waist", "amounts", "drop", "inputs", value={"total": "tuck", "along": "girth"})),
    ("calculator", set_to("methods", "lower-waist", "amounts", "drop", "options", value={"take": "lowr"})),
    ("calculator", set_to("methods", "lower-waist", "amounts", "drop", "options", value={"tak": "lower"})),
    ("amount", set_to("methods", "lower-waist", "operations", 1, "do", value="Mark {drop.slope} down.")),
    ("amount", set_to("methods", "let-out", "cloth_needed", 0, "amount", value="per-dart")),
    ("range", set_to("methods", "let-out", "operations", 0, "minutes", value=["30", "20", "60"])),
    ("range", set_to("measurements", "tuck", "possible", value=["0", "10 mm"])),
    ("tree", two_tests),
    ("tree", set_to("conditions", "no-needle-holes", "when", value={"amount": "total"})),
    ("tree", set_to("conditions", "no-needle-holes", "when", value={})),
    ("condition-on-nothing", set_to("methods", "lower-waist", "conditions", value=[])),
    ("condition-never", never),
    ("condition-never", set_to("conditions", "no-needle-holes", "when", value={"measurement": "tuck", "exceeds": "4000 mm"})),
    ("condition-amount", set_to("conditions", "no-needle-holes", "when", value={"amount": "slope-change", "exceeds": "1 in"})),
    ("claim-without-source", set_to("checks", "pin", "sources", value=[])),
    ("claim-without-source", set_to("causes", "too-long", "answers", 0, "sources", value=[])),
    ("title-twice", set_to("symptoms", "pulls", "title", value="FOLDS.")),
    ("title-missing", set_to("symptoms", "pulls", "title", value=" ")),
    ("question", set_to("checks", "pin", "ask", value="Pin a tuck.")),
    ("formerly", set_to("symptoms", "pulls", "formerly", value=["folds"])),
    ("case", set_to("cases", "a-skirt", "seen", value=["fold"])),
    ("case", set_to("cases", "a-skirt", "facts", value={"lining": "silk"})),
    ("case", set_to("cases", "a-skirt", "measured", value={"tuck": "3/4"})),
    ("case", set_to("cases", "a-skirt", "expect", "verdict", value=["YES"])),
    ("case", set_to("cases", "a-skirt", "expect", "opened_once", value=["hem"])),
    ("case-expects-nothing", set_to("cases", "a-skirt", "expect", value={})),
    ("drawing", no_drawing),
]


def problems_of(plain: Plain, written: Write, also: tuple[str, ...] = ()) -> tuple[Problem, ...]:
    return check_knowledge(read_knowledge([written(plain)]), CALCULATORS, also)


def test_the_small_knowledge_is_without_a_fault(small: Plain, written: Write) -> None:
    assert problems_of(small, written) == ()


@pytest.mark.parametrize(("rule", "breaking"), BROKEN, ids=[f"{rule}-{number}" for number, (rule, _) in enumerate(BROKEN)])
def test_a_broken_example_fires_its_rule_and_nothing_else(
    rule: str, breaking: Callable[[Plain], None], small: Plain, written: Write
) -> None:
    breaking(small)
    problems = problems_of(small, written, (rule,) if rule in ON_ASKING else ())
    assert {problem.rule for problem in problems} == {rule}, [str(p) for p in problems]


def test_every_rule_has_a_broken_example() -> None:
    elsewhere = {"source-never-used", "chance", "figure", "figure-place", "zone-not-drawn"}
    assert {rule for rule, _ in BROKEN} | elsewhere == {*RULES, *ON_ASKING}


def test_a_source_that_nobody_cites_is_reported_where_it_stands(small: Plain, written: Write) -> None:
    folder = written(small)
    (folder / "sources").mkdir()
    (folder / "sources" / "more.yaml").write_text("# more\nold-book: {title: An Old Book, kind: book}\n")
    problems = check_knowledge(read_knowledge([folder]), CALCULATORS)
    assert [(p.file.name, p.line, p.rule) for p in problems] == [("more.yaml", 2, "source-never-used")]


def test_a_chance_of_one_is_refused(small: Plain, written: Write) -> None:
    folder = written(small)
    text = (folder / "scale.yaml").read_text()
    (folder / "scale.yaml").write_text(text.replace('"0.95"', '"1"'))
    problems = check_knowledge(read_knowledge([folder]), CALCULATORS)
    assert [p.rule for p in problems] == ["chance"]


@pytest.mark.parametrize(
    ("rule", "text", "changes"),
    [
        ("figure", "‘lining’ cannot be ‘silk’", {"pieces": [{"paint": "part", "only": {"lining": ["silk"]}}]}),
        ("figure", "there is no feature ‘linning’ (did you mean ‘lining’?)", {"implies": {"shell": {"linning": "none"}}}),
        ("figure-place", "no garment drawn with this has a seam ‘hem’", {"seams": {"hem": {"points": "0,0 9,0", "into": ["0", "1"]}}}),
        ("zone-not-drawn", "the figure ‘skirt-back’ does not show the zone ‘seat’", {"zones": {}}),
    ],
)
def test_a_figure_that_does_not_go_with_its_garment_is_reported(
    rule: str, text: str, changes: dict[str, Any], small: Plain, written: Write
) -> None:
    small["garments"]["skirt"]["figures"] = {"back": "skirt-back"}
    figure: dict[str, Any] = {"id": "skirt-back", "title": "Skirt", "view": "back", "box": ["0", "0", "9", "9"], "pieces": []}
    figure["zones"] = {"seat": {"within": "0,0 9,0 9,9"}}
    small["figures"] = {"skirt-back": figure}
    assert problems_of(small, written) == ()
    small["figures"]["skirt-back"] |= changes
    problems = problems_of(small, written)
    assert {p.rule for p in problems} == {rule}
    assert text in problems[0].text


def test_a_problem_says_the_line_and_what_was_perhaps_meant(small: Plain, written: Write) -> None:
    small["causes"]["too-long"]["shows_as"][0]["symptom"] = "fold"
    small["symptoms"]["pulls"]["garments"] = ["skrit"]
    folder = written(small)
    problems = {p.rule: p for p in check_knowledge(read_knowledge([folder]), CALCULATORS) if p.rule == "link" and "causes" in str(p.file)}
    line = (folder / "causes" / "too-long.yaml").read_text().splitlines().index('   "symptom": "fold",') + 1
    assert str(problems["link"]) == f"{folder / 'causes' / 'too-long.yaml'}:{line}: there is no symptom ‘fold’ (did you mean ‘folds’?)"


def test_links_to_an_entry_that_could_not_be_read_are_not_reported_again(small: Plain, written: Write) -> None:
    folder = written(small)
    (folder / "checks" / "pin.yaml").write_text("id: pin\ntitle: Pin\n")
    problems = check_knowledge(read_knowledge([folder]), CALCULATORS)
    assert not [p for p in problems if p.rule in ("link", "case")]
    assert [p.text for p in problems if p.file.name == "pin.yaml"] == [f"the field ‘{f}’ is missing" for f in ("ask", "minutes", "needs")]


def test_without_calculators_nothing_is_said_about_amounts(small: Plain, written: Write) -> None:
    small["methods"]["lower-waist"]["amounts"]["drop"]["calculator"] = "guesswork"
    assert check_knowledge(read_knowledge([written(small)])) == ()


def test_inputs_with_a_stand_in_optional_and_numbered_ones_are_known(small: Plain, written: Write) -> None:
    inputs = {"total": "tuck", "length": "10 in", "limit-1": "girth", "limit-3": "12"}
    small["methods"]["lower-waist"]["amounts"]["drop"]["inputs"] = inputs
    assert problems_of(small, written) == ()


def test_a_check_that_both_causes_answer_does_not_tell_them_apart_but_one_that_is_seldom_yes_does(small: Plain, written: Write) -> None:
    small["causes"]["too-tight"]["shows_as"][0]["strength"] = "often"
    answer = {"check": "pin", "yes": "often", "sources": ["common-practice"]}
    small["causes"]["too-tight"]["answers"] = [answer]
    assert {p.rule for p in problems_of(small, written)} == {"look-alikes"}
    answer["yes"] = "seldom"
    assert problems_of(small, written) == ()


def test_solved_cases_are_checked_alone(small: Plain, written: Write, tmp_path: Path) -> None:
    small["checks"]["pin"]["ask"] = "No question."
    small["features"]["lining"]["valuues"] = []
    knowledge = read_knowledge([written(small)])
    folder = tmp_path / "others"
    folder.mkdir()
    (folder / "a.yaml").write_text("id: a\ntitle: A\ngarment: skirt\nseen: [fold]\nexpect: {clean: true}\n")
    (folder / "b.yaml").write_text("id: b\ntitle: B\n")
    found = [(p.file.name, p.line, p.rule) for p in check_cases(read_solved_cases(knowledge, folder))]
    assert found == [("a.yaml", 4, "case"), ("b.yaml", 1, "record")]


def test_entries_that_rest_on_common_practice_alone_are_listed(small: Plain, written: Write) -> None:
    found = unsourced(read_knowledge([written(small)]))
    assert ("checks", "pin") in found
    assert ("causes", "too-long") not in found
