"""Nine situations, from what is seen to marks, verdict and plan, through the command line's machine-readable form.

The inputs are solved cases of the knowledge. The figures are common practice, no source; the curves and the ellipse are arithmetic.
"""

from __future__ import annotations

import itertools
import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from scipy.special import ellipe

from fitdoctor.assess import assess
from fitdoctor.case import Case
from fitdoctor.cli import main
from fitdoctor.knowledge.read import read_knowledge, shipped_folder

INCH_MM = 25.4
CASES = shipped_folder() / "cases"
Assessed = Callable[[str], dict[str, Any]]


@pytest.fixture
def assessed(capsys: pytest.CaptureFixture[str]) -> Assessed:
    def run(case: str) -> dict[str, Any]:
        assert main(["assess", str(CASES / f"{case}.yaml"), "--json"]) == 0
        found: dict[str, Any] = json.loads(capsys.readouterr().out)
        assert found["format"] == 1
        return found

    return run


def marks(found: dict[str, Any], method: str, at: str, layer: str = "shell") -> list[dict[str, Any]]:
    return [a for a in found["amounts"] if (a["method"], a["at"], a["layer"]) == (method, at, layer)]


def offset_at(mark: dict[str, Any], share: float) -> float:
    """The offset in inches at a share of the way along the seam, read between stations."""
    stations = mark["stations"]
    place = stations[0][0] + share * (stations[-1][0] - stations[0][0])
    for (s0, o0), (s1, o1) in itertools.pairwise(stations):
        if s0 <= place <= s1:
            return float((o0 + (o1 - o0) * (place - s0) / (s1 - s0)) / INCH_MM)
    raise AssertionError(place)


def opened(found: dict[str, Any], seam: str) -> int:
    return sum(seam in op["opens"] for op in found["plan"]["operations"])


def test_level_folds_under_a_set_on_band_lower_the_back_waist_seam_in_a_curve(assessed: Assessed) -> None:
    found = assessed("lower/slacks-level-folds-set-on-band")
    assert found["causes"][0]["id"] == "back-longer-than-wearer"
    (mark,) = marks(found, "lower-back-waist-seam", "back-waist-seam")
    for share, inches in ((0, 0.75), (0.25, 0.633), (0.5, 0.375), (0.75, 0.117), (1, 0)):
        # Cubic run-out d (1 - 3t² + 2t³): zero slope at both ends. Stations are joined by straight lines, hence the tolerance.
        assert offset_at(mark, share) == pytest.approx(inches, abs=0.006)
    assert found["verdict"]["level"] in ("CAN", "NEEDS_CARE")
    assert any(op["try_on"] for op in found["plan"]["operations"])


def test_mens_trousers_come_out_as_two_causes_and_each_seam_is_opened_once(assessed: Assessed) -> None:
    found = assessed("lower/mens-trousers-level-folds-and-wide-hip")
    assert {c["id"] for c in found["causes"][:2]} == {"back-longer-than-wearer", "seat-too-wide-at-hip"}
    (taper,) = marks(found, "shorten-back-at-inseam", "inseam")
    assert offset_at(taper, 0) == pytest.approx(5 / 8, abs=1e-6)
    assert offset_at(taper, 0.5) == pytest.approx(5 / 16, abs=1 / 16)
    assert offset_at(taper, 1) == pytest.approx(0, abs=1e-9)
    (back,) = marks(found, "take-in-centre-back", "centre-back-seam")
    assert back["each_mm"] == pytest.approx(0.5 * INCH_MM)
    assert back["total_mm"] == pytest.approx(1.0 * INCH_MM)
    for seam in ("crotch-seam", "inseam", "centre-back-seam"):
        assert opened(found, seam) == 1


def test_a_cuff_is_marked_by_four_lines_and_the_back_slants_lower(assessed: Assessed) -> None:
    found = assessed("lower/trousers-too-long-cuffed")
    lines = marks(found, "hem-trousers-cuffed", "hem")
    assert [line["stations"][0][1] / INCH_MM for line in lines] == pytest.approx([0, 1.5, 3.0, 4.5])
    finished = lines[0]["stations"]
    assert (finished[-1][1] - finished[0][1]) / INCH_MM == pytest.approx(0.5)


def test_a_cuff_without_the_cloth_for_it_is_refused(assessed: Assessed) -> None:
    assert assessed("lower/trousers-cuff-without-cloth")["verdict"]["level"] == "CANNOT"


def test_a_dropped_back_neck_is_made_up_at_the_shoulder_seams(assessed: Assessed) -> None:
    found = assessed("tailored/fold-below-collar-square-shoulders")
    assert found["causes"][0]["id"] == "shoulders-squarer-than-jacket"
    (mark,) = marks(found, "drop-back-neck", "shoulder-seam")

    def quarter_ellipse(half_width: float, depth: float) -> float:
        long, short = max(half_width, depth), min(half_width, depth)
        return float(long * ellipe(1 - (short / long) ** 2))

    grown = quarter_ellipse(3, 7 / 8 + 1 / 2) - quarter_ellipse(3, 7 / 8)
    assert grown == pytest.approx(0.279, abs=0.0005)
    assert mark["each_mm"] / INCH_MM == pytest.approx(grown, abs=1e-3)


def test_four_look_alikes_of_the_fold_below_the_collar_are_each_found_by_their_own_check() -> None:
    known = read_knowledge([shipped_folder()])
    showing = [c for c in known.causes_of("jacket").values() if any(s.symptom == "fold-below-collar" for s in c.shows_as)]
    told = set()
    for cause in showing:
        answers = {a.check: "yes" for a in cause.answers if known.strength(a.yes) >= 0.55}
        found = assess(known, Case(garment="jacket", seen=("fold-below-collar",), answers=answers))  # type: ignore[arg-type]
        told |= {cause.id} if found.diagnosis.causes[0].id == cause.id else set()
    assert len(told) >= 5


def test_darts_let_out_share_the_amount_and_punched_holes_forbid_it(assessed: Assessed) -> None:
    found = assessed("tailored/back-darts-too-deep")
    (mark,) = marks(found, "let-out-back-darts", "back-dart")
    assert mark["each_mm"] == pytest.approx(0.5 * INCH_MM)
    assert mark["total_mm"] == pytest.approx(1.0 * INCH_MM)
    refused = assessed("tailored/back-darts-too-deep-punched")
    assert refused["verdict"]["level"] == "CANNOT"
    assert "punched" in refused["verdict"]["because"][0]["text"]


def test_two_back_neck_darts_take_up_the_surplus(assessed: Assessed) -> None:
    found = assessed("light/back-neck-stands-away")
    (mark,) = marks(found, "back-neck-darts-take-in", "back-neck-dart")
    assert mark["each_mm"] == pytest.approx(3 / 8 * INCH_MM)
    length_in = mark["stations"][-1][0] / INCH_MM
    assert 3 - 1e-9 <= length_in <= 3.5
    assert offset_at(mark, 1) == pytest.approx(0, abs=1e-9)


def test_a_shoulder_moved_in_is_refused_with_its_figure_where_a_smooth_cap_cannot_give(assessed: Assessed) -> None:
    found = assessed("light/shoulders-too-wide-smooth-sleeve")
    assert found["verdict"]["level"] == "CANNOT"
    assert "cap must give 3/8 in" in found["verdict"]["because"][0]["text"]
    assert assessed("light/shoulders-too-wide-gathered-cap")["verdict"]["level"] in ("CAN", "NEEDS_CARE", "CAN_WITHIN_LIMITS")


def test_a_sleeve_is_lengthened_as_far_as_its_hem_reaches(assessed: Assessed) -> None:
    within = assessed("tailored/jacket-sleeve-one-inch-short")
    assert within["verdict"]["level"] == "CAN_WITHIN_LIMITS"
    assert assessed("tailored/jacket-sleeve-one-and-three-quarters-short")["verdict"]["level"] == "CANNOT"


@pytest.mark.parametrize(
    ("case", "method", "seams", "each_in"),
    [
        ("tailored/back-waist-too-big-no-vent", "take-in-centre-back-and-sides", 3, 1 / 4),
        ("tailored/back-waist-too-big-centre-vent", "", 2, 3 / 8),
    ],
)
def test_a_wide_back_waist_is_shared_evenly_over_the_seams_that_may_move(
    assessed: Assessed, case: str, method: str, seams: int, each_in: float
) -> None:
    found = assessed(case)
    shell = [a for a in found["amounts"] if a["layer"] == "shell" and a["take"] == "in" and method in a["method"]]
    assert sum(a["total_mm"] for a in shell) == pytest.approx(1.5 * INCH_MM)
    assert all(a["each_mm"] == pytest.approx(each_in * INCH_MM) for a in shell)
    assert sum(a["total_mm"] / (2 * a["each_mm"]) for a in shell) == pytest.approx(seams)
    lining = [a for a in found["amounts"] if a["layer"] == "lining"]
    assert sum(a["total_mm"] for a in lining) == pytest.approx(1.5 * INCH_MM)


def test_every_situation_writes_a_job_sheet(tmp_path: Path) -> None:
    for case in ("lower/slacks-level-folds-set-on-band", "tailored/fold-below-collar-square-shoulders", "light/back-neck-stands-away"):
        target = tmp_path / f"{Path(case).name}.html"
        assert main(["sheet", str(CASES / f"{case}.yaml"), "-o", str(target)]) == 0
        said = target.read_text()
        assert "Marks on the cloth" in said
        assert "Try on" in said
