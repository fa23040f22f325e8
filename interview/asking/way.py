"""The path as it stands for the answers there are: what is open, done or shut, and what is next."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import field
from enum import Enum
from functools import cached_property
from typing import NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.path import BUT, Place, every_place, pages_of, place_of, places, steps
from interview.asking.question import Stage, Status
from interview.asking.route import Step
from interview.quantities.records import record


class Standing(Enum):
    """Where a place stands."""

    OPEN = "open"
    DONE = "done"
    FAULTY = "needs attention"
    PUT_OFF = "don't know yet"
    UNTAKEN = "usual, not taken"
    SHUT = "shut"


_WANTING = (Standing.OPEN, Standing.FAULTY, Standing.UNTAKEN)


class StageProgress(NamedTuple):
    """How far the places of one stage are."""

    stage: Stage
    done: int
    total: int
    shut: bool
    """Whether nothing of it can be answered now that is still open."""

    @property
    def word(self) -> str:
        """One of ``done``, ``shut``, or such as ``3 of 14``; a stage yet without places is none."""
        if 0 < self.done == self.total:
            return "done"
        return "shut" if self.shut else f"{self.done} of {self.total}"


@record(eq=False)
class PathNow:
    """The path as it stands for the answers there are."""

    answers: Answers
    taken: Collection[str]
    """The names of the usual pages that were taken whole, as the file holds them."""
    is_shut: Callable[[Step], bool]
    singly: bool = False
    """Whether every question is a page of its own."""
    needs: Callable[[Place, Answers], Collection[str]] = lambda _place, _answers: ()
    """The keys of further rows of a place that the answers show to be needed: each is a box."""
    _standings: dict[str, Standing] = field(default_factory=dict, compare=False, repr=False)
    """Where each place stands, by name, once it was asked: many ask it at each turn."""

    @property
    def places(self) -> list[Place]:
        """The places that apply now, in order."""
        return places(self.answers, self.singly)

    def place_of(self, address: str) -> Place | None:
        """Return the place that asks for ``address``, or has that name."""
        return place_of(address, self.answers, self.singly)

    def boxes(self, place: Place) -> list[Step]:
        """Return the questions put as boxes."""
        return place.steps((*place.page.asked, *self.needs(place, self.answers)), self.answers)

    def rows(self, place: Place) -> list[Step]:
        """Return the rows of usual values, but those under more."""
        return place.steps(place.page.usual, self.answers)

    def more(self, place: Place) -> list[Step]:
        """Return the rows under more."""
        needed = self.needs(place, self.answers)
        return place.steps(tuple(one for one in place.page.more if one not in needed), self.answers)

    def status(self, step: Step) -> Status:
        """Return where a question stands."""
        return route.standing(step, self.answers)

    def _optional(self, step: Step) -> bool:
        return step.question.key in self.answers.interview.optional

    @cached_property
    def _taken(self) -> dict[str, list[str]]:
        """The names of places taken, each with the keys of rows that are new since."""
        parts = [one.split(BUT) for one in self.taken]
        return {name: new for name, *new in parts}

    def fresh(self, place: Place) -> list[Step]:
        """Return the rows that are new on a usual page taken before."""
        new = self._taken.get(place.name, [])
        rows = self.rows(place) + self.more(place)
        return [one for one in rows if one.question.key in new and self.status(one) is Status.OPEN]

    def untaken(self, place: Place) -> list[Step]:
        """Return the rows whose usual value was neither taken nor answered."""
        if not place.page.usual:
            return []
        if place.name in self._taken:
            return self.fresh(place)
        rows = self.rows(place) + self.more(place)
        return [one for one in rows if self.status(one) is Status.OPEN and not self._optional(one)]

    def wanted(self, place: Place) -> list[Step]:
        """Return the boxes, and the rows without a usual value, that have no sound answer.

        One that may be skipped is wanted alone where nothing else is on its page.
        """
        boxes = self.boxes(place)
        usual = self.rows(place) + (self.more(place) if place.page.usual else [])
        alike = [one for one in usual if one.question.default(one.view(self.answers)) is None]
        open_ones = [one for one in boxes + alike if self.status(one) is Status.OPEN]
        needed = self.needs(place, self.answers)
        wanted = [one for one in open_ones if one.question.key in needed or not self._optional(one)]
        alone = bool(boxes) and all(self._optional(one) for one in boxes)
        if alone and not place.page.usual and len(open_ones) == len(boxes):
            wanted = open_ones
        whole = boxes + self.rows(place) + self.more(place)
        faulty = [one for one in whole if self.status(one) is Status.FAULTY]
        return [one for one in whole if one in wanted or one in faulty]

    def standing(self, place: Place) -> Standing:
        """Return where ``place`` stands; what only tells something is done."""
        if place.name not in self._standings:
            self._standings[place.name] = self._standing(place)
        return self._standings[place.name]

    def _standing(self, place: Place) -> Standing:
        wanted, untaken = self.wanted(place), self.untaken(place)
        lacking = wanted + [one for one in untaken if one not in wanted]
        # The boxes of a page are kept together, so that one that is shut shuts them all.
        if any(self.is_shut(one) for one in wanted) or (
            lacking and all(self.is_shut(one) for one in lacking)
        ):
            return Standing.SHUT
        if any(self.status(one) is Status.FAULTY for one in wanted):
            return Standing.FAULTY
        if any(one not in untaken for one in wanted):
            return Standing.OPEN
        if untaken:
            return Standing.UNTAKEN
        asked = self.boxes(place) + self.rows(place) + self.more(place)
        return Standing.PUT_OFF if any(self.is_put_off(one) for one in asked) else Standing.DONE

    def is_put_off(self, step: Step) -> bool:
        """Tell whether ``step`` was put off and is still to be found out."""
        return self.status(step) is Status.UNKNOWN and not self._optional(step)

    def is_open(self, place: Place) -> bool:
        """Tell whether ``place`` wants something that may be given now."""
        return self.standing(place) in _WANTING

    def later(self, place: Place | None) -> list[Place]:
        """Return the places that apply and come after ``place``, which itself may not."""
        if place is None:
            return self.places
        every = every_place(self.answers, self.singly)
        at = every.index(place) if place in every else len(every)
        later = set(every[at + 1 :])
        return [one for one in self.places if one in later]

    def before(self, place: Place) -> Place | None:
        """Return the place before ``place`` that is not shut."""
        every = every_place(self.answers, self.singly)
        at = every.index(place) if place in every else len(every)
        earlier = set(every[:at])
        back = [one for one in self.places if one in earlier]
        return next(
            (one for one in reversed(back) if self.standing(one) is not Standing.SHUT), None
        )

    def first_open(self) -> Place | None:
        """Return the first place that wants something that may be given now."""
        return next((one for one in self.places if self.is_open(one)), None)

    @cached_property
    def _ends(self) -> dict[str, str]:
        """The key of the page that ends each visit: the last that tells something."""
        pages = pages_of(self.answers, self.singly)
        return {page.visit: page.key for page in pages if page.tells}

    def after(self, place: Place | None) -> Place | None:
        """Return where Enter leads from ``place``; nothing from the last one with nothing open.

        That is the next place that is open, or that tells something and asks nothing, or the end
        of this visit. A visit that begins shut is shown, with its reasons, before what lies behind.
        What was left open earlier is come back to before the end.
        """
        for one in self.later(place):
            standing = self.standing(one)
            if standing in _WANTING:
                return one
            if one.page.tells and not one.page.keys:
                return one
            if place is None:
                continue
            ends = one.page.key == self._ends.get(one.page.visit)
            if ends and one.page.visit == place.page.visit:
                return one
            here = self.standing(place) is Standing.SHUT and place.page.visit == one.page.visit
            if standing is Standing.SHUT and not here:
                return one
        last = next((one for one in reversed(self.places) if one.page.tells), None)
        found = self.first_open() or last
        return found if found != place else None

    def progress(self) -> list[StageProgress]:
        """Return how far each stage is, by the places that ask something."""
        found = []
        asking = [one for one in self.places if one.page.wants]
        for stage in self.answers.interview.stages:
            each = [self.standing(one) for one in asking if one.page.stage == stage.key]
            done = sum(1 for one in each if one in (Standing.DONE, Standing.PUT_OFF))
            shut = Standing.SHUT in each and not any(one in _WANTING for one in each)
            found.append(StageProgress(stage, done, len(each), shut))
        return found

    def put_off(self) -> list[Step]:
        """Return the questions that were put off, in the order of the path."""
        return [one for one in steps(self.answers) if self.is_put_off(one)]
