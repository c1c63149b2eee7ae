"""Schemas for an editor and the handbook of fields: made from the records, and fresh."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from fitdoctor.errors import FitdoctorError
from fitdoctor.knowledge.checks import RULES
from fitdoctor.knowledge.entries import KINDS
from fitdoctor.knowledge.handbook_of_fields import handbook
from fitdoctor.knowledge.read import shipped_folder
from fitdoctor.knowledge.schema import export_schemas, schema_of


def test_every_kind_has_a_schema_that_refuses_unknown_fields(tmp_path: Path) -> None:
    names = {path.name.removesuffix(".schema.json") for path in export_schemas(tmp_path / "schemas")}
    assert names == {*KINDS, "sources", "scale", "words", "case-file"}
    for kind, record in KINDS.items():
        schema = json.loads((tmp_path / "schemas" / f"{kind}.schema.json").read_text())
        assert schema["$ref"] == f"#/$defs/{record.__name__}"
        assert schema["$defs"][record.__name__]["additionalProperties"] is False


def test_a_schema_carries_the_notes_of_the_fields() -> None:
    symptom = schema_of("symptoms")["$defs"]["Symptom"]["properties"]
    assert symptom["look"]["description"] == "One sentence by which a trainee recognises it."
    assert symptom["also_called"]["description"].startswith("Other names")


def test_a_length_is_text_with_a_unit_in_a_schema() -> None:
    length = schema_of("measurements")["$defs"]["Measurement"]["properties"]["tolerance"]["anyOf"][0]
    assert length["type"] == "string"
    assert "mm" in length["pattern"]


def test_one_word_after_is_fits_the_schema_as_a_list_does() -> None:
    kinds = schema_of("conditions")["$defs"]["When"]["properties"]["is"]["anyOf"]
    assert "string" in kinds[0]["type"]
    assert kinds[1]["type"] == "array"


def test_schemas_that_cannot_be_written_are_a_known_error(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("")
    with pytest.raises(FitdoctorError, match="could not be written"):
        export_schemas(tmp_path / "taken")


def test_the_handbook_of_fields_is_fresh() -> None:
    shipped = (shipped_folder() / "README.md").read_text(encoding="utf-8")
    assert shipped == handbook(), "write it anew: python -m fitdoctor.knowledge.handbook_of_fields"


def test_the_handbook_names_every_kind_and_every_rule() -> None:
    text = handbook()
    assert all(f"## {kind}\n" in text for kind in KINDS)
    assert all(f"- `{rule}`: " in text for rule in RULES)
