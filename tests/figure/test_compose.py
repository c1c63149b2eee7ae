from __future__ import annotations

import msgspec
import pytest

from fitdoctor.figure.compose import Scene, compose, contains, members, outlines
from fitdoctor.figure.pieces import part_names
from fitdoctor.figure.shapes import Clip, Fill, Line, Shape, bounds
from fitdoctor.knowledge.entries import Drawing, Figure, Piece
from fitdoctor.knowledge.knowledge import Knowledge

SQUARE = "-50,0c 50,0c 50,100c -50,100c"


def drawing(**fields: object) -> Drawing:
    return msgspec.convert({"crop": [-100, -50, 200, 200], **fields}, Drawing)


def figure(*pieces: Piece, **more: object) -> Figure:
    return Figure(id="board", title="Board", view="back", box=(-100, -50, 200, 200), pieces=pieces, main="board", **more)  # type: ignore[arg-type]


def flat(shapes: tuple[Shape, ...]) -> list[Shape]:
    out: list[Shape] = []
    for shape in shapes:
        out += flat(shape.shapes) if isinstance(shape, Clip) else [shape]
    return out


BOARD = Piece(paint="part", name="board", points=SQUARE, rim=0)
STROKES = Piece(paint="strokes", on="board")


def test_strokes_are_clipped_to_their_part() -> None:
    line = drawing(strokes=[{"stroke": "line", "through": [[-90, 50], [90, 50]]}])
    shapes = compose(Scene(figure(BOARD, STROKES), (line,)), {})
    clips = [shape for shape in shapes if isinstance(shape, Clip)]
    assert len(clips) == 1
    assert bounds(clips[0].to[0]) == pytest.approx((-50, 0, 50, 100))


def test_a_gape_beyond_the_edge_is_painted_behind_and_one_within_on_the_cloth() -> None:
    gapes = Piece(paint="gapes")
    board = figure(gapes, BOARD, STROKES)
    beyond = drawing(strokes=[{"stroke": "gape", "near": [[-30, 6], [0, 14], [30, 6]], "far": [[-30, 0], [0, -2], [30, 0]]}])
    within = drawing(strokes=[{"stroke": "gape", "near": [[-30, 46], [0, 54], [30, 46]], "far": [[-30, 44], [0, 42], [30, 44]]}])
    behind, on_cloth = compose(Scene(board, (beyond,)), {}), compose(Scene(board, (within,)), {})
    assert isinstance(behind[0], Fill)
    assert behind[0].ink.role == "deep"  # type: ignore[union-attr]
    assert not any(isinstance(shape, Fill) and getattr(shape.ink, "role", "") == "deep" for shape in on_cloth)
    assert any(isinstance(shape, Fill) and getattr(shape.ink, "role", "") == "deep" for shape in flat(on_cloth))


def test_an_outline_change_moves_the_part_it_names() -> None:
    bump = drawing(outline=[{"at": [0, 100], "r": [40, 30], "move": [0, 15], "on": ["board"]}])
    fills = [shape for shape in compose(Scene(figure(BOARD), (bump,)), {}) if isinstance(shape, Fill)]
    assert max(y for _, y in fills[0].outline) > 110


def test_a_piece_is_painted_only_where_the_facts_say_so() -> None:
    vent = Piece(paint="line", name="vent", points="0,50 0,100", only={"vent": ("centre", "not-known")})
    board = figure(BOARD, vent)
    lines = {value: len(compose(Scene(board, facts={"vent": value}), {})) for value in ("centre", "none")}
    assert lines["centre"] > lines["none"]
    assert len(compose(Scene(board), {})) == lines["centre"]


def test_a_fact_can_leave_a_piece_out() -> None:
    band = Piece(paint="part", name="band", points=SQUARE, but_not={"waistband": ("faced",)})
    assert "band" in outlines(figure(band))
    assert "band" not in outlines(figure(band), {"waistband": "faced"})


def test_an_opening_is_drawn_open_where_a_drawing_opens_it() -> None:
    closed = Piece(paint="line", points="0,50 0,100", closed="vent")
    opened = Piece(paint="mouth", points="0,50 -10,100", far="0,50 10,100", opened="vent")
    board = figure(BOARD, closed, opened)
    assert not any(isinstance(s, Fill) and getattr(s.ink, "role", "") == "deep" for s in compose(Scene(board), {}))
    shapes = compose(Scene(board, (drawing(opens=["vent"]),)), {})
    assert any(isinstance(s, Fill) and getattr(s.ink, "role", "") == "deep" for s in shapes)


def test_a_stroke_on_a_sleeve_brings_the_sleeve() -> None:
    sleeve = Piece(paint="part", name="sleeve", points="60,0c 90,0c 90,90c 60,90c", both=True, only={"sleeve-cap": ("smooth",)})
    board = figure(BOARD, sleeve, Piece(paint="strokes", on="sleeve"), implies={"sleeve": {"sleeve-cap": "smooth"}})
    line = drawing(strokes=[{"stroke": "line", "through": [[62, 20], [88, 20]], "on": "sleeve"}])
    assert len(compose(Scene(board), {})) < len(compose(Scene(board, (line,)), {}))


def test_dotted_references_can_be_left_out_of_an_exercise() -> None:
    dots = drawing(strokes=[{"stroke": "dots", "through": [[-40, 90], [40, 90]]}])
    board = figure(BOARD)
    with_dots, without = (compose(Scene(board, (dots,), references=shown), {}) for shown in (True, False))
    assert any(isinstance(shape, Line) and shape.dash for shape in with_dots)
    assert not any(isinstance(shape, Line) and shape.dash for shape in without)


def test_a_group_stands_for_its_parts_on_both_sides() -> None:
    legs = Figure(id="x", title="X", view="back", box=(0, 0, 1, 1), pieces=(), groups={"legs": ("leg",)})
    assert members(legs, "legs", ("leg.l", "leg.r", "band")) == ("leg.l", "leg.r")


def test_a_point_is_within_an_outline() -> None:
    square = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    assert contains(square, (5, 5))
    assert not contains(square, (15, 5))


def test_every_part_that_a_piece_lies_on_is_there(knowledge: Knowledge) -> None:
    lost = set()
    for entry in knowledge.figures.values():
        parts = {name for piece in entry.pieces if piece.paint == "part" for name in part_names(piece)}
        lost |= {(entry.id, piece.on) for piece in entry.pieces if piece.on and not members(entry, piece.on, parts)}
    assert not lost


def test_every_figure_can_be_composed(knowledge: Knowledge) -> None:
    for entry in knowledge.figures.values():
        assert compose(Scene(entry), knowledge.figures), entry.id


@pytest.mark.parametrize("garment", ["jeans", "slacks", "mens-trousers"])
def test_kinds_of_trousers_differ_in_their_details(knowledge: Knowledge, garment: str) -> None:
    back = knowledge.figures["trousers-back"]
    others = {"jeans", "slacks", "mens-trousers"} - {garment}
    own = compose(Scene(back, facts={"garment": garment}), knowledge.figures)
    assert all(own != compose(Scene(back, facts={"garment": other}), knowledge.figures) for other in others)
