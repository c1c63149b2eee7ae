"""The command line: `fitdoctor` opens the window, the rest asks and prints."""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections import Counter
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from fitdoctor.errors import FitdoctorError
from fitdoctor.jobbook.commands import jobs_command
from fitdoctor.jobbook.photos import write_whole
from fitdoctor.look_up import found_said, search_options
from fitdoctor.practice.options import practice_options
from fitdoctor.rack.options import rack_options
from fitdoctor.shop import Shop, load_shop

DONE, INPUT_HAS_PROBLEMS, STOPPED = 0, 1, 130
Command = Callable[[str, Callable[[argparse.Namespace], int], str], argparse.ArgumentParser]


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; return its exit code: 0 done, 1 the input or the knowledge has problems, 2 wrong use, 130 stopped by the user."""
    args = _parser().parse_args(argv)
    run: Callable[[argparse.Namespace], int] = args.run
    try:
        return run(args)
    except FitdoctorError as error:
        print(error, file=sys.stderr)
        return INPUT_HAS_PROBLEMS
    except KeyboardInterrupt:
        print("Stopped.", file=sys.stderr)
        return STOPPED
    except BrokenPipeError:
        # Whoever read the output has seen enough; nothing more can be written, not even on closing.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return DONE


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="fitdoctor", description="From the way a garment hangs to the cause, the remedy and the job sheet."
    )
    parser.set_defaults(run=_window, case=None)
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")

    def command(name: str, run: Callable[[argparse.Namespace], int], says: str) -> argparse.ArgumentParser:
        made = commands.add_parser(name, help=says, description=says)
        made.set_defaults(run=run)
        return made

    window = command("window", _window, "Open the window (the same as no command).")
    window.add_argument("case", nargs="?", type=Path, help="case file to open")
    check = command("check", _check, "Check the knowledge: every problem at once, as file:line.")
    check.add_argument("folder", nargs="?", type=Path, help="knowledge folder; the shipped one if left out")
    check.add_argument("--json", action="store_true", help="counts by kind and the problems, as JSON")
    check.add_argument("--unsourced", action="store_true", help="list the entries that rest on common practice alone")
    check.add_argument("--schemas", type=Path, metavar="FOLDER", help="write a JSON Schema for each kind of entry")
    assess = command("assess", _assess, "Assess a case: causes, next checks, amounts, verdict, plan.")
    assess.add_argument("case", type=Path, help="case file (YAML)")
    assess.add_argument("--json", action="store_true", help="the stable machine-readable form")
    _look_up_and_rack(command)
    sheet = command("sheet", _sheet, "Write the job sheet of a case.")
    sheet.add_argument("case", type=Path, help="case file (YAML)")
    sheet.add_argument("-o", "--output", type=Path, required=True, help="file to write: .html, .pdf or .txt")
    guides = command("guides", _guides, "Write the marking guides of a case at full size, to print without scaling.")
    guides.add_argument("case", type=Path, help="case file (YAML)")
    guides.add_argument("-o", "--output", type=Path, required=True, help="PDF to write")
    guides.add_argument("--paper", choices=("A4", "Letter"), default="A4")
    evaluate = command("evaluate", _evaluate, "Run the solved cases and say how good the answers are.")
    evaluate.add_argument("folder", nargs="?", type=Path, help="folder of solved cases; the shipped ones if left out")
    evaluate.add_argument("--json", action="store_true")
    evaluate.add_argument("--save", type=Path, metavar="FILE", help="keep the result for a later comparison")
    evaluate.add_argument("--compare", type=Path, metavar="FILE", help="say what improved and what got worse since that result")
    shots = command("shots", _shots, "Make all pictures of the program, offscreen.")
    shots.add_argument("folder", type=Path)
    shots.add_argument("--symptoms", action="store_true", help="only the contact sheets of what is drawn")
    demo = command("demo", _demo, "Assess the demo case, print it, and write its job sheet as HTML and PDF.")
    demo.add_argument("--folder", type=Path, default=Path.cwd(), help="where to write the sheet")
    jobs_command(command("jobs", _window, "The job book: list, export, import, delete."))
    return parser


def _look_up_and_rack(command: Command) -> None:
    search_options(command("search", _search, "Find entries by words; narrow them by kind, garment, region and cloth."))
    show = command("show", _show, "Show one entry as a page of the handbook.")
    show.add_argument("entry", help="id of the entry, or KIND/ID")
    show.add_argument("--json", action="store_true")
    rack_options(command("rack", _rack, "At the rack: buy, buy only if, or leave it; with several cases, side by side."))
    practice_options(command("practise", _practise, "Practise: a set of exercises as text, or the results so far as a table."))


def _shop() -> Shop:
    shop, notes = load_shop()
    for note in notes:
        print(note, file=sys.stderr)
    return shop


def _read(shop: Shop, folder: Path | None = None) -> Any:
    from fitdoctor.knowledge.read import read_knowledge, shipped_folder

    own = [Path(shop.knowledge_folder)] if shop.knowledge_folder and folder is None else []
    return read_knowledge([folder or shipped_folder(), *own])


def _read_case(path: Path, knowledge: Any) -> Any:
    """The case, or a known error that carries every problem of the file."""
    from fitdoctor.knowledge.read import read_case_file

    case, problems = read_case_file(path, knowledge)
    if problems:
        raise FitdoctorError("\n".join(str(problem) for problem in problems))
    return case


def _window(args: argparse.Namespace) -> int:
    from fitdoctor.desk.app import run

    return run(args.case)


def _check(args: argparse.Namespace) -> int:
    from fitdoctor.amounts.calculators import CALCULATORS
    from fitdoctor.knowledge.checks import check_knowledge, unsourced

    knowledge = _read(Shop(), args.folder)
    problems = check_knowledge(knowledge, CALCULATORS)
    counts = Counter(kind for kind, _ in knowledge.entries())
    counts.update({"cases": len(knowledge.cases), "sources": len(knowledge.sources)})
    if args.schemas:
        from fitdoctor.knowledge.schema import export_schemas

        export_schemas(args.schemas)
    if args.json:
        print(json.dumps({"format": 1, "counts": counts, "problems": [str(p) for p in problems]}, indent=1, ensure_ascii=False))
    elif args.unsourced:
        print("\n".join(f"{kind}/{id_}" for kind, id_ in unsourced(knowledge)))
    else:
        print(", ".join(f"{number} {kind}" for kind, number in sorted(counts.items())))
    for problem in problems:
        print(problem, file=sys.stderr)
    return INPUT_HAS_PROBLEMS if problems else DONE


def _assess(args: argparse.Namespace) -> int:
    from fitdoctor.assess import assess
    from fitdoctor.contract import assessment_json

    shop = _shop()
    knowledge = _read(shop)
    assessment = assess(knowledge, _read_case(args.case, knowledge), shop)
    if args.json:
        print(json.dumps(assessment_json(knowledge, assessment, knowledge.problems), indent=1, ensure_ascii=False))
    else:
        _print_assessment(knowledge, assessment)
    return DONE


def _print_assessment(knowledge: Any, assessment: Any) -> None:
    from fitdoctor.sheet import as_text, write_sheet

    print("CAUSES")
    found = assessment.diagnosis
    for cause in [c for c in found.causes if c.id in found.net.able][:8] or found.causes[:8]:
        print(f"  {cause.probability:4.0%}  {cause.title} ({cause.word})")
    for ask in assessment.next[:3]:
        print(f"  next: {ask.ask} ({ask.minutes:g} min)")
    print()
    print(as_text(write_sheet(knowledge, assessment)))


def _search(args: argparse.Namespace) -> int:
    print(found_said(_read(_shop()), args))
    return DONE


def _show(args: argparse.Namespace) -> int:
    from fitdoctor.handbook import entry_page, find_entry, page_json, page_text

    shop = _shop()
    knowledge = _read(shop)
    page = entry_page(knowledge, *find_entry(knowledge, args.entry), shop=shop)
    print(json.dumps(page_json(page), indent=1, ensure_ascii=False) if args.json else page_text(page))
    return DONE


def _rack(args: argparse.Namespace) -> int:
    from fitdoctor.rack.command import answers_said, racks_of, simulation_said

    shop = Shop() if args.simulate else _shop()
    knowledge = _read(shop)
    cases = [_read_case(path, knowledge) for path in args.cases]
    rate = shop.rate_per_hour or 0.0 if args.rate is None else args.rate
    said = simulation_said(knowledge, args.json) if args.simulate else ""
    print(said or answers_said(knowledge, racks_of(cases, args.price, args.worth, rate, args.hurry), shop, args.json))
    return DONE


def _practise(args: argparse.Namespace) -> int:
    from fitdoctor.practice.command import results_said, set_said

    shop = _shop()
    said = results_said(args.results) if args.results else ""
    print(said or set_said(_read(shop), shop, args.scope, args.seed, args.count, args.answers, args.json))
    return DONE


def _sheet(args: argparse.Namespace) -> int:
    from fitdoctor.assess import assess

    shop = _shop()
    knowledge = _read(shop)
    assessment = assess(knowledge, _read_case(args.case, knowledge), shop)
    _write_sheet(knowledge, assessment, args.output)
    print(args.output)
    return DONE


def _guides(args: argparse.Namespace) -> int:
    from fitdoctor.assess import assess
    from fitdoctor.guides import guides_for, guides_pdf

    shop = _shop()
    knowledge = _read(shop)
    assessment = assess(knowledge, _read_case(args.case, knowledge), shop)
    guides = guides_for(knowledge, assessment.amounts, shop)
    if not guides:
        raise FitdoctorError("There is nothing to mark yet.", "Note what shows, answer the check and measure; then there are amounts.")
    _write(args.output, guides_pdf(guides, args.paper, assessment.case.title or knowledge.garment(assessment.case.garment).title))
    print(args.output)
    return DONE


def _write_sheet(knowledge: Any, assessment: Any, path: Path) -> None:
    from fitdoctor.sheet import as_text, write_sheet

    if path.suffix == ".txt":
        _write(path, as_text(write_sheet(knowledge, assessment)).encode())
    elif path.suffix in (".html", ".pdf"):
        from fitdoctor.desk.paper import sheet_html, sheet_pdf

        made = sheet_html(knowledge, assessment) if path.suffix == ".html" else sheet_pdf(knowledge, assessment)
        _write(path, made)
    else:
        raise FitdoctorError(
            f"A job sheet cannot be written as ‘{path.suffix or path.name}’.", "End the file's name in .html, .pdf or .txt."
        )


def _write(path: Path, content: bytes) -> None:
    try:
        write_whole(path, content)
    except OSError as error:
        raise FitdoctorError(f"{path} could not be written: {error.strerror}.", "Choose another folder.") from error


def _evaluate(args: argparse.Namespace) -> int:
    from fitdoctor.evaluate.command import evaluated, evaluation_said

    result = evaluated(_read(Shop()), args.folder)
    print(evaluation_said(result, args.json, args.compare))
    if args.save:
        _write(args.save, json.dumps(result, indent=1).encode())
    return DONE


def _shots(args: argparse.Namespace) -> int:
    from fitdoctor.desk.shots import take_shots

    knowledge = _read(Shop())
    for path in take_shots(knowledge, args.folder, symptoms_only=args.symptoms):
        print(path)
    return DONE


def _demo(args: argparse.Namespace) -> int:
    from fitdoctor.assess import assess
    from fitdoctor.knowledge.read import demo_files

    shop = _shop()
    knowledge = _read(shop)
    path = demo_files()[0]
    assessment = assess(knowledge, _read_case(path, knowledge), shop)
    _print_assessment(knowledge, assessment)
    for ending in (".html", ".pdf"):
        target = args.folder / f"job-sheet-{path.stem}{ending}"
        _write_sheet(knowledge, assessment, target)
        print(f"Written: {target}")
    return DONE
