"""A knowledge of one skirt, small and without a fault; tests break one thing of it."""

from __future__ import annotations

import json
from collections.abc import Callable
from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest

Plain = dict[str, dict[str, dict[str, Any]]]
"""Kind -> id -> fields."""

PRACTICE = ["common-practice"]


def _entries(**fields: dict[str, Any]) -> dict[str, dict[str, Any]]:
    named = {id_.replace("_", "-"): entry for id_, entry in fields.items()}
    return {id_: {"id": id_, "title": id_.capitalize() + ".", "sources": PRACTICE, **entry} for id_, entry in named.items()}


def _shows(symptom: str, strength: str) -> dict[str, Any]:
    return {"symptom": symptom, "strength": strength, "sources": ["book"]}


def _symptom(look: str) -> dict[str, Any]:
    return {"garments": ["skirt"], "view": "back", "zone": "seat", "line": "fold", "runs": "level", "look": look}


SMALL: Plain = {
    "garments": _entries(
        skirt={
            "zones": [{"id": "seat", "view": "back", "title": "The seat"}],
            "seams": [{"id": "waist-seam", "title": "waist seam"}, {"id": "side-seam", "title": "side seams"}],
        }
    ),
    "features": _entries(
        lining={
            "ask": "Is it lined?",
            "garments": ["skirt"],
            "values": [{"id": "none", "title": "No"}, {"id": "lined", "title": "Lined"}],
        }
    ),
    "symptoms": _entries(folds=_symptom("Soft rolls lie under the band."), pulls=_symptom("Fine lines run across the seat.")),
    "causes": _entries(
        too_long={
            "lies_in": "cut",
            "how_common": {"skirt": "common"},
            "why": "Spare length stacks.",
            "shows_as": [_shows("folds", "usually")],
            "answers": [{"check": "pin", "yes": "nearly-always", "sources": PRACTICE}],
            "measure": ["tuck"],
        },
        too_tight={
            "lies_in": "size",
            "how_common": {"skirt": "common"},
            "why": "The cloth climbs to where there is room.",
            "shows_as": [_shows("pulls", "usually"), _shows("folds", "sometimes")],
            "measure": ["girth"],
            "impossible_if": [{"fact": "lining", "is": "none"}],
        },
    ),
    "checks": _entries(pin={"ask": "Pin a tuck. Do the folds go?", "minutes": "2", "needs": "wearer"}),
    "measurements": _entries(
        tuck={"how": ["Pin."], "of": "garment-on-wearer", "sense": "depth-or-all", "usual": ["6 mm", "1 in"]},
        girth={"how": ["Measure round."], "of": "wearer", "sense": "girth", "usual": ["800 mm", "1100 mm"]},
        seam_cloth={"how": ["Look inside."], "of": "garment", "sense": "each-side", "usual": ["5 mm", "20 mm"]},
    ),
    "methods": _entries(
        lower_waist={
            "treats": ["too-long"],
            "garments": ["skirt"],
            "amounts": {"drop": {"calculator": "plain", "inputs": {"total": "tuck"}, "options": {"take": "lower"}}},
            "stage": "waist",
            "operations": [
                {"id": "open", "do": "Unpick the band.", "opens": ["waist-seam"], "minutes": ["5", "10", "20"]},
                {"id": "mark", "do": "Mark {drop} down, {drop.each} on each side.", "minutes": ["2", "4", "6"]},
                {"id": "sew", "do": "Sew.", "closes": ["waist-seam"], "after": ["open", "mark"], "minutes": ["5", "10", "20"]},
            ],
            "conditions": ["no-needle-holes"],
        },
        let_out={
            "treats": ["too-tight"],
            "garments": ["skirt"],
            "amounts": {"out": {"calculator": "plain", "inputs": {"total": "girth"}}},
            "cloth_needed": [{"seam": "side-seam", "measurement": "seam-cloth", "amount": "each", "keep": "3/8 in", "sources": ["book"]}],
            "stage": "girth",
            "operations": [{"id": "all", "do": "Let out.", "opens": ["side-seam"], "closes": ["side-seam"], "minutes": ["20", "30", "60"]}],
        },
    ),
    "conditions": _entries(
        no_needle_holes={
            "effect": "limits",
            "needs": "Needle holes do not show.",
            "because": "They stay.",
            "when": {"any": [{"amount": "total", "exceeds": "1 in"}, {"fact": "lining", "is": ["lined"]}]},
        }
    ),
    "cases": _entries(
        a_skirt={
            "garment": "skirt",
            "facts": {"lining": "none"},
            "seen": ["folds"],
            "looked": ["back"],
            "answers": {"pin": "yes"},
            "measured": {"tuck": "3/4 in ± 1/16 in"},
            "expect": {"causes": ["too-long"], "methods": ["lower-waist"], "verdict": ["CAN"], "opened_once": ["waist-seam"]},
        }
    ),
}
for _measurement in SMALL["measurements"].values():
    _measurement |= {"possible": ["0", "3000 mm"], "tolerance": "2 mm"}

SOURCES = {"book": {"title": "A Book of Skirts", "by": "A Body", "year": "1950", "kind": "book"}}
SCALE = {
    "strength": {"nearly-always": "0.95", "usually": "0.8", "often": "0.55", "sometimes": "0.3", "seldom": "0.1"},
    "how-common": {"common": "0.12", "rare": "0.008"},
    "leak": {"leak": "0.01"},
}


@pytest.fixture
def small() -> Plain:
    """The small knowledge as plain values, free to be broken."""
    return deepcopy(SMALL)


@pytest.fixture
def written(tmp_path: Path) -> Callable[[Plain], Path]:
    """Writes plain values as a folder of knowledge; JSON is YAML."""

    def write(plain: Plain, folder: str = "knowledge") -> Path:
        root = tmp_path / folder
        for kind, entries in plain.items():
            (root / kind).mkdir(parents=True, exist_ok=True)
            for id_, entry in entries.items():
                (root / kind / f"{id_}.yaml").write_text(json.dumps(entry, indent=1, ensure_ascii=False), encoding="utf-8")
        (root / "sources.yaml").write_text(json.dumps(SOURCES, indent=1), encoding="utf-8")
        (root / "scale.yaml").write_text(json.dumps(SCALE, indent=1), encoding="utf-8")
        return root

    return write
