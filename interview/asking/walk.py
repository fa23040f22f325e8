"""The place reached in an interview about anything, and the ways on from it and back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection
from dataclasses import replace

from interview.asking import path, route
from interview.asking.answers import Answers
from interview.asking.path import Place
from interview.asking.question import Status, Unanswered
from interview.asking.route import Step
from interview.asking.way import PathNow, Standing

UNFINISHED = ", unfinished"
"""Stands in the file after the address of a list of which only a part was kept."""
LOOKED_AT = ", looked at"
"""Stands there after the address of a question that was gone to though it has its answer."""


class Walk:
    """Goes on, back and to any question; ``shut`` and ``ways`` are for a subject to say."""

    def __init__(
        self,
        answers: Answers,
        now: Callable[[], dt.datetime],
        stopped_at: str,
        drafts: dict[str, str] | None,
        taken: list[str] | None = None,
    ) -> None:
        self._way: tuple[object, PathNow] | None = None
        """The path as it stood last, and what it stood so for."""
        self.every_question = False
        """Whether every question is a page of its own; a matter of this sitting, not kept."""
        self.taken: list[str] = [] if taken is None else taken
        """The names of the usual pages taken whole; the keeper may share it."""
        self.drafts: dict[str, str] = {} if drafts is None else drafts
        """What was typed and not yet taken as an answer, by address; the keeper may share it."""
        self._answers = answers
        self._now = now
        # Two places may wait at once: a question gone to may itself be shut and be mended.
        self._back_to = ""
        """The shut question that is come back to once an answer has opened it."""
        self._left = ""
        """The question that was left for a visit."""
        self._open_then: frozenset[str] = frozenset()
        """The questions that had no answer when it was left."""
        self._place: Place | None = None
        """The place reached, where no question of its own tells it."""
        self._step = self._resume(stopped_at)
        self._came_from = ""
        """The name of the place that was left for an earlier one, or for one gone to."""
        self._open_before: frozenset[str] = frozenset()
        self._there_before: frozenset[str] = frozenset()
        """The names of the places that were open then."""
        self._for_it = False
        """Whether it was left for an answer that it waits for."""
        self._done_with = False
        """Whether it is gone on from, not come back to."""
        self._anew: frozenset[str] = frozenset()
        """The addresses of answers that the last one given took away, to be asked anew."""
        self._half = False
        """Whether a box has opened on this place that was not put when it was taken."""
        self._stopped = stopped_at.removesuffix(UNFINISHED).removesuffix(LOOKED_AT)
        self.left_open = self._stopped != stopped_at or self._stopped in self.drafts
        """Whether the place stopped at is one gone to, or one with something half done."""
        self.came_back_to = ""
        """The key of the page that this sitting began at, where it is not the first one."""
        self.passed_over = ""
        """Why the last step forward went past shut questions; empty where it did not."""

    @property
    def step(self) -> Step | None:
        """The question reached; nothing at a place that only tells something."""
        return self._step

    @step.setter
    def step(self, step: Step | None) -> None:
        self._step, self._place = step, None

    @property
    def now(self) -> dt.datetime:
        """The time now, with its offset."""
        return self._now()

    @property
    def answers(self) -> Answers:
        """The answers, with words such as "now" meant at this moment."""
        return replace(self._answers, now=self.now)

    def shut(self, step: Step) -> list[str]:
        """Return why ``step`` may not be answered yet."""
        return []

    def ways(self, step: Step) -> list[Step]:
        """Return the questions whose answers keep ``step`` shut, those to be given first."""
        return []

    def needs(self, place: Place, answers: Answers) -> Collection[str]:
        """Return the keys of further rows of ``place`` that ``answers`` show to be needed."""
        return ()

    def _resume(self, stopped_at: str) -> Step | None:
        steps = path.steps(self._answers)
        addresses = [step.address for step in steps]
        address = stopped_at.removesuffix(UNFINISHED).removesuffix(LOOKED_AT)
        place = addresses.index(address) if address in addresses else 0
        meant = address != stopped_at or address in self.drafts
        if address in addresses and meant and not self.shut(steps[place]):
            return steps[place]
        ahead = self._first_open(steps[place:]) or self._first_open(steps)
        return ahead or (steps[-1] if steps else None)

    def _first_open(self, steps: list[Step]) -> Step | None:
        for step in steps:
            if route.standing(step, self._answers) is Status.OPEN and not self.shut(step):
                return step
        return None

    def _at(self, address: str) -> Step | None:
        return next((one for one in route.steps(self._answers) if one.address == address), None)

    @property
    def back_to(self) -> Step | None:
        """The shut question that is come back to after this answer; mostly nothing."""
        return self._at(self._back_to) if self._back_to else None

    def mend(self, to: str = "") -> Step | None:
        """Move to the answer that keeps this question shut, or back from it; else to nothing.

        ``to`` is the address of the answer that is chosen for it; else it is the first.
        """
        if not to and (back := self.back_to) is not None:
            self._back_to = ""
            self.step = back
            return back
        chosen = self._at(to) if to else None
        ways = [chosen] if chosen else self.ways(self.step) if self.step else []
        if not ways or self.step is None:
            return None
        self._back_to, self.step = self.step.address, ways[0]
        return self.step

    def _after_mending(self) -> Step | None:
        """Return the next answer that is still missing on the way back, or where it leads."""
        back, here = self.back_to, self.step
        if back is not None and here is not None:
            place = {one.address: at for at, one in enumerate(path.steps(self._answers))}
            for way in sorted(self.ways(back), key=lambda one: place[one.address]):
                missing = route.standing(way, self._answers) is Status.OPEN
                # Only forward, so that answers left out on the way do not hold one there.
                if missing and place[way.address] > place.get(here.address, -1):
                    return way
        self._back_to = ""
        return back

    def go_on_open(self) -> Step | None:
        """Move to the next question that still wants an answer; nothing at the end.

        After a ``visit`` that is one which the visit has opened, or else the place that was left.
        """
        self.passed_over = ""
        step = self._after_mending() or self._way_back() or self._ahead()
        if step is not None:
            self.step = step
        return step

    def _ahead(self) -> Step | None:
        """Return the next question that wants an answer; note the first that is shut."""
        step = self.step
        while step is not None:
            step = path.next_step(self._answers, step)
            wanted = (Status.OPEN, Status.FAULTY)
            if step is None or route.standing(step, self._answers) not in wanted:
                continue
            if not (reasons := self.shut(step)):
                break
            self.passed_over = self.passed_over or (
                f"Passed over, from '{step.worded(self._answers).label}' on: {reasons[0]}"
            )
        return step

    def _way_back(self) -> Step | None:
        """Return where to go after a visit; nothing where there was none, or one is back."""
        if not self._left or self.step is None:
            return None
        step: Step | None = self.step
        while (step := path.next_step(self._answers, step)) is not None:
            opened = route.standing(step, self._answers) is Status.OPEN
            if opened and step.address not in self._open_then and not self.shut(step):
                return step
        left, self._left = self._left, ""
        if left == self.step.address:
            return None
        back = self._at(left)
        return back if back is not None and not self.shut(back) else None

    def visit(self, address: str) -> Step | None:
        """Move to the question at ``address`` if it applies; ``go_on_open`` comes back here."""
        left = self.step
        step = self.jump(address)
        if step is None or left is None:
            return step
        if step.address == self._left:
            self._left = ""
        elif not self._left and step.address != left.address:
            self._left = left.address
            self._open_then = frozenset(one.address for one in route.open_steps(self._answers))
        return step

    def jump(self, address: str) -> Step | None:
        """Move to the question at ``address`` if it applies."""
        step = self._at(address)
        if step is not None:
            self.step, self._back_to = step, ""
        return step

    # Over the pages

    @property
    def way(self) -> PathNow:
        """The path as it stands now: the same until an answer, a page taken or the day changes."""
        now = (self._answers, tuple(self.taken), self.every_question, self.now.date())
        if self._way is None or self._way[0] != now:
            answers, taken, singly, _ = now
            way = PathNow(answers, taken, lambda one: bool(self.shut(one)), singly, self.needs)
            self._way = (now, way)
        return self._way[1]

    @property
    def place(self) -> Place | None:
        """The place reached: that of the question, or one that only tells something."""
        if self._place is not None:
            return self._place
        return self.way.place_of(self.step.address) if self.step else None

    def _stand_at(self, place: Place, step: Step | None = None) -> Place:
        way = self.way
        wanted, boxes = way.wanted(place), way.boxes(place)
        if not any(way.status(one) is not Status.OPEN for one in boxes):
            # Boxes that may be skipped come first all the same: Enter at a row takes it all.
            wanted = wanted or boxes
        lacking = [*wanted, *way.untaken(place), *boxes, *way.rows(place)]
        if way.standing(place) is Standing.SHUT:
            # The question that is shut tells why, and has the ways that open it.
            lacking = [one for one in lacking if self.shut(one)]
        self.step = step or next(iter(lacking), None)
        asks = self.step is not None and way.place_of(self.step.address) == place
        self._place = None if asks else place
        return place

    def start(self) -> Place | None:
        """Move to where the person goes on: the place left if it is open, else the next one."""
        way = self.way
        found = way.place_of(self._stopped) if self._stopped else None
        if found not in way.places and self._stopped not in self.drafts:
            found = None  # the way no longer leads over it
        if found is not None and not (way.is_open(found) or self._stopped in self.drafts):
            found = way.after(found)
        found = found or way.first_open() or way.after(None)
        self.came_back_to = found.page.key if found and self._stopped else ""
        return self._stand_at(found) if found else None

    def forward(self) -> Place | None:
        """Move to the next place that wants something or tells something; nothing at the end.

        Before that to what the answer just given waits for. From a place gone back or gone to,
        after the places it has opened, to where the person was.
        """
        here, half = self.place, self._half
        self._half = False
        if here is None or half:
            return self._stand_at(here) if here else None
        found = self._back_from_mending() or self._asked_anew(here) or self._on_the_way(here)
        found = found or self.way.after(here)
        return self._stand_at(found) if found else None

    def _asked_anew(self, here: Place) -> Place | None:
        """Return the first place before ``here`` that the answer just given has opened anew."""
        way, anew, self._anew = self.way, self._anew, frozenset()
        opened = [one for one in map(way.place_of, anew) if one in way.places and way.is_open(one)]
        later = way.later(here)
        earlier = [one for one in way.places if one in opened and one not in later]
        if not earlier or earlier[0] == here:
            return None
        self._leave(here, earlier[0])
        self._done_with = self._came_from == here.name
        self._open_before -= {one.name for one in opened if one is not None}
        return earlier[0]

    def _back_from_mending(self) -> Place | None:
        step = self._after_mending() if self._back_to else None
        return self.way.place_of(step.address) if step else None

    def _on_the_way(self, here: Place) -> Place | None:
        """Return what ``here`` waits for, or where a place gone to leads on or back to."""
        if (wanted := self._waited_for(here)) is not None:
            self._leave(here, wanted)
            self._for_it = self._came_from == here.name
            return wanted
        way = self.way
        left = way.place_of(self._came_from) if self._came_from else None
        if left is None:
            return None
        if self._for_it and (wanted := self._waited_for(left)) not in (None, here):
            return wanted
        for one in way.later(here):
            if not self._for_it and one.name not in self._open_before and way.is_open(one):
                return one
            # What the answer has to tell, as that there is now a day to wait for.
            told = one.page.tells and not one.page.keys
            if told and not self._for_it and one.name not in self._there_before:
                self._there_before |= {one.name}
                return one
        through = self._for_it or self._done_with
        self._for_it, self._done_with, self._came_from = False, False, ""
        if left == here or left not in way.places:
            return None
        return way.after(left) if through else left

    def _waited_for(self, place: Place) -> Place | None:
        """Return the place of the answer that one of ``place`` waits for, if it may be given."""
        way = self.way
        for step in way.boxes(place):
            view = step.view(self._answers)
            if not view.waits(step.question):
                continue
            try:
                view[step.question]
            except Unanswered as gap:
                found = way.place_of(gap.address)
                # All of an item is asked before it counts, as the line before its paces.
                item = (found.page.group, found.number) if found else ("", 0)
                for one in way.places:
                    same = one == found or (item[0] and (one.page.group, one.number) == item)
                    if same and one != place and way.is_open(one):
                        return one
        return None

    def _leave(self, here: Place | None, there: Place) -> None:
        if here is None or there.name == self._came_from:
            self._came_from = ""
        elif not self._came_from and there != here:
            way = self.way
            self._came_from, self._done_with = here.name, False
            self._open_before = frozenset(one.name for one in way.places if way.is_open(one))
            self._there_before = frozenset(one.name for one in way.places)

    def backward(self) -> Place | None:
        """Move to the place before this one, answered or not; nothing at the start.

        From what an answer waits for that is back to this answer: it may be given otherwise.
        """
        here, way = self.place, self.way
        found = way.before(here) if here else None
        left = way.place_of(self._came_from) if self._for_it else None
        if here is not None and left is not None and left in way.places:
            item = (here.page.group, here.number)
            within = found is not None and item[0] and (found.page.group, found.number) == item
            if not within:
                found, self._for_it = left, False
        if found is None:
            return None
        self._leave(here, found)
        return self._stand_at(found)

    def go_to_first_open(self) -> Place | None:
        """Move to the first place that wants something; there is no way back from it."""
        found = self.way.first_open()
        if found is None:
            return None
        self._came_from = self._back_to = ""
        return self._stand_at(found)

    def begin_at(self, name: str) -> Place | None:
        """Move to the place of this address or name as if the way had led there."""
        found = self.go_to(name)
        if found is not None:
            self._came_from = ""
        return found

    def go_to(self, name: str) -> Place | None:
        """Move to the place of this address or name, shut or not, if it applies."""
        here, way = self.place, self.way
        found = way.place_of(name)
        step = self._at(name)
        if found is None or (step is None and found not in way.places):
            return None
        self._leave(here, found)
        self._back_to = ""
        return self._stand_at(found, step)
