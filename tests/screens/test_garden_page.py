"""The garden drawn to scale, and what it waits for."""

from __future__ import annotations


async def test_four_views_by_number_and_arrow_drawn_anew_for_the_window(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 30)) as person:
        await person.goes_to("deepest_pond")
        assert "F3 draw" in person.sees()
        await person.press("f3")
        await person.settles()
        assert "PLAN of the garden" in person.sees() and "overflow notch" in person.sees()
        assert "[1 From above]" in person.sees()
        wide = max(len(line) for line in person.sees().splitlines())
        await person.press("2")
        await person.settles()
        assert "SECTION along the slope" in person.sees()
        await person.press("right")
        await person.settles()
        assert "POND DEPTH in the storm" in person.sees()
        await person.press("4")
        await person.settles()
        assert "Nothing to change." in person.sees_words()
        await person.press("1")
        await person.pilot.resize_terminal(60, 20)
        await person.settles()
        assert "PLAN of the garden" in person.sees()
        assert max(len(line) for line in person.sees().splitlines()) <= 60 < wide
        names = ["From above", "Cut through", "Pond", "Options"]
        for number in range(1, 5):
            await person.press(str(number))
            tabs = next(line for line in person.sees().splitlines() if "From above" in line)
            told = [f"{at} {name}" for at, name in enumerate(names, 1)]
            told[number - 1] = f"[{told[number - 1]}]"
            assert all(one in tabs for one in told), tabs
        await person.press("escape")
        assert person.asked == "deepest_pond"


async def test_a_garden_without_sizes_says_which_answer_each_drawing_waits_for(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"}))) as person:
        await person.press("f3")
        for view in "1234":
            await person.press(view)
            await person.settles()
            assert "This waits for an answer:" in person.sees_words()


async def test_a_garden_too_large_for_its_room_has_ways_out_with_numbers(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 30)) as person:
        for address, text in {"room_length": "20 ft", "room_width": "15 ft"}.items():
            person.session.jump(address)
            person.session.offer(person.session.step, text)
        person.session.jump("floor_length")
        person.session.clear(person.session.step)
        await person.press("f3")
        await person.press("4")
        await person.settles()
        seen = person.sees_words()
        assert "You could:" in seen and "Make it as large as the room allows: over all" in seen
        assert "fits" in seen and "of rain" in seen
