"""What is due in a garden: the state it is in, said in a sentence or two, and where Enter leads.

Everything goes by the answers, the plan and the time it holds.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Iterator
from itertools import chain
from typing import NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.question import Status, Unanswered
from interview.asking.route import Step
from interview.garden import due_keys as keys
from interview.garden import gate, soak_due
from interview.garden.afterwards import questions as review
from interview.garden.dig_window import dig_window
from interview.garden.due_words import (
    FIRST_SITTING_MIN,
    MEND_PAGE,
    PLAN_PAGE,
    STORM_AFTER_DAYS,
    WAITING_PAGE,
    Due,
    GardenState,
    count_words,
    day_words,
)
from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.site import lines_questions as buried
from interview.garden.site.gate import Shut, gate_today, locate_state, shut_by
from interview.garden.site.locate import Cause
from interview.garden.site.results import STOPPED_BY, spot_slope
from interview.garden.site.spot_questions import chosen_spot
from interview.garden.size import questions as bed
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak.timed import RunState
from interview.garden.soak.times import clock, utc
from interview.quantities.evidence import Finding
from interview.quantities.shown import sides_words, slope_words


def no_title(_: Step) -> str:
    """Return nothing: a question is named by its label."""
    return ""


def due(
    plan: Plan,
    rough: str = "",
    taken: Collection[str] = (),
    title: Callable[[Step], str] = no_title,
    faults: int = 0,
    order: Callable[[Answers], list[Step]] = route.steps,
    here: Collection[str] = (),
) -> Due:
    """Return what is due: smell, running test, stop, faults, stale marks, then what is open first.

    ``rough`` is the first size in words, such as ``About 110 sq ft``; ``taken`` the names of the
    usual pages taken; ``title`` names a question otherwise than by its label; ``faults`` are lines
    of the file that are no answers; ``order`` gives the questions that apply, in the order asked;
    ``here`` are the addresses asked for on the page one stands on, which are not named as next.
    """
    found = next(_Looked(plan, rough, taken, title, faults, order, here).states())
    told = plan.answers.told(found.says)
    return found if told == found.says else Due(found.state, told, found.target, found.keys)


class _Looked(NamedTuple):
    """A garden looked at, at one time."""

    plan: Plan
    rough: str
    taken: Collection[str]
    title: Callable[[Step], str]
    faults: int
    order: Callable[[Answers], list[Step]]
    here: Collection[str]

    @property
    def answers(self) -> Answers:
        return self.plan.answers

    @property
    def today(self) -> dt.date:
        return self.plan.now.date()

    def states(self) -> Iterator[Due]:
        """Yield every state the garden is in, the most pressing first; the last one always."""
        yield from self._smell()
        yield from self._running()
        yield from self._stop()
        yield from self._faulty()
        yield from self._stale()
        yield from self._storm()
        yield from self._new()
        yield from self._spot()
        yield from self._after_spot()

    def _after_spot(self) -> Iterator[Due]:
        yield from self._lines()
        yield from self._hole()
        yield from self._renewed()
        yield from self._renew()
        yield from self._planned()

    def _open(self, among: Collection[str]) -> list[Step]:
        return [
            step
            for step in self.order(self.answers)
            if step.question.key in among
            and route.standing(step, self.answers) is Status.OPEN
            and keys.concerns(step, self.answers)
        ]

    def _at(self, state: GardenState, says: str, among: list[Step]) -> Due:
        return Due(state, says, among[0].address, tuple(step.address for step in among))

    def _named(self, step: Step) -> str:
        return self.title(step) or step.worded(self.answers).label

    def _next(self, among: list[Step]) -> str:
        ahead = next((one for one in among if one.address not in self.here), None)
        return f"Next: {self._named(ahead)}." if ahead else ""

    def _size(self) -> str:
        """The size known so far as a sentence; nothing before the first one."""
        found = find(BY_KEY["work_area"], self.plan)
        if found.waits_for is None and found.trouble is None:
            return f"A {found.shown(self.plan.metric)} pond."
        return f"{self.rough.rstrip('.')}." if self.rough else ""

    def _calls(self) -> str:
        return "811" if self.answers.country == "us" else ""

    # What goes before everything

    def _smell(self) -> Iterator[Due]:
        for hole in self.answers.items(soak.HOLES.key):
            smell: str | None = hole.get(digging.HOLE_SMELL)
            if smell in digging.BLOCKING_SMELLS:
                said = f"STOP: the hole smells of {smell}. Stay away, call."
                yield Due(GardenState.SMELL, said, hole.address(digging.HOLE_SEEPS))

    def _running(self) -> Iterator[Due]:
        tests = soak_due.holes(self.answers, self.plan.now)
        first = soak_due.first(self.answers, self.plan.now)
        begun = [one for one in tests if one.run.last is not None and not one.run.enough]
        for one in [first] if first else begun:
            if gate.shut(one.step, self.answers, self.today):
                continue
            state = GardenState.TIMING if one.run.began else GardenState.SOAKING
            yield Due(state, self._run_words(one), one.address)

    def _run_words(self, one: soak_due.HoleTest) -> str:
        run = one.run
        if run.due is None or run.clock_back or run.since is None:
            return run.do_now
        at = clock(run.due, run.now)
        if run.state in (RunState.DRAINING_1, RunState.DRAINING_2):
            return f"Water in since {clock(run.since, run.now)}. Look about {at}."
        late = utc(run.due) < utc(run.now)
        return f"Reading was due {at}." if late else f"Reading due {at}."

    def _stop(self) -> Iterator[Due]:
        found = digging.spot_stops(self.answers)
        if not found or (self._learning() and not self._tested()):
            return
        first = found[0]
        question = STOPPED_BY.get(first.key)
        spot = chosen_spot(self.answers)
        target = spot.address(question) if question else "permission"
        yield Due(GardenState.STOP, f"STOP here: {self._reason(first)}. {_MOVE}", target)

    def _reason(self, stop: Finding) -> str:
        if stop.key == "slope":
            return f"slope {slope_words(spot_slope(chosen_spot(self.answers)).fall)}"
        return f"{stop.said[:1].lower()}{stop.said[1:]}".rstrip(".")

    def _learning(self) -> bool:
        holes = self.answers.items(soak.HOLES.key)
        return any(hole.get(digging.TEST_TO_LEARN) is True for hole in holes)

    def _faulty(self) -> Iterator[Due]:
        steps = route.steps(self.answers)
        bad = [one for one in steps if route.standing(one, self.answers) is Status.FAULTY]
        number = len(bad) + self.faults
        if number:
            need = "needs" if number == 1 else "need"
            said = f"{count_words(number, 'line')} of the file {need} mending."
            yield Due(GardenState.FAULTS, said, MEND_PAGE, tuple(one.address for one in bad))

    def _stale(self) -> Iterator[Due]:
        gate_now = gate_today(self.answers, self.today)
        if Cause.STALE in gate_now.causes and not self._dug() and digging.testing(self.answers):
            assert gate_now.stale_after is not None
            day = day_words(gate_now.stale_after, self.today, weekday=False)
            whom = f": {self._calls()}" if self._calls() else ""
            said = f"Marks went stale {day}. Ask for new ones{whom}."
            yield Due(GardenState.STALE, said, buried.LINES_ASKED_ON.key)

    # What is open first

    def _storm(self) -> Iterator[Due]:
        day = self.answers.get(review.DIG_DAY)
        if day is None or self.today < day + dt.timedelta(days=STORM_AFTER_DAYS.value):
            return
        if self.answers.get(review.STORM_SEEN) is not True:
            said = "Has a storm come? How did the garden do?"
            yield Due(GardenState.STORM, said, review.STORM_SEEN.key)
        elif among := self._open(keys.STORM):
            yield self._at(GardenState.STORM, self._next(among), among)

    def _new(self) -> Iterator[Due]:
        if not self.answers.texts:
            said = (
                "Today, no digging: measure the roof, find the spot. About "
                f"{FIRST_SITTING_MIN.value} minutes."
            )
            first = keys.FIRST_SIZE[0].union(*keys.FIRST_SIZE)
            yield self._at(GardenState.NEW, said, self._open(first))

    def _spot(self) -> Iterator[Due]:
        first = keys.FIRST_SIZE[0].union(*keys.FIRST_SIZE)
        kept = [one for one in self._open(first) if one.number < 2]
        if kept and not self._tested():
            kept.sort(key=_page)
            pages = len({_page(one) for one in kept})
            said = f"{count_words(pages, 'page')} to a first size."
            yield self._at(GardenState.FIRST_SIZE, said, kept)
        if among := self._open(first | keys.SPOT):
            ahead = self._next(among)
            said = f"{self._size()} {ahead}".strip() if ahead else next(self._after_spot()).says
            yield self._at(GardenState.SPOT, said, among)

    def _lines(self) -> Iterator[Due]:
        asked = self.answers.get(buried.LINES_REQUESTED) == "asked"
        if not asked:
            free = f" {self._calls()} is free." if self._calls() else ""
            said = f"Today: ask for the lines to be marked.{free}{self._outline()}"
            yield Due(GardenState.NOT_ASKED, said, buried.LINES_REQUESTED.key)
        state = locate_state(self.answers)
        over = state.earliest is not None and state.earliest <= self.today
        if among := self._open(keys.WHILE_WAITING | keys.SURVEYED):
            things = f"{count_words(len(among), 'thing')} to find out."
            said = f"{'To do first' if over else 'While you wait'}: {things}"
            yield self._at(GardenState.WHILE_WAITING, said, among)
        if self._dug() or not digging.testing(self.answers):
            return
        yield from self._gate(state.earliest)

    def _outline(self) -> str:
        sides = self.answers.get(bed.ROOM_LENGTH), self.answers.get(bed.ROOM_WIDTH)
        length, width = sides
        if length is None or width is None:
            return ""
        return f" Outline {sides_words(length, width, self.plan.metric)}."

    def _marks(self, earliest: dt.date | None, shut: Shut) -> Iterator[Due]:
        """Say what is still wanted of the marks that were asked for."""
        causes = shut.causes
        if Cause.WAITING in causes and earliest is not None:
            off = len(keys.put_off(self.answers))
            left = f"Until then: {count_words(off, 'thing')} to find out." if off else _NOTHING
            said = f"Digging opens {day_words(earliest, self.today)} at the earliest. {left}"
            yield Due(GardenState.WAITING, said, WAITING_PAGE)
        if causes == (Cause.SILENT,) or set(causes) == {Cause.SILENT, Cause.PRIVATE}:
            said = "Digging may open today: have all owners answered?"
            yield Due(GardenState.MAY_OPEN, said, buried.LINES_ANSWERED.key)
        if (among := self._open(keys.MARKS)) or (shut.unmeasured and shut.bars):
            target = among[0].address if among else buried.MARK_DISTANCE.key
            addresses = tuple(one.address for one in among)
            if set(causes) <= {Cause.PRIVATE}:
                said = "Marks are in. Measure to the nearest."
                yield Due(GardenState.MARKS, said, target, addresses)

    def _gate(self, earliest: dt.date | None, number: int = 1) -> Iterator[Due]:
        """Say what keeps digging shut before a hole is dug, or that it may be dug."""
        shut = shut_by(self.answers, self.today)
        yield from self._marks(earliest, shut)
        causes, bars, unmeasured = shut
        near = buried.MARK_DISTANCE
        if causes == (Cause.PRIVATE,):
            said = "One thing keeps digging shut: your own lines."
            yield Due(GardenState.PRIVATE, said, buried.PRIVATE_LINES.key)
        if bars and not causes and not unmeasured and near.key in bars[0].addresses:
            said = "A mark is too near. Move the garden, measure again."
            yield Due(GardenState.TOO_NEAR, said, self._hole_at(number))
        if bars:
            yield Due(GardenState.SHUT, f"Digging is shut. {bars[0].said}", bars[0].addresses[0])
        good = dig_window(self.answers, self.today).good_until
        until = f" Marks good to {day_words(good, self.today)}." if good else ""
        said = f"You may dig today.{until}"
        yield Due(GardenState.MAY_DIG, said, self._hole_at(number))

    def _hole_at(self, number: int) -> str:
        return self.answers.at(soak.HOLES.key, number).address(digging.HOLE_DEPTH)

    # The hole and after it

    def _dug(self) -> bool:
        holes = self.answers.items(soak.HOLES.key)
        return any(hole.get(digging.HOLE_DEPTH) is not None for hole in holes)

    def _tested(self) -> bool:
        try:
            return self.plan.soak.soil is not None
        except Unanswered:
            return False

    def _hole(self) -> Iterator[Due]:
        if among := self._open(keys.REPORT):
            yield self._at(GardenState.SPOT, self._next(among), among)
        if not digging.testing(self.answers):
            return
        for one in soak_due.holes(self.answers, self.plan.now):
            here = [step for step in self._of(one.step.number, keys.HOLE | keys.TIMER)]
            if here and one.step.number > 1 and not self._of_dug(one.step.number):
                yield from self._gate(locate_state(self.answers).earliest, one.step.number)
            elif here and not one.run.enough:
                if bars := gate.bars(here[0], self.answers, self.today):
                    said = f"The test hole is shut. {bars[0].said}"
                    yield Due(GardenState.SHUT, said, here[0].address)
                said = f"{self._next(here)} Is the hole covered?"
                yield self._at(GardenState.HOLE, said.strip(), here)
            left = one.step.view(self.answers).get(soak.HOLE_LEFT)
            if self._of_dug(one.step.number) and left not in ("filled", "covered"):
                said = "How have you left the hole?"
                at = one.step.view(self.answers).address(soak.HOLE_LEFT)
                yield Due(GardenState.LEAVE_HOLE, said, at)

    def _of(self, number: int, among: Collection[str]) -> list[Step]:
        return [step for step in self._open(among) if step.number == number]

    def _of_dug(self, number: int) -> bool:
        return self.answers.at(soak.HOLES.key, number).get(digging.HOLE_DEPTH) is not None

    def _renewed(self) -> Iterator[Due]:
        """Say what is wanted of marks asked for anew once the hole was dug, for the dig day."""
        day = self.answers.get(review.DIG_DAY)
        if not self._dug() or not self._tested() or (day is not None and day < self.today):
            return
        shut = shut_by(self.answers, self.today)
        for one in self._marks(locate_state(self.answers).earliest, shut):
            # The wait is idle only once the plan is made.
            if one.state is not GardenState.WAITING or not self._plan_pages():
                yield one

    def _renew(self) -> Iterator[Due]:
        window, day = dig_window(self.answers, self.today), self.answers.get(review.DIG_DAY)
        if day is None or day <= self.today or window.covered or window.good_until is None:
            return
        if window.good_until >= day:
            return
        if window.ask_by is not None and window.ask_by >= self.today:
            said = f"Ask for new marks by {day_words(window.ask_by, self.today)}."
        else:
            dig = day_words(day, self.today)
            said = f"Ask for new marks today, and choose a later dig day than {dig}."
        yield Due(GardenState.RENEW, said, buried.LINES_ASKED_ON.key)

    def _plan_pages(self) -> dict[str, list[Step]]:
        """Return what is open on each page of the plan day that is not done, by its name."""
        return {
            name: open_ones
            for name, among in keys.PLAN_PAGES.items()
            if name not in self.taken and (open_ones := self._open(among))
        }

    def _planned(self) -> Iterator[Due]:
        if pages := self._plan_pages():
            # The plan itself is the last page.
            said = f"Plan day: {count_words(len(pages) + 1, 'page')}, indoors. {self._size()}"
            among = tuple(one.address for one in chain(*pages.values()))
            yield Due(GardenState.TESTED, said.strip(), next(iter(pages)), among)
        day = self.answers.get(review.DIG_DAY)
        when = "No dig day yet."
        if day is not None:
            word = "was " if day < self.today else ""
            when = f"Dig day {word}{day_words(day, self.today)}."
        yield Due(GardenState.PLANNED, f"Plan ready. {when}", PLAN_PAGE)


_MOVE = "Move, or try another spot."
_NOTHING = "Nothing to do today."


def _page(step: Step) -> int:
    """Return which page before the first size asks for ``step``."""
    return next(at for at, page in enumerate(keys.FIRST_SIZE) if step.question.key in page)
