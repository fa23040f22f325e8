"""From what is answered about surfaces to what drains here, and the sheet that says so."""

from __future__ import annotations

import pytest

from interview.asking.question import Unanswered
from interview.drawing.canvas import cells
from interview.garden.place import questions as start
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import share_questions as sharing
from interview.garden.survey import surface_questions as surfacing
from interview.garden.survey.results import drawing_of, runoff_ways, way_of, whole_share
from interview.quantities.units import magnitude
from interview.sheet import survey as sheet
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text


def here(plan):
    return [magnitude(one.drains_here, "ft**2") for one in plan.survey.catchment.surfaces]


def surface(number, kind="roof", pieces="rectangle 20 ft by 30 ft", **more):
    at = f"surfaces.{number}."
    name = {"roof": "roof", "lawn": "lawn"}.get(kind, kind) + f" {number}"
    return {
        at + "surface_name": name,
        at + "surface_kind": kind,
        **{at + key: text for key, text in more.items()},
        at + "pieces": pieces,
    }


def test_the_part_of_a_roof_that_drains_here(subtests, plan_of):
    for more, share in [
        ({}, 1.0),
        ({"gutter_outlets": "2"}, 1 / 2),
        ({"gutter_outlets": "3", "outlets_here": "2"}, 2 / 3),
        ({"gutter_outlets": "2", "outlets_here": "2"}, 1.0),
        (
            {
                "gutter_outlets": "2",
                "share_known": "high_point",
                "gutter_this_side": "10 ft",
                "gutter_whole": "40 ft",
            },
            1 / 4,
        ),
        ({"gutter_outlets": "2", "share_known": "percent", "share_percent": "30 %"}, 0.3),
        ({"spout_percent": "50 %"}, 0.5),
        ({"gutter_outlets": "2", "spout_percent": "50 %"}, 0.25),
        ({"roof_sides": "both"}, 0.5),
        ({"roof_sides": "all"}, 1.0),
        ({"roof_sides": "all", "gutter_outlets": "4", "outlets_here": "2"}, 0.5),
        ({"roof_sides": "both", "gutter_outlets": "2"}, 0.25),
        ({"surface_basis": "slope", "surface_pitch": "12 in 12"}, 0.5**0.5),
    ]:
        with subtests.test(more=more, share=share):
            plan = plan_of({"units": "us", **surface(1, **more)})
            assert here(plan) == pytest.approx([600 * share])


def test_an_upper_roof_takes_the_share_of_the_roof_it_falls_on(plan_of):
    texts = {
        "units": "us",
        **surface(1, gutter_outlets="2", another_surface="yes"),
        **surface(2, falls_on="ROOF 1", roof_sides="both"),
    }
    plan = plan_of(texts)
    assert here(plan) == pytest.approx([300, 150])
    assert plan.survey.catchment.driver == "the share of roof 1"
    alone = plan_of({**texts, "surfaces.2.falls_on": "no"})
    assert here(alone) == pytest.approx([300, 300])


def test_two_walkers_measure_one_roof(plan_of, walkers):
    plan = plan_of({**walkers, **surface(1, pieces="rectangle 8 paces by 10 paces Bob")})
    assert here(plan) == pytest.approx([8 * 2.5 * 10 * 3])
    names = {name for name, part in plan.survey.catchment.shares.items() if part > 0}
    assert {"the length of the pace of Ann", "the length of the pace of Bob"} <= names
    sheet = plan_text(plan)
    assert "Pace of Ann: one pace is 2.5 ft" in sheet
    assert "Pace of Bob: one pace is 3 ft" in sheet
    assert "At the longest length paced: over 30 ft" in sheet
    assert '{name: "Bob", pace: 3' in figures_text(plan)


def test_a_slope_keeps_the_error_of_the_pace(plan_of):
    pacing = {
        "measured_by": "paces",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "19; 20; 19; 20",
    }
    slope = {"surface_basis": "slope", "surface_pitch": "6 in 12"}
    paced = "rectangle 16 paces by 7 paces"
    level = plan_of({**pacing, **surface(1, pieces=paced)}).survey.catchment
    steep = plan_of({**pacing, **surface(1, pieces=paced, **slope)}).survey.catchment
    assert steep.relative_error == pytest.approx(level.relative_error)
    assert steep.shares["the length of your pace"] > 0.01


def test_a_local_coefficient_stands_in_place_of_the_usual_one(plan_of):
    texts = {"units": "us", **surface(1, "gravel", runoff_local="0.7")}
    assert magnitude(plan_of(texts).survey.catchment.weighted, "ft**2") == pytest.approx(420)
    numbered = plan_of({**texts, "runoff_by": "curve_number"})
    assert magnitude(numbered.survey.catchment.weighted, "ft**2") == pytest.approx(420)
    usual = plan_of({**texts, "surfaces.1.runoff_local": "usual"})
    assert magnitude(usual.survey.catchment.weighted, "ft**2") == pytest.approx(150)


def test_a_local_coefficient_is_a_part(subtests, given):
    for text in ["1.2", "-0.1", "some"]:
        with subtests.test(text=text), pytest.raises(ValueError, match=r"\.$"):
            given({"surfaces.1.runoff_local": text})


def test_lawn_goes_by_its_cover_and_soil(subtests, plan_of):
    """The cells of TR-55 Table 2-2a."""
    for group, cover, number in [
        ("b", "lawn_good", 61),
        ("c", "lawn_fair", 79),
        ("d", "lawn_poor", 89),
        ("a", "bare", 77),
    ]:
        with subtests.test(group=group, cover=cover, number=number):
            plan = plan_of(
                {"rain_depth": "2 in", "soil_group": group, **surface(1, "lawn", lawn_cover=cover)}
            )
            ways = runoff_ways("lawn", plan.answers.at("surfaces", 1))
            assert ways.number == number
            assert ways.coefficient is None
            storage = 1000 / number - 10
            runoff = max(0.0, 2 - 0.2 * storage) ** 2 / (2 + 0.8 * storage)
            assert plan.survey.catchment.surfaces[0].coefficient == pytest.approx(runoff / 2)


@pytest.fixture
def yard(plan_of):
    return plan_of(
        {
            "units": "us",
            "rain_depth": "1 in",
            "house_area": "1200 sq ft",
            **surface(1, gutter_outlets="2", another_surface="yes"),
            **surface(2, "lawn", "triangle 30 ft by 20 ft"),
        }
    )


def part_of(sheet):
    return sheet.partition("WHAT DRAINS HERE")[2].partition("DEPTH AND SIZE")[0]


def test_the_sheet_says_what_each_surface_brings_in_words_to_picture(yard):
    sheet = part_of(plan_text(yard))
    row = next(line for line in sheet.splitlines() if line.startswith("roof 1"))
    assert row.split() == ["roof", "1", "600", "50%", "300", "0.95", "180"]
    assert "barrels of 55 gallons each" in " ".join(sheet.split())
    assert "The roof that drains here is 25 % of the house" in sheet
    assert "drains\nabout 25 % of the house" in sheet.replace("drains about", "drains\nabout")
    assert "Measure this again" in sheet and "the share of roof 1" in sheet
    assert "0.79 (CN 98)" in sheet and "0.083 (CN 80)" in sheet
    assert "50 % of it drains here: 300 ft² of 600 ft²." in sheet


def test_the_volume_is_the_weighted_area_under_the_rain(yard):
    found = yard.survey.catchment
    gallons = magnitude(found.brings(yard.answers[start.RAIN_DEPTH]), "gal")
    assert gallons == pytest.approx(magnitude(found.weighted, "ft**2") / 12 * 7.48052, rel=1e-6)
    assert "catchment_volume:" in figures_text(yard)


def test_metric_sheets_speak_of_litres(plan_of):
    plan = plan_of({"units": "metric", **surface(1, pieces="rectangle 6 m by 9 m")})
    sheet = part_of(plan_text(plan))
    assert "barrels of 200 L each" in " ".join(sheet.split()) and "brings L" in sheet
    assert "gal" not in sheet and "ft²" not in sheet
    assert "Does it make sense?" in sheet


def test_every_line_of_the_sheet_fits_the_paper(yard):
    assert max(map(len, part_of(plan_text(yard)).splitlines())) <= 76


def drawn(given, texts, number=1):
    view = given({"units": "us", **texts}).at("surfaces", number)
    return "\n".join(cells(drawing_of(view), 76, 24))


def test_north_is_drawn_only_where_a_person_said_which_way_it_is(given):
    spot = {"spots.1.spot_name": "a", "spots.1.downhill_direction": "e"}
    loose = surface(1, pieces="rectangle 20 ft by 10 ft", surface_north="left")
    put = surface(1, pieces="rectangle 20 ft by 10 ft at 0 ft, 0 ft")
    assert "north" not in drawn(given, {**spot, **put})
    assert "north" not in drawn(given, {**spot, **loose})
    assert "north" not in drawn(given, {**put, "surfaces.1.surface_north": "not_drawn"})
    for way, arrow in (("up", "↑"), ("left", "←"), ("down_right", "↘"), ("up_left", "↖")):
        assert f"{arrow} north" in drawn(given, {**put, "surfaces.1.surface_north": way})


def test_a_surface_without_pieces_waits_for_them(given, plan_of):
    texts = {"surfaces.1.surface_name": "a", "surfaces.1.surface_kind": "roof"}
    with pytest.raises(Unanswered) as gap:
        _ = plan_of(texts).survey.catchment
    assert gap.value.question is surfacing.PIECES


def test_every_question_on_what_drains_here_has_its_picture():
    pictured = (
        walking.PACE_COUNTS,
        sharing.FALLS_ON,
        sharing.GUTTER_OUTLETS,
        sharing.OUTLETS_HERE,
        sharing.SHARE_KNOWN,
        sharing.SHARE_PERCENT,
        sharing.SPOUT_PERCENT,
        sharing.VALLEY,
        surfacing.BASIS,
        surfacing.ROOF_SIDES,
        surfacing.PIECES,
    )
    for question in pictured:
        assert question.picture.isascii() and len(question.picture.splitlines()) >= 4
        assert max(map(len, question.picture.splitlines())) <= 70


def test_plain_lines_show_the_picture_with_how_to_find_out(session_of):
    from interview.plain import interview as plain

    session = session_of()
    said: list[str] = []
    lines = iter([":go surfaces.1.pieces", ":picture", ":quit"])
    plain.run(session, lambda _prompt: next(lines), said.append)
    assert any("an L shape is two rectangles" in one for one in said)


def test_roofs_that_fall_on_one_another_are_held_against_the_house_together(plan_of):
    texts = {
        "units": "us",
        "house_area": "1500 sq ft",
        **surface(1, another_surface="yes"),
        **surface(2, falls_on="roof 1"),
    }
    together = [one for one in plan_of(texts).findings if one.key == "whole_roof"]
    assert [one.said for one in together] == [
        "The roof that drains here is 80 % of the house: is that all of it?"
    ]
    apart = plan_of({**texts, "surfaces.2.falls_on": "no"})
    assert not [one for one in apart.findings if one.key == "whole_roof"]


UPPER = {
    **surface(1, gutter_outlets="2", another_surface="yes"),
    **surface(2, falls_on="roof 1", roof_sides="both"),
}


def test_a_part_is_marked_by_a_bar_that_says_how_much_and_not_where(subtests, given):
    for texts, number, percent, words in [
        (surface(1, roof_sides="both"), 1, "50 %", "one of two like sides of the ridge"),
        (surface(1, gutter_outlets="2"), 1, "50 %", "1 of the gutter's 2 downspouts, taken as"),
        (
            surface(
                1,
                gutter_outlets="2",
                share_known="high_point",
                gutter_this_side="10 ft",
                gutter_whole="40 ft",
            ),
            1,
            "25 %",
            "10 ft of the 40 ft of gutter fall this way.",
        ),
        (
            surface(1, gutter_outlets="3", outlets_here="2", share_known="percent",
                    share_percent="60 %"),
            1,
            "60 %",
            "60 % of its water: 2 of the gutter's 3 downspouts.",
        ),
        (surface(1, spout_percent="1/3"), 1, "33.3 %", "33.3 % of the downspout's water"),
        (UPPER, 2, "25 %", "It goes over roof 1, and on as that does."),
        (surface(1, "paved", share_percent="half"), 1, "50 %", "50 % of its water runs to the"),
    ]:  # fmt: skip
        with subtests.test(texts=texts, number=number, percent=percent, words=words):
            shown = drawn(given, texts, number)
            assert "drains here: how much of it, not where" in shown
            assert words in " ".join(shown.split())
            bar = next(line for line in shown.splitlines() if line.startswith("█") and "·" in line)
            assert bar.endswith(f" {percent}")
            long = bar.count("█") + bar.count("·")
            part = float(percent.removesuffix(" %")) / 100
            assert bar.count("█") == pytest.approx(part * long, abs=1)
            assert "│·" not in shown


def test_a_surface_that_drains_here_whole_is_shaded(subtests, given):
    for texts, words in [
        (surface(1), "All of it drains here."),
        (surface(1, gutter_outlets="2", outlets_here="2"), "All 2 downspouts of the gutter"),
        (surface(1, roof_valley="yes"), "A valley pours in: the slopes on both its sides count."),
    ]:
        with subtests.test(texts=texts, words=words):
            shown = drawn(given, texts)
            assert "··· drains here" in shown and "│····" in shown and "█" not in shown
            assert words in shown


def test_nothing_is_marked_where_the_part_is_not_known_yet(given):
    texts = surface(1, gutter_outlets="2", share_known="high_point")
    shown = drawn(given, texts)
    assert "How much of it drains here is not known yet." in shown
    assert "█" not in shown and "drains here:" not in shown and "··" not in shown


def test_the_parts_of_the_drawing_and_of_the_table_are_the_same(plan_of):

    plan = plan_of({"units": "us", **UPPER})
    for row, view in zip(
        plan.survey.catchment.surfaces, plan.answers.items("surfaces"), strict=True
    ):
        assert whole_share(way_of(view)) == pytest.approx(row.share)


def test_pieces_are_asked_for_in_the_words_of_the_surface(subtests, given):
    for texts, said, unsaid in [
        (surface(1), "How big is this side of the roof?", "whole roof"),
        (surface(1, roof_sides="both"), "the whole roof, both its sides", "this side of"),
        (surface(1, roof_sides="all"), "How big is the whole roof?", "both its sides"),
        (surface(1, "paved"), "Split it into simple shapes, called pieces", "roof"),
        (surface(1, "lawn"), "Split it into simple shapes, called pieces", "roof"),
    ]:
        with subtests.test(texts=texts, said=said, unsaid=unsaid):
            asked = surfacing.PIECES.worded(given(texts).at("surfaces", 1))
            assert said in asked.text and unsaid not in asked.text
            roof = texts["surfaces.1.surface_kind"] == "roof"
            assert ("ladder" in asked.caution) == roof
            assert ("overhang" in asked.find_out) == roof


def findings_of(plan):
    return [one for one in plan.findings if one.key == "whole_roof"]


def test_several_downspouts_may_drain_the_whole_house_with_its_overhangs(plan_of):
    texts = {"units": "us", "house_area": "600 sq ft", **surface(1, gutter_outlets="2")}
    both = {**texts, "surfaces.1.outlets_here": "2"}
    assert not findings_of(plan_of(both))
    assert findings_of(plan_of({**texts, "house_area": "400 sq ft"}))
    (found,) = findings_of(plan_of({**both, "house_area": "450 sq ft"}))
    assert "133 % of the house" in found.said and "overhangs" in found.limit


def test_all_roofs_together_are_held_against_the_house(plan_of):
    texts = {
        "units": "us",
        "house_area": "1100 sq ft",
        **surface(1, another_surface="yes"),
        **surface(2, another_surface="yes"),
        **surface(3),
    }
    (found,) = findings_of(plan_of(texts))
    assert "164 % of the house" in found.said


def test_a_table_whose_rounded_parts_do_not_add_up_says_so(plan_of, roof):
    # 56 and 100.4 m2 make 156.4, which is told as 160.
    texts = roof("rectangle 7 m by 8 m") | roof("rectangle 10 m by 10.04 m", number=2)
    plan = plan_of({"units": "metric", **texts, "surfaces.1.another_surface": "yes"})
    said = " ".join(" ".join(sheet.survey(plan)).split())
    assert "“here” is 160 m² in all, which may differ from the sum of the rounded parts" in said
    even = plan_of({"units": "metric", **roof("rectangle 7 m by 8 m")})
    assert "rounded by itself" not in " ".join(sheet.survey(even))


def test_the_surfaces_listed_before_are_named_where_one_of_them_is_asked_for(given, roof):
    texts = roof("rectangle 7 m by 8 m") | {"surfaces.1.another_surface": "yes"}
    answers = given({**texts, "surfaces.2.surface_name": "porch"}).at("surfaces", 2)
    assert sharing.FALLS_ON.worded(answers).text.endswith("Listed: roof 1.")


def test_a_downspout_brings_the_water_of_the_roofs_alone(plan_of):
    texts = {"units": "us", **surface(1), **surface(2, "paved", another_surface="no")}
    texts["surfaces.1.another_surface"] = "yes"
    found = plan_of(texts).survey
    roof, paved = found.peak.surfaces
    assert magnitude(found.peak_roofs, "ft**2") == pytest.approx(magnitude(roof.weighted, "ft**2"))
    assert found.peak_roofs < found.peak_area and magnitude(paved.weighted, "ft**2") > 0
    bare = plan_of({"units": "us", **surface(1, "paved")}).survey
    assert bare.peak_roofs == bare.peak_area


def test_a_valley_is_told_of_the_roof_that_has_it_alone(given):
    answers = given({**UPPER, "surfaces.1.roof_valley": "yes"})
    told = [[part.words for part in way_of(one)] for one in answers.items("surfaces")]
    assert any("valley" in said for said in told[0])
    assert not any("valley" in said for said in told[1])
    assert whole_share(way_of(answers.at("surfaces", 2))) == pytest.approx(0.25)
