"""The rooms and which may look into which; type-only imports and imports inside functions count."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import fitdoctor

PACKAGE = Path(fitdoctor.__file__).parent

# Each room, and the rooms it may import besides itself and those of its own line. Rows go from left to right of the chain.
ROOMS: dict[str, set[str]] = {
    "errors": set(),
    "units": {"errors"},
    "reason": set(),
    "case": set(),
    "shop": {"units", "errors"},
    "knowledge": {"errors", "units", "case", "amounts.marks", "reason"},
    "amounts.marks": {"reason"},
    "when": {"amounts.marks", "case", "knowledge", "units"},
    "diagnosis": {"errors", "case", "knowledge", "reason", "when", "amounts.marks"},
    "amounts": {"amounts.marks", "errors", "units", "case", "knowledge", "reason"},
    "conditions": {"amounts.marks", "case", "knowledge", "reason", "shop", "when"},
    "verdict": {"conditions", "amounts.marks", "case", "knowledge", "reason", "shop"},
    "plan": {"errors", "knowledge", "shop"},
    "assess": {"verdict", "conditions", "plan", "diagnosis", "amounts", "case", "knowledge", "reason", "shop"},
    "figure": {"knowledge", "errors"},
}
LATEST = {"cli", "desk", "__main__"}
LATER = {"handbook", "look_up", "sheet", "guides", "contract", "evaluate", "rack", "practice", "jobbook", "__init__"} | LATEST
ONLY_IN: dict[str, tuple[str, ...]] = {
    "PySide6": ("desk",),
    "yaml": ("knowledge.read",),
    "sqlite3": ("jobbook",),
    "fsrs": ("practice",),
    "networkx": ("knowledge.graph", "plan"),
    "numpy": ("diagnosis", "amounts"),
    "threading": ("desk.background",),
    "concurrent": ("desk.background",),
}
CELLARS = {"utils", "helpers", "common", "manager", "misc"}


def modules() -> list[tuple[str, Path]]:
    return [(".".join(p.relative_to(PACKAGE).with_suffix("").parts), p) for p in sorted(PACKAGE.rglob("*.py"))]


def imported(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            yield from (f"{node.module}.{name.name}" for name in node.names)


def room_of(module: str) -> str:
    if module in ROOMS:
        return module
    return module.split(".")[0]


@pytest.mark.parametrize(("module", "path"), modules(), ids=[m for m, _ in modules()])
def test_a_room_only_looks_to_its_left(module: str, path: Path) -> None:
    room = room_of(module)
    for name in imported(path):
        if not name.startswith("fitdoctor."):
            continue
        target = name.removeprefix("fitdoctor.")
        other = next((r for r in ROOMS if target == r or (target.startswith(r + ".") and "." in r)), target.split(".")[0])
        own = other == room or (room == "amounts" and other == "amounts.marks")
        if own or module == "__init__":
            continue
        if room in LATER:
            assert other not in LATEST or room in LATEST, f"{module} must not import {target}"
        else:
            allowed = ROOMS[room]
            assert other in allowed or other.split(".")[0] in allowed, f"{module} must not import {target}"


@pytest.mark.parametrize(("module", "path"), modules(), ids=[m for m, _ in modules()])
def test_a_library_is_known_only_in_its_own_room(module: str, path: Path) -> None:
    for name in imported(path):
        homes = ONLY_IN.get(name.split(".")[0])
        if homes:
            assert any(module == home or module.startswith(home + ".") for home in homes), f"{module} must not import {name}"


@pytest.mark.parametrize(("module", "path"), modules(), ids=[m for m, _ in modules()])
def test_a_file_stays_a_room_and_not_a_cellar(module: str, path: Path) -> None:
    assert CELLARS.isdisjoint(module.split("."))
    assert len(path.read_text().splitlines()) <= 300, f"{module} is too long; part it"


def test_only_units_knows_inches() -> None:
    knowing = [module for module, path in modules() if "25.4" in path.read_text()]
    assert knowing == ["units"]
