"""The colours keep their distance, in both themes."""

from __future__ import annotations

import pytest

from fitdoctor.desk.tokens import DARK, DARK_HIGH, LIGHT, LIGHT_HIGH, LINE_PAIRS, SPACES, TEXT_PAIRS, Tokens, contrast, luminance

# Floors of the Web Content Accessibility Guidelines 2.2: success criteria 1.4.3 (text) and 1.4.11 (lines that mean something).
TEXT_FLOOR, LINE_FLOOR = 4.5, 3.0
# Success criterion 1.4.6, contrast (enhanced).
HIGH_FLOOR = 7.0
THEMES = [LIGHT, DARK, LIGHT_HIGH, DARK_HIGH]
HIGH = [LIGHT_HIGH, DARK_HIGH]


def named(tokens: Tokens) -> str:
    return f"{tokens.name}{'-high' if tokens.high_contrast else ''}"


def test_contrast_is_that_of_the_guidelines() -> None:
    # Web Content Accessibility Guidelines 2.2: black on white is 21 : 1; #767676 is the lightest grey above 4.5 : 1 on white.
    assert contrast("#000000", "#FFFFFF") == pytest.approx(21.0)
    assert contrast("#767676", "#FFFFFF") >= TEXT_FLOOR > contrast("#777777", "#FFFFFF")
    assert contrast("#FFFFFF", "#000000") == contrast("#000000", "#FFFFFF")
    assert luminance("#FFFFFF") == pytest.approx(1.0)


@pytest.mark.parametrize("tokens", THEMES, ids=named)
@pytest.mark.parametrize(("text", "ground"), TEXT_PAIRS)
def test_text_stands_off_its_ground(tokens: Tokens, text: str, ground: str) -> None:
    assert contrast(tokens.colour(text), tokens.colour(ground)) >= TEXT_FLOOR


@pytest.mark.parametrize("tokens", HIGH, ids=named)
def test_high_contrast_keeps_no_tint_and_no_pale_line(tokens: Tokens) -> None:
    grounds = {tokens.colour(name) for name in tokens.colours() if "tint" in name or name in ("paper", "paper_2", "table")}
    assert grounds == {tokens.paper}
    assert {tokens.edge, tokens.rule, tokens.ink_2} == {tokens.ink}
    for text, ground in (*TEXT_PAIRS, *LINE_PAIRS):
        assert contrast(tokens.colour(text), tokens.colour(ground)) >= HIGH_FLOOR, (text, ground)


@pytest.mark.parametrize("tokens", THEMES, ids=named)
@pytest.mark.parametrize(("line", "ground"), LINE_PAIRS)
def test_lines_that_mean_something_stand_off_their_ground(tokens: Tokens, line: str, ground: str) -> None:
    assert contrast(tokens.colour(line), tokens.colour(ground)) >= LINE_FLOOR


def test_every_colour_is_a_colour_in_both_themes() -> None:
    assert {tuple(tokens.colours()) for tokens in THEMES} == {tuple(LIGHT.colours())}
    for tokens in THEMES:
        assert all(len(colour) == 7 and int(colour[1:], 16) >= 0 for colour in tokens.colours().values())


def test_stop_is_the_only_red() -> None:
    """What stops the work is seen at once because nothing else has its colour."""

    def reddish(colour: str) -> bool:
        red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
        return red > 1.35 * green and red > 1.35 * blue and green < 1.35 * blue + 24

    assert [name for name, colour in LIGHT.colours().items() if reddish(colour)] == ["stop"]


def test_spaces_grow_from_one_to_the_next() -> None:
    assert list(SPACES) == sorted(set(SPACES))
