"""The result of an evaluation for a reader, and what changed since an earlier one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from fitdoctor.evaluate.scores import MEASURES

_PLAIN_NUMBERS = ("log_score", "brier", "checks_needed")
_LESS_IS_BETTER = ("brier", "checks_needed")
_HEADS = {
    "first": "first",
    "first_three": "first 3",
    "verdicts": "verdict",
    "amounts": "amounts",
    "methods": "methods",
    "opened_once": "opened once",
    "clean": "clean",
    "log_score": "log score",
    "brier": "Brier",
    "checks_needed": "checks",
}


def evaluation_text(result: Mapping[str, Any]) -> str:
    """The JSON form of an evaluation as a table, with the misses below."""
    rows = [("all", result), ("in sight", result["in_sight"]), ("held back", result["held_back"]), *result["garments"].items()]
    head = f"{'':14}{'cases':>6}" + "".join(f"{_HEADS[name]:>12}" for name in MEASURES)
    table = (f"{title:14}{row['cases']:>6}" + "".join(f"{_shown(name, row[name]):>12}" for name in MEASURES) for title, row in rows)
    misses = [f"- {miss}" for miss in result["misses"]]
    return "\n".join([head, *table, "", *(["Not as expected:", *misses] if misses else ["All as expected."])])


def compare(before: Mapping[str, Any], after: Mapping[str, Any]) -> str:
    """What improved and what got worse: the means, then case by case."""
    changes = [*_mean_changes(before, after), *_case_changes(before, after)]
    return "\n".join(changes) if changes else "Nothing changed."


def _shown(name: str, value: float | None) -> str:
    if value is None:
        return "–"
    return f"{value:.3f}" if name in _PLAIN_NUMBERS else f"{value:.1%}"


def _mean_changes(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    for name in MEASURES:
        was, is_ = before.get(name), after.get(name)
        if was is not None and is_ is not None and was != is_:
            better = (is_ < was) == (name in _LESS_IS_BETTER)
            yield f"{'better' if better else 'worse':7}{_HEADS[name]}: {_shown(name, was)} -> {_shown(name, is_)}"


def _case_changes(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    old, new = before.get("by_case", {}), after.get("by_case", {})
    for case in sorted({*old, *new}):
        if case not in old or case not in new:
            yield f"{'new' if case in new else 'gone':7}{case}"
            continue
        for name in MEASURES:
            was, is_ = old[case].get(name), new[case].get(name)
            if isinstance(was, bool) and isinstance(is_, bool) and was != is_:
                yield f"{'better' if is_ else 'worse':7}{case}: {_HEADS[name]}"
