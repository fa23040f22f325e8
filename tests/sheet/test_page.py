"""The sheet to print: sound HTML, nothing from outside, the plan's own figures, two pages."""

from __future__ import annotations

import datetime as dt
import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

import pytest
import yaml

from interview.asking import route
from interview.asking.question import Unanswered
from interview.garden import store
from interview.garden.figures import BY_KEY
from interview.garden.opening import plan_of as plan_from
from interview.garden.planting.laid_out import letters
from interview.quantities.shown import length_words
from interview.quantities.units import magnitude, unit_name
from interview.sheet import page_parts, page_plants, page_room
from interview.sheet.card import card_text
from interview.sheet.common import stopped
from interview.sheet.figures_file import figures_text
from interview.sheet.markup import tag, text
from interview.sheet.page import card_html, page_html
from interview.sheet.page_parts import FIGURES, STOPPED
from interview.sheet.report import outside_text, parts, plan_text
from interview.sheet.stakeout import peg_table

SAMPLES = Path(__file__).parents[2] / "sample_answers"
NAMES = ("finished_us", "finished_metric", "usual_us", "halfway_soak_test", "not_here")
VOID = {"br", "hr", "img", "input", "link", "meta"}
"""Some of the void elements of the WHATWG HTML standard, 13.1.2: they have no end tag."""
HOSTILE = '<script>x</script>"><img src=x onerror=y>&'


class Tree(HTMLParser):
    """Every element with its attributes and its text; wrong nesting is an error."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.found: list[tuple[str, dict[str, str]]] = []
        self.texts: list[str] = []
        self.by_place: list[tuple[int, str]] = []
        self._places: list[int] = []
        self.feed(page)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, {key: value or "" for key, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)
            self._places.append(len(self.found) - 1)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, {key: value or "" for key, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open[-1] == tag, (tag, self.open)
        self.open.pop()
        self._places.pop()

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] not in ("style", "title", "desc"):
            self.texts.append(data)
            self.by_place += [(place, data) for place in self._places]

    def within(self, place: int) -> str:
        """All text within the element of a number."""
        return "".join(text for at, text in self.by_place if at == place)

    def of(self, tag: str, **wanted: str) -> list[int]:
        """The numbers of the elements of a kind, with these attributes."""
        return [
            place
            for place, (name, attrs) in enumerate(self.found)
            if name == tag and wanted.items() <= attrs.items()
        ]


@pytest.fixture(scope="module", params=NAMES)
def garden(request):
    return sample(request.param)


def sample(name: str, **other: str):
    path = SAMPLES / f"{name}.yaml"
    answers = store.load(path)[0].answers
    for key, words in other.items():
        answers = answers.with_text(key, words)
    return plan_from(answers, path.parent, dt.datetime(2026, 5, 28, 9, tzinfo=dt.UTC))


def test_the_page_is_sound_and_takes_nothing_from_outside(garden):
    page = page_html(garden, working=True)
    tree = Tree(page)
    names = {name for name, _ in tree.found}
    assert not names & {"script", "link", "img", "iframe", "object", "embed", "image", "use", "a"}
    for _, attrs in tree.found:
        assert not [key for key in attrs if key.startswith("on") or key in ("src", "href")]
    style = page.partition("<style>")[2].partition("</style>")[0]
    assert "url(" not in style and "@import" not in style and "@font-face" not in style
    ids = Counter(attrs["id"] for _, attrs in tree.found if "id" in attrs)
    assert max(ids.values(), default=1) == 1
    used = set(re.findall(r"url\((.*?)\)", page))
    assert {one.removeprefix("#") for one in used} <= set(ids)
    assert all(one.startswith("#") for one in used)


def test_every_drawing_has_its_text(garden):
    tree = Tree(page_html(garden, working=True))
    ids = {attrs.get("id") for _, attrs in tree.found}
    for name, attrs in tree.found:
        if name == "svg" and attrs.get("aria-hidden") != "true":
            assert attrs["role"] == "img"
            if "aria-label" not in attrs:
                assert {attrs["aria-labelledby"], attrs["aria-describedby"]} <= ids


def test_what_a_person_typed_is_text_and_never_markup():
    path = SAMPLES / "finished_us.yaml"
    loaded, _ = store.load(path)
    now = dt.datetime(2026, 5, 28, 9, tzinfo=dt.UTC)
    kind = ("garden_name", "lines_ticket", "notes", "spot_name", "hole_name", "surface_name")

    def pages(words: str) -> list[tuple[str, Tree]]:
        answers = loaded.answers
        for step in route.steps(answers):
            if step.question.key in kind:
                answers = answers.with_text(step.address, words)
        plan = plan_from(answers, path.parent, now)
        made = (page_html(plan, working=True), card_html(plan))
        return [(one, Tree(one)) for one in made]

    for (page, tree), (_, plain) in zip(pages(HOSTILE), pages("harmless"), strict=True):
        assert {name for name, _ in tree.found} == {name for name, _ in plain.found}
        assert not [attrs for _, attrs in tree.found if "onerror" in attrs or "src" in attrs]
        assert "<script>x</script>" in "".join(tree.texts)
        assert "<script" not in page and "<img" not in page


def test_no_text_can_become_markup_or_hide():
    assert text('<b>&"\u202ex') == "&lt;b&gt;&amp;&quot;&lt;U+202E&gt;x"
    assert tag("p", "<i>", tag("b", "<i>"), title='"') == (
        '<p title="&quot;">&lt;i&gt;<b>&lt;i&gt;</b></p>'
    )


def test_the_six_figures_are_those_of_the_list_of_figures(garden):
    tree = Tree(page_html(garden))
    listed = yaml.safe_load(figures_text(garden))["figures"]
    for key, _ in FIGURES:
        (place,) = tree.of("div", **{"data-figure": key})
        said = tree.within(place)
        value = listed[key]["value"]
        if value is None:
            assert "waits for" in said
        else:
            figure = BY_KEY[key]
            number = figure.rounding.write(value) if isinstance(value, float) else str(value)
            unit = unit_name(figure.unit(garden.metric))
            assert said.startswith(f"{number} {unit}".strip()), (key, said)


def test_each_kind_has_its_letter_once_in_the_drawing_and_its_row(garden):
    if not _planted(garden):
        pytest.skip("nothing is chosen yet")
    page = page_html(garden)
    zones = garden.planting.chosen.zones
    tree = Tree(page)
    drawn = page.partition('aria-labelledby="above-title"')[2].partition("</svg>")[0]
    marked = Counter(re.findall(r">([a-z]{1,2})</text>", drawn))
    rows = Counter(tree.within(place) for place in tree.of("td", **{"class": "l"}))
    named = letters(zones)
    assert set(marked) == set(rows) == set(named.values())
    # A kind of several zones stands in each of them.
    assert marked == rows
    total = sum(pick.count for zone in zones for pick in zone.picks)
    counts = [tree.within(place) for place in tree.of("td", **{"class": "n"})]
    assert sum(int(one) for one in counts if one.isdigit()) == total


def _planted(plan) -> bool:
    try:
        return bool(plan.planting.chosen.total)
    except Unanswered:
        return False


def test_a_zone_that_is_sown_lists_its_kinds_as_seed_on_every_list():
    plan = sample("finished_us", plant_size="seed")
    rim = next(one for one in plan.planting.chosen.zones if one.sown)
    assert rim.picks
    tree = Tree(page_html(plan))
    rows = [tree.within(place) for place in tree.of("tr")]
    lists = outside_text(plan), plan_text(plan)
    for name in (pick.plant.scientific_name for pick in rim.picks):
        assert any(row.endswith("seed") for row in rows if name in row), name
        for told in lists:
            assert re.search(rf"\[ \] seed of [^[]*\({name}\)", " ".join(told.split())), name
    assert not [told for told in (*rows, *lists) if "0 plants" in told or "[ ] 0 x" in told]


def test_the_months_filled_are_the_months_of_bloom():
    plan = sample("finished_us")
    page = page_html(plan)
    strips = re.findall(r'aria-label="(?:blooms|no month).*?</svg>', page, re.S)
    picks = [pick for zone in plan.planting.chosen.zones for pick in zone.picks]
    cell = page_plants._CELL_MM
    filled = [
        tuple(int(float(x) / cell) + 1 for x in re.findall(r'<rect x="([\d.]+)"', strip))
        for strip in strips
    ]
    assert filled == [pick.plant.bloom_months for pick in picks]


def test_a_distance_from_memory_is_marked_as_on_the_plain_sheet():
    plan = sample("finished_us")
    tree = Tree(page_html(plan))
    cells = [tree.within(place) for place in tree.of("td", **{"class": "n"})]
    told = re.findall(r"([\d.]+ in\*?) apart", " ".join(outside_text(plan).split()))
    assert cells[1::2] == told and {one.endswith("*") for one in told} == {True, False}


@pytest.mark.parametrize("name", ["finished_us", "finished_metric"])
def test_the_garden_from_above_bears_its_sizes_to_scale(name):
    plan = sample(name)
    page = page_html(plan)
    drawn = page.partition('aria-labelledby="above-title"')[2].partition("</svg>")[0]
    sizes = {}
    for line in re.findall(
        r"<g(?: transform=\"rotate\(-90\)\")?><path d=[^>]*>\s*<text.*?</g>", drawn
    ):
        ticks = [float(x) for x in re.findall(r"M([-\d.]+) [-\d.]+ v3.2", line)]
        words = re.search(r">([^<]+)</text>", line)[1]
        sizes["upright" if "rotate" in line else "level", words] = ticks[1] - ticks[0]
    garden, unit = plan.size.garden, "m" if plan.metric else "ft"
    floor = (garden.floor_length, garden.floor_width)
    every = {"floor": floor, "over all": plan.size.over_all}
    scale = []
    for what, sides in every.items():
        for way, side in zip(("level", "upright"), sides, strict=True):
            told = f"{what} {length_words(side, plan.metric)}"
            scale.append(sizes[way, told] / magnitude(side, unit))
    # The lines are as long as what they tell, to a tenth of a millimetre.
    assert max(scale) / min(scale) == pytest.approx(1, abs=0.01)
    assert any(words.startswith("middle to notch ") for _, words in sizes)
    assert sum(words.startswith("rim ") for _, words in sizes) == 2
    assert ">berm " in drawn and ">water in " in drawn
    assert re.search(r">overflow notch [^<]* wide<", drawn)
    # It is the largest thing on its page: half as wide as the paper at the least.
    assert sizes["level", f"over all {length_words(plan.size.over_all[0], plan.metric)}"] > 80


def test_what_may_not_be_built_is_neither_measured_nor_tended(plan_of, sized, located, level_spot):
    whole = {**located, **level_spot, **sized, "floor_length": "15 ft", "floor_width": "7 ft"}
    for often, told in (("never", True), ("often", False)):
        page = page_html(plan_of({**whole, "spots.1.stands_after_rain": often}))
        assert ("middle to " in page) == told
        assert ("<h2>First year</h2>" in page) == told


def test_of_several_beds_the_page_says_how_far_apart_they_lie():
    plan = sample("finished_us", beds="2", beds_how="in_a_row")
    tree = Tree(page_html(plan))
    said = " ".join(" ".join(tree.texts).split())
    assert "of one of 2 beds. Leave 2 ft or more" in said
    assert " drains to them, and they empty in " in said
    assert "Bed 1 of 2, the uppermost:" in said and "Bed 2 of 2, the one below:" in said


def test_a_garden_begun_prints_what_there_is_and_what_it_waits_for(plan_of):
    page = page_html(plan_of({"garden_name": "Oak"}))
    tree = Tree(page)
    said = " ".join("".join(tree.texts).split())
    assert "<h1>Oak</h1>" in page
    for title in ("From above", "Cut along the slope", "Pegging out"):
        (place,) = [one for one in tree.of("section") if tree.within(one).startswith(title)]
        assert "Waits for: " in tree.within(place), title
    assert "Still to find out" in said and "First year" in said and "Do next" in said


def test_while_a_stop_stands_there_is_nothing_to_peg_by(plan_of, sized, located, level_spot):
    whole = {**located, **level_spot, **sized, "floor_length": "15 ft", "floor_width": "7 ft"}
    good, stopped = plan_of(whole), plan_of({**whole, "spots.1.stands_after_rain": "often"})
    assert 'class="pegs"' in page_html(good) and STOPPED not in page_html(good)
    assert 'class="pegs"' not in page_html(stopped) and STOPPED in page_html(stopped)


def test_the_pegs_are_those_of_the_plain_sheet():
    plan = sample("finished_us")
    tree = Tree(page_html(plan))
    (table,) = tree.of("table", **{"class": "pegs"})
    said = tree.within(table)
    for row in peg_table(plan).rows():
        assert "".join(row) in said


def test_a_metric_garden_is_told_in_metric_alone():
    tree = Tree(page_html(sample("finished_metric"), working=False))
    said = " ".join(tree.texts)
    assert not re.search(r"\d (ft|in|ft²|ft³|gal|yd³)\b", said)
    assert "downpipe" in said and "downspout" not in said


def test_no_page_is_left_to_the_cautions_alone(monkeypatch):
    # What stands under the plants goes on together; where the first page spills it fills the next.
    plan = sample("finished_us")
    plants, care = "<h2>The plants</h2>", "<h2>Take care</h2>"
    for spills, order in (
        (False, ("<footer>", plants, 'class="together"', "<h2>What was found</h2>", care)),
        (True, ("<h2>What was found</h2>", plants, care, "<footer>")),
    ):
        monkeypatch.setattr(page_parts, "spills", lambda _, spills=spills: spills)
        body = page_html(plan).partition("<body>")[2]
        places = [body.index(one) for one in order]
        assert places == sorted(places), spills


def test_the_first_page_spills_where_its_picture_would_be_too_low():
    def page(**more):
        told = {"steps": ["Dig."], "keys": 4, "notes": [], "peg_words": [], "pegs": 8}
        more = {"section": ["Heights."], "section_keys": 4, "name": "Oak", **more}
        return page_room.FrontRoom(page_room.FrontPage(**told, **more))

    assert not page().spills and page().high > page_room.LEAST_MM
    few = page(open=["Slope. Measure it."])
    assert not few.spills and few.high < page().high
    many = page(open=["Slope. Measure it."] * 20)
    assert many.spills and many.high == page_room.LEAST_MM


def test_a_finished_garden_keeps_its_first_page_also_where_digging_is_shut(subtests):
    for name in ("finished_us", "finished_metric", "usual_us"):
        answers = store.load(SAMPLES / f"{name}.yaml")[0].answers
        for day in (dt.datetime(2026, 5, 28, 9), dt.datetime(2026, 11, 29, 12)):
            with subtests.test(name=name, day=day):
                plan = plan_from(answers, SAMPLES, day.replace(tzinfo=dt.UTC))
                assert not page_parts.spills(plan)


def test_the_two_pages_name_only_parts_that_they_say_how_to_get(garden):
    page = page_html(garden)
    footer = page[page.index("<footer>") : page.index("</footer>")]
    for part in ("DIGGING", "LEVELS BEFORE PLANTING", "SHOPPING LIST"):
        there = part in footer and f"\n{part} -" in outside_text(garden)
        assert there is not stopped(garden), part
    assert stopped(garden) or ("J on the page of the plan" in footer and "--plan FILE" in footer)


def test_the_working_leaves_no_part_of_the_plain_sheet_out(garden):
    tree = Tree(page_html(garden, working=True))
    said = " ".join(" ".join(tree.texts).split())
    titles = [tree.within(place) for place in tree.of("h2")]
    for lines in parts(garden):
        if len(lines) > 2 and set(lines[2]) == {"-"} and lines[1] != "DO NEXT":
            assert lines[1] in titles
    assert "YOUR ANSWERS, AS TYPED" in titles
    for step in route.steps(garden.answers):
        words = step.view(garden.answers).text(step.question)
        if words and words.isascii():
            assert " ".join(words.split()) in said, step.address
    assert "YOUR ANSWERS, AS TYPED" not in page_html(garden)


def test_the_card_as_html_says_what_its_text_says(garden):
    tree = Tree(card_html(garden))
    shown = " ".join(" ".join(tree.texts).split())
    for line in card_text(garden).splitlines():
        assert " ".join(line.rstrip("-").split()) in shown
