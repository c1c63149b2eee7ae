"""What the command line says of the solved cases."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from fitdoctor.assess import assess
from fitdoctor.evaluate import compare, evaluate, evaluation_json, evaluation_text
from fitdoctor.knowledge.knowledge import Knowledge
from fitdoctor.knowledge.read import read_solved_cases


def evaluated(knowledge: Knowledge, folder: Path | None) -> dict[str, Any]:
    """The result over a folder of solved cases, or over the shipped ones."""
    return evaluation_json(evaluate(read_solved_cases(knowledge, folder) if folder else knowledge, assess))


def evaluation_said(result: dict[str, Any], as_json: bool, before: Path | None) -> str:
    """The result in words or as JSON, and what became of it since an earlier one."""
    said = json.dumps(result, indent=1, ensure_ascii=False) if as_json else evaluation_text(result)
    return f"{said}\n{compare(json.loads(before.read_text()), result)}" if before else said
