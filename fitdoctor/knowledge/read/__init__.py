"""Reading: folders of YAML to knowledge, case files to cases and back. The only room that knows YAML."""

from fitdoctor.knowledge.read.case_file import case_of, read_case_file, write_case_file
from fitdoctor.knowledge.read.document import HAS_LIBYAML, line_in
from fitdoctor.knowledge.read.folders import demo_files, read_knowledge, read_solved_cases, shipped_folder

__all__ = [
    "HAS_LIBYAML",
    "case_of",
    "demo_files",
    "line_in",
    "read_case_file",
    "read_knowledge",
    "read_solved_cases",
    "shipped_folder",
    "write_case_file",
]
