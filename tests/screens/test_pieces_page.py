"""The page of the pieces of a surface: the same lines as by hand, with a drawing that grows."""

from __future__ import annotations

import pytest

from interview.garden.survey.piece_lines import SHAPES
from interview.screens.piece_text import PieceText, taken_apart

SURFACE = {"surfaces.1.surface_name": "south roof", "surfaces.1.surface_kind": "roof"}


@pytest.fixture
def measuring(write) -> str:
    return str(write("garden.yaml", SURFACE))


async def _opens(person) -> None:
    await person.goes_to("surfaces.1.pieces")
    await person.press("f3")
    assert person.page == "PiecesScreen"


def test_a_line_taken_apart_for_the_form_means_the_same_when_put_together(subtests, given):
    for line in [
        "rectangle 24 ft by 13 ft",
        "less triangle 6 ft by 4 ft times 2",
        "triangle sides 3 m, 4 m, 5 m",
        "trapezoid 10 ft, 6 ft, height 4 ft",
        "trapezoid sides 10 ft, 6 ft, 4 ft, 4 ft",
        "circle across 12 ft",
        "circle part 12 ft, 120 deg",
        "offsets every 5 ft, 0, 3 ft, 4 ft",
        "round 20 ft right 8 ft right 20 ft right 8 ft",
        "rectangle 16 paces by 12' 9\" at 3 ft, 2 ft turned 90 deg",
    ]:
        with subtests.test(line=line):
            from interview.garden.survey import surface_questions as surfacing

            kind = surfacing.PIECES.kind
            view = given(
                {
                    "measured_by": "paces",
                    "walkers.1.pace_line": "50 ft",
                    "walkers.1.pace_counts": "19; 20; 19",
                }
            )
            assert kind.line(taken_apart(line).line, view) == kind.line(line, view)


def test_an_empty_form_is_a_rectangle_that_is_added() -> None:
    assert PieceText().shape == "rectangle" and not PieceText().cut


async def test_pieces_are_added_cut_out_copied_changed_and_removed_by_keyboard(
    sit, measuring
) -> None:
    async with sit(measuring, size=(100, 30)) as person:
        await _opens(person)
        assert "No piece yet" in person.sees_words()
        await person.press("a")
        await person.press("enter")
        await person.types("24")
        await person.press("enter")
        await person.types("13 ft")
        assert "ADDED: 312 ft²" in person.sees_words()
        await person.press("enter")
        assert person.page == "PiecesScreen"
        assert "Plan area so far: 312 ft²; all of it drains here." in person.says("pieces_sum")
        assert "[1] 312 ft²" in person.sees_words()
        await person.press("o")
        await person.press("down", "enter")
        await person.types("6 ft")
        await person.press("enter")
        await person.enters("4 ft")
        assert "Plan area so far: 300 ft²" in person.says("pieces_sum")
        await person.press("home")
        await person.press("d")
        assert "Plan area so far: 612 ft²" in person.says("pieces_sum")
        await person.press("enter")
        await person.press("end", *["backspace"] * 5, *"12 ft", "ctrl+s")
        assert "Plan area so far: 456 ft²" in person.says("pieces_sum")
        await person.press("home", "x")
        assert person.session.answers.texts["surfaces.1.pieces"].splitlines() == [
            "rectangle 12 ft, 13 ft",
            "less triangle 6 ft, 4 ft",
        ]
        await person.press("escape")
        assert person.asked == "surfaces.1.pieces"
        assert "less triangle 6 ft, 4 ft" in person.sees()


async def test_what_cannot_be_is_refused_in_the_form_and_on_the_page(sit, measuring) -> None:
    async with sit(measuring) as person:
        await _opens(person)
        await person.press("a")
        await person.press("ctrl+s")
        assert "Give the length." in person.sees_words()
        await person.types("wide")
        await person.press("enter")
        await person.enters("3 ft")
        assert person.page == "PieceForm"
        assert person.app.screen.query_one("#piece_heard").display
        await person.press("escape")
        await person.press("o")
        await person.press("enter")
        await person.enters("4 ft")
        await person.enters("3 ft")
        assert "Add a piece first, then cut from it." in person.sees_words()
        assert "surfaces.1.pieces" not in person.session.answers.texts


async def test_paced_lengths_are_said_in_feet_and_wait_until_the_pace_is_known(sit, write) -> None:
    paced = {
        "measured_by": "paces",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "20; 20; 20",
    }
    path = write(
        "garden.yaml", {**paced, **SURFACE, "surfaces.1.pieces": "rectangle 16 paces by 8 ft"}
    )
    async with sit(str(path), size=(160, 45)) as person:
        await _opens(person)
        assert "(16 paces = 40 ft)" in person.sees()
        assert "Plan area so far: 320 ft²" in person.says("pieces_sum")
        await person.press("escape")
        await person.goes_to("measured_by")
        await person.answers("tape")
        await _opens(person)
        assert "waits for the pace" in person.sees_words()
        assert "It waits for an answer" in person.sees_words()


async def test_a_piece_is_moved_and_turned_on_the_drawing_and_its_area_stays(
    sit, measuring
) -> None:
    async with sit(measuring, size=(100, 30)) as person:
        await _opens(person)
        for lengths in (("24 ft", "13 ft"), ("8 ft", "6 ft")):
            await person.press("a")
            await person.press("enter")
            await person.enters(lengths[0])
            await person.enters(lengths[1])
        area = person.session.plan.survey.catchment.weighted
        await person.press("v", "right", "right", "up")
        first, second = person.session.answers.texts["surfaces.1.pieces"].splitlines()
        assert " at " in first and " at " in second
        await person.press("left", "space")
        turned = person.session.answers.texts["surfaces.1.pieces"].splitlines()[1]
        assert turned.endswith("turned 15 deg")
        assert person.session.plan.survey.catchment.weighted == area
        await person.press("escape", "escape")
        assert person.asked == "surfaces.1.pieces"


async def test_lines_still_in_the_field_come_along(sit, measuring) -> None:
    async with sit(measuring, size=(60, 20)) as person:
        await person.goes_to("surfaces.1.pieces")
        await person.enters("rectangle 10 ft by 10 ft")
        await person.clicks("draw the pieces")
        await person.rests()
        assert "Plan area so far: 100 ft²" in person.says("pieces_sum")
        await person.press("escape")
        await person.clicks("go on")
        await person.rests()
        assert person.session.answers.texts["surfaces.1.pieces"] == "rectangle 10 ft by 10 ft"


async def test_a_refused_side_keeps_the_focus_and_is_named(subtests, sit, measuring) -> None:
    async with sit(measuring, size=(80, 24)) as person:
        await _opens(person)
        for down, sides, at, said in [
            (0, ["24 ft", "wide"], "side_1", "The width: "),
            (0, ["0", "4 ft"], "side_0", "The length: It must be longer than zero."),
            (0, ["24 by 13", "4 ft"], "side_0", "The length: write one measure here"),
            (3, ["10 ft", "6 ft", "4 ft", "x"], "side_3", "The other slant: "),
            (5, ["12 ft", "400 deg"], "side_1", "The angle: "),
            (2, ["3 ft", "4 ft", "30 ft"], "side_2", "make no triangle"),
        ]:
            with subtests.test(sides=sides):
                await person.press("a", *["down"] * down, "enter")
                for text in sides:
                    await person.enters(text)
                assert person.page == "PieceForm"
                assert said in person.says("piece_heard")
                assert "Piece 1" not in person.says("piece_heard")
                assert person.app.focused.id == at
                assert person.app.focused.value == sides[int(at[-1])]
            await person.press("escape")
            assert person.page == "PiecesScreen"


async def test_how_many_alike_is_refused_in_its_own_field(sit, measuring) -> None:
    async with sit(measuring, size=(80, 24)) as person:
        await _opens(person)
        await person.press("a", "enter")
        await person.enters("24 ft")
        await person.types("13 ft")
        await person.press("tab")
        await person.enters("two")
        assert "How many alike: write a whole number" in person.says("piece_heard")
        assert person.app.focused.id == "alike"


async def test_north_is_turned_by_a_key_and_kept(sit, measuring) -> None:
    async with sit(measuring, size=(80, 24)) as person:
        await _opens(person)
        await person.press("a", "enter")
        await person.enters("24 ft")
        await person.enters("13 ft")
        assert "north" not in person.says("pieces_drawing > .drawn")
        area = person.says("pieces_sum")
        await person.press("u")
        assert "↑ north" in person.sees()
        await person.press("u", "u")
        assert "→ north" in person.sees()
        assert person.session.answers.texts["surfaces.1.surface_north"] == "right"
        await person.press(*["u"] * 6)
        assert "north" not in person.says("pieces_drawing > .drawn")
        assert person.session.answers.texts["surfaces.1.surface_north"] == "not_drawn"
        assert person.says("pieces_sum") == area


async def test_shift_moves_a_piece_five_steps(sit, measuring) -> None:
    async with sit(measuring, size=(80, 24)) as person:
        await _opens(person)
        for _ in range(2):
            await person.press("a", "enter")
            await person.enters("20 ft")
            await person.enters("10 ft")
        await person.press("v", "right")
        before = person.session.answers.texts["surfaces.1.pieces"].splitlines()[1]
        await person.press("shift+right")
        after = person.session.answers.texts["surfaces.1.pieces"].splitlines()[1]
        place = [float(line.partition(" at ")[2].split(" ")[0]) for line in (before, after)]
        assert place[1] - place[0] == pytest.approx(5)


async def test_an_upper_roof_says_the_share_of_the_roof_it_falls_on(sit, write) -> None:
    low = {f"{key}": text for key, text in SURFACE.items()}
    path = write(
        "garden.yaml",
        {
            **low,
            "surfaces.1.gutter_outlets": "2",
            "surfaces.1.pieces": "rectangle 20 ft by 10 ft",
            "surfaces.1.another_surface": "yes",
            "surfaces.2.surface_name": "dormer",
            "surfaces.2.surface_kind": "roof",
            "surfaces.2.falls_on": "south roof",
            "surfaces.2.pieces": "rectangle 10 ft by 10 ft",
        },
    )
    async with sit(str(path)) as person:
        await person.goes_to("surfaces.2.pieces")
        await person.press("f3")
        assert "100 ft²; 50 ft² of it drains here." in person.says("pieces_sum")


@pytest.mark.parametrize(
    ("size", "shown"),
    [((80, 24), True), ((100, 30), True), ((160, 45), True), ((40, 24), False), ((80, 16), False)],
)
async def test_the_small_picture_stands_with_its_question_where_there_is_room(
    sit, measuring, size, shown
) -> None:
    async with sit(measuring, size=size) as person:
        await person.goes_to("surfaces.1.roof_sides")
        assert ("THIS SIDE" in person.sees()) == shown
        assert "Will you measure one side" in person.sees_words()
        if shown:
            await person.press("ctrl+o")
            assert person.sees().count("THIS SIDE") == 1


async def test_a_patio_is_asked_about_in_words_of_its_own(sit, write) -> None:
    patio = {"surfaces.1.surface_name": "patio", "surfaces.1.surface_kind": "paved"}
    async with sit(str(write("garden.yaml", patio)), size=(80, 24)) as person:
        await person.goes_to("surfaces.1.pieces")
        assert "Split it into simple shapes, called pieces" in person.says("asked")
        assert "ladder" not in person.sees() and "gutter" not in person.sees()
        await person.goes_to("surfaces.1.share_percent")
        assert "What part of its water comes to the garden?" in person.says("asked")
        await person.press(*["backspace"] * 3)
        await person.types("1/3")
        assert "I read this as 33.33 %." in person.sees_words()
        await person.press("enter")
        assert person.session.answers.texts["surfaces.1.share_percent"] == "1/3"


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_every_field_of_every_shape_is_seen_and_the_piece_is_drawn_below(
    sit, sample, size
) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.goes_to("surfaces.1.pieces")
        await person.press("f3")
        await person.press("enter")
        assert person.page == "PieceForm"
        screen = person.app.screen
        assert "╱" in person.sees(), "the roof is not painted"
        await person.press("shift+tab")
        for _ in SHAPES:
            await person.press("down")
            await person.rests()
            for name in ("alike", *(f"side_{place}" for place in range(4))):
                line = screen.query_one(f"#{name}")
                if line.display:
                    seen = line.region.intersection(screen.find_widget(line).clip)
                    assert seen.height == line.region.height > 0, name


async def test_the_areas_of_the_pieces_stand_under_each_other(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("surfaces.1.pieces")
        await person.press("f3")
        await person.rests()
        listing = person.app.screen.query_one("#pieces")
        first = [str(one.prompt).splitlines()[0] for one in listing.options]
        assert [one.split()[-2] for one in first] == ["736", "49", "-10"]
        assert len({one.index("ft²") for one in first}) == 1


async def test_in_a_large_window_a_wide_drawing_has_all_of_its_width(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        await _opens(person)
        await person.settles()
        picture = person.app.screen.query_one("#pieces_drawing")
        assert picture.region.width == 160 and not picture.max_scroll_y
        drawn = [row.rstrip() for row in person.sees().splitlines()[picture.region.y :]]
        assert max(map(len, drawn[:-1])) > 140
        await person.pilot.resize_terminal(100, 30)
        await person.settles()
        assert picture.region.x == 50
        # What is higher than wide is larger beside the list.
        await person.press("a", "enter")
        await person.types("20 ft")
        await person.press("enter")
        await person.types("60 ft")
        await person.press("enter")
        await person.pilot.resize_terminal(160, 45)
        await person.settles()
        assert person.page == "PiecesScreen" and picture.region.x > 40
