"""What closing jobs teaches, through the book."""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

import msgspec
import numpy as np
import pytest

from fitdoctor.assess import assess
from fitdoctor.case import Answer, Case
from fitdoctor.diagnosis.closing import printed_chances
from fitdoctor.diagnosis.learning import Learned, Printed, Tally, apply
from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.book import JobBook
from fitdoctor.jobbook.carrying import import_json
from fitdoctor.jobbook.incoming import Carried, Export
from fitdoctor.jobbook.job import Job, Outcome
from fitdoctor.jobbook.lessons import OperationMinutes, common_beside, learned_from, link_beside, minutes_by_operation
from fitdoctor.jobbook.overlay import export_overlay
from fitdoctor.knowledge.entries import Answers, Cause, Shows
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_knowledge, shipped_folder
from tests.diagnosis.small_knowledge import small_knowledge
from tests.jobbook.jobs_at_hand import FIRST_DAY, a_book, a_case

replace = msgspec.structs.replace
FOLDS = ("symptom", "folds")


def closed(book: JobBook, case: Case, *right: str) -> Job:
    return book.close_job(book.add(case), Outcome(right=right))


def test_closing_a_job_moves_the_chances_and_opening_it_again_moves_them_back(tmp_path: Path) -> None:
    knowledge = small_knowledge()
    with a_book(tmp_path) as book:
        job = closed(book, a_case(), "long")
        learned = book.learning.learned(knowledge)
        leaked_too = 1 - (1 - 0.8) * (1 - 0.01)
        assert learned.links["long", FOLDS] == Tally(pytest.approx(0.8 / leaked_too), 1)  # type: ignore[arg-type]
        assert learned.priors["long", "trousers"] == Tally(1, 1)
        book.reopen(job)
        assert book.learning.learned(knowledge) == Learned()


def test_learning_can_be_switched_off_and_on_and_begun_anew(tmp_path: Path) -> None:
    knowledge = small_knowledge()
    with a_book(tmp_path) as book:
        closed(book, a_case(), "long")
        book.learning.switch(False)
    with a_book(tmp_path) as book:
        assert not book.learning.on
        assert book.learning.learned(knowledge) == Learned()
        book.learning.switch(True)
        assert book.learning.learned(knowledge).priors
        assert book.learning.reset() == 1
        assert book.learning.learned(knowledge) == Learned()
        later = closed(book, a_case(), "flat")
        assert [job.id for job in book.learning.jobs()] == [later.id]
        assert book.learning.reset() == 1


def test_what_was_learned_changes_the_assessment_and_switched_off_it_does_not(tmp_path: Path) -> None:
    knowledge = small_knowledge()
    case = Case(garment="trousers", seen=("folds",))
    with a_book(tmp_path) as book:
        for _ in range(40):
            closed(book, case, "flat")
        before, after = (assess(knowledge, case, learned=learned) for learned in (None, book.learning.learned(knowledge)))
        book.learning.switch(False)
        off = assess(knowledge, case, learned=book.learning.learned(knowledge))
    chances = [{cause.id: cause.probability for cause in each.diagnosis.causes} for each in (before, after, off)]
    assert chances[0]["flat"] == pytest.approx(chances[0]["long"])
    assert chances[1]["flat"] > 5 * chances[1]["long"]
    assert chances[2] == chances[0]


def test_the_shops_share_stands_beside_the_printed_word() -> None:
    knowledge = small_knowledge()
    learned = Learned(links={("long", FOLDS): Tally(14.03, 23)}, priors={("long", "trousers"): Tally(1, 1)})
    link, common = link_beside(knowledge, learned, "long", FOLDS), common_beside(knowledge, learned, "long", "trousers")
    assert link is not None
    assert link.text == "The book says usually; your last 23 jobs: 61 %."
    assert link.now == pytest.approx((20 * 0.8 + 14.03) / 43)
    assert common is not None
    assert common.text == "The book says common; your one job: 100 %."
    untold = link_beside(knowledge, learned, "flat", ("symptom", "bag"))
    assert untold is not None
    assert untold.text == "The book says often; no job of yours tells yet."
    assert link_beside(knowledge, learned, "long", ("symptom", "hem-up")) is None
    assert common_beside(knowledge, learned, "long", "hat") is None


def test_jobs_from_before_a_rename_still_teach(tmp_path: Path) -> None:
    knowledge = small_knowledge()
    knowledge.symptoms["folds-under-band"] = replace(knowledge.symptoms.pop("folds"), id="folds-under-band", formerly=("folds",))
    renamed = replace(knowledge.causes.pop("long"), id="too-long", formerly=("long",))
    shown = Shows(symptom="folds-under-band", strength="usually", sources=("book",))
    knowledge.causes["too-long"] = replace(renamed, shows_as=(shown,))
    with a_book(tmp_path) as book:
        closed(book, a_case(), "long")
        closed(book, replace(a_case(), garment="hat"), "long")
        learned = learned_from(knowledge, book.learning.jobs())
    assert learned.links["too-long", ("symptom", "folds-under-band")].times == 1
    assert learned.priors["too-long", "trousers"] == Tally(1, 1)


def test_minutes_are_learned_by_operation() -> None:
    jobs = [Job(case=a_case(), minutes={"lower-waist.mark": minutes}) for minutes in (10.0, 20.0)]
    timed = minutes_by_operation([*jobs, Job(case=a_case())])
    assert timed == {"lower-waist.mark": OperationMinutes(2, 30.0)}
    assert timed["lower-waist.mark"].mean == 15.0
    # Twenty jobs' weight of a printed mean of 10, two jobs of 15.
    assert timed["lower-waist.mark"].beside((5.0, 10.0, 15.0))[1] == pytest.approx((20 * 10 + 30) / 22)
    assert OperationMinutes().beside((5.0, 10.0, 15.0)) == (5.0, 10.0, 15.0)


def test_what_was_learned_goes_out_as_a_folder_that_lies_over_the_shipped_one(tmp_path: Path, knowledge: Knowledge) -> None:
    cause, shown = next((cause, cause.shows_as[0]) for cause in knowledge.causes.values() if cause.shows_as)
    learned = Learned(links={(cause.id, ("symptom", shown.symptom)): Tally(0, 500)})
    minutes = {f"{m.id}.{op.id}": OperationMinutes(30, 3000.0) for m in knowledge.methods.values() for op in m.operations}
    written = export_overlay(knowledge, learned, minutes, tmp_path / "ours")
    assert ("causes", cause.id) in written
    over = read_knowledge([shipped_folder(), tmp_path / "ours"])
    assert over.problems == knowledge.problems
    assert over.causes[cause.id].shows_as[0].strength == "seldom"
    assert over.causes[cause.id].shows_as[1:] == cause.shows_as[1:]
    for id_, method in knowledge.methods.items():
        assert replace(over.methods[id_], operations=()) == replace(method, operations=())
        assert [(op.id, op.do, op.after) for op in over.methods[id_].operations] == [(op.id, op.do, op.after) for op in method.operations]
        assert all(0 <= low <= likely <= high for low, likely, high in (op.minutes for op in over.methods[id_].operations))
    with pytest.raises(FitdoctorError, match="is not empty"):
        export_overlay(knowledge, learned, minutes, tmp_path / "ours")


def test_nothing_learned_is_an_empty_folder(tmp_path: Path, knowledge: Knowledge) -> None:
    assert export_overlay(knowledge, Learned(), {}, tmp_path / "ours") == ()
    assert list((tmp_path / "ours").iterdir()) == []


def test_two_thousand_jobs_closed_in_the_book_bring_another_shops_chances_within_reach(tmp_path: Path) -> None:
    knowledge = a_knowledge_of_one_garment()
    rng = np.random.default_rng(11)
    printed = printed_chances(knowledge, "trousers")
    true = Printed(
        links={key: float(rng.uniform(0.2, 0.95)) for key in printed.links},
        leaks=dict.fromkeys(printed.leaks, 0.03),
        priors=dict.fromkeys(printed.priors, 0.3),
    )
    with a_book(tmp_path) as book:
        import_json(book, written(tmp_path / "jobs.json", [simulated(rng, true) for _ in range(2000)]))
        after = apply(book.learning.learned(knowledge), printed, "trousers")
    tests = [simulated(rng, true) for _ in range(1000)]
    before, now, best = (sum(log_score(model, *job) for job in tests) / len(tests) for model in (printed, after, true))
    print(f"mean log score of a job: as printed {before:.3f}, after 2000 jobs {now:.3f}, the shop's true chances {best:.3f}")
    assert before < now - 0.1
    assert now == pytest.approx(best, rel=0.02)


def a_knowledge_of_one_garment() -> Knowledge:
    """Four causes over four symptoms and two checks, every chance printed as a middling word."""
    small = small_knowledge()
    shows = {"long": ("folds", "drag"), "flat": ("folds", "bag"), "short": ("hem-up", "drag"), "creases": ("bag", "hem-up")}
    checks = {"long": "pin", "flat": "pin", "short": "tape", "creases": "tape"}
    for id_, symptoms in shows.items():
        small.causes[id_] = made(small.causes[id_], symptoms, checks[id_])
    return small


def made(cause: Cause, symptoms: tuple[str, ...], check: str) -> Cause:
    return replace(
        cause,
        shows_as=tuple(Shows(symptom=s, strength="often", sources=("book",)) for s in symptoms),
        answers=(Answers(check=check, yes="often", sources=("book",)),),
        impossible_if=(),
    )


Simulated = tuple[frozenset[str], Mapping[tuple[str, str], bool]]


def simulated(rng: np.random.Generator, model: Printed) -> Simulated:
    """One garment that came in: which causes it has, and what is found of all that is looked for."""
    present = frozenset(cause for cause, prior in model.priors.items() if rng.random() < prior)
    return present, {finding: bool(rng.random() < chance_of(model, finding, present)) for finding in model.leaks}


def written(path: Path, jobs: list[Simulated]) -> Path:
    """The jobs as an export of another book."""
    carried = tuple(Carried(job=closed_job(f"job-{number}", *job)) for number, job in enumerate(jobs))
    path.write_bytes(msgspec.json.encode(Export(jobs=carried)))
    return path


def closed_job(id_: str, present: frozenset[str], found: Mapping[tuple[str, str], bool]) -> Job:
    answers: dict[str, Answer] = {finding: "yes" if yes else "no" for (kind, finding), yes in found.items() if kind == "check"}
    seen = tuple(finding for (kind, finding), yes in found.items() if kind == "symptom" and yes)
    case = Case(garment="trousers", seen=seen, looked=("front", "back", "side"), answers=answers)
    outcome = Outcome(closed=FIRST_DAY, right=tuple(sorted(present)))
    return Job(id=id_, revision=1, case=case, state="done", outcome=outcome, added=FIRST_DAY, changed=FIRST_DAY)


def chance_of(model: Printed, finding: tuple[str, str], present: frozenset[str]) -> float:
    absent = math.prod(1 - model.links.get((cause, finding), 0.0) for cause in present)
    return 1 - absent * (1 - model.leaks[finding])


def log_score(model: Printed, present: frozenset[str], found: Mapping[tuple[str, str], bool]) -> float:
    """Logarithm of the chance the model gives to the whole job."""
    causes = sum(math.log(prior if cause in present else 1 - prior) for cause, prior in model.priors.items())
    chances = {finding: chance_of(model, finding, present) for finding in found}
    return causes + sum(math.log(chances[finding] if yes else 1 - chances[finding]) for finding, yes in found.items())
