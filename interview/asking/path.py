"""The short way through an interview: pages over its questions, in the order of asking.

The written order of the stages is that of the file; the path is that of the person. A `PathPage` is
what one Enter leaves: up to three questions read off one thing at one moment (``asked``), rows
whose usual value Enter takes whole (``usual``, and ``more`` behind a last row), or something that
is only told (``tells``; its words come from elsewhere). Questions whose conditions do not hold are
no part of their page; a page without any is not there. A `Place` is a page for one item of its
group. A `PathNow` (``asking/way``) is the path as it
stands: what is open, done, shut.

How a front end goes along it, with a sitting (``asking/sitting``):

- ``sitting.start()`` goes where the person goes on; ``sitting.place`` is the place reached. Its
  ``page.tells`` names what is to be told there, ``sitting.boxes()`` are the questions to put,
  ``sitting.rows()`` and ``sitting.more()`` the usual rows, ``sitting.fresh()`` those rows that are
  new on a page taken before ("1 new"). ``sitting.offered(step)`` are the words that Enter alone
  takes for a box or a row; nothing for what must be answered.
- Enter: ``sitting.take({address: words, ...})`` keeps the boxes, all or none, and takes the rows
  whole. It raises ``Refused`` and ``Doubt`` as ``offer`` does; ``sitting.at_fault`` is then the
  address of the box. A row is changed by ``sitting.offer(step, words)``.
- Then ``sitting.forward()`` goes on, ``sitting.changed`` says what a changed answer did.
  ``sitting.backward()`` goes back over what is answered, ``sitting.go_to(address or name)``
  anywhere; ``forward`` then comes back, after what the change has opened. Nothing is returned
  where there is nowhere to go on to: the last page is reached and nothing is open.
- At a place where ``sitting.shut(step)`` gives reasons, ``sitting.ways(step)`` are the answers that
  would open it, ``sitting.mend()`` goes to the first; ``forward`` goes on with what is not shut.
- ``sitting.way.progress()`` is for the strip of stages, ``sitting.put_off_list()`` what is still
  to be found out.
- With ``sitting.every_question`` every question is a page of its own, rows too, in this order.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache, lru_cache
from typing import Any, NamedTuple

from interview.asking import route
from interview.asking.answers import Answers, Interview
from interview.asking.question import Question, always
from interview.asking.route import Step
from interview.quantities.records import record

ORDERS_KEPT = 64
"""So many orders of places are kept, one for each count of items that was met."""
BUT = ", not "
"""Stands in a name taken between the page and the rows that are new since it was taken."""


@record(eq=False)
class PathPage:
    """What is asked or told at one moment and left by one Enter."""

    key: str
    """The name in people's files; never changes once released."""
    stage: str
    """The key of the stage it counts to."""
    title: str
    asked: tuple[str, ...] = ()
    """Keys of the questions put as boxes: one to three of them apply at a time."""
    usual: tuple[str, ...] = ()
    """Keys of the rows whose usual value Enter takes whole."""
    more: tuple[str, ...] = ()
    """Keys of further rows, behind a last one."""
    visit: str = ""
    """The trip to the yard or the day at the desk on which it is asked."""
    group: str = ""
    """The group for each of whose items it is asked; what stands outside goes with the first."""
    tells: str = ""
    """The name of what is told here."""
    asks: Callable[[Answers], bool] = always
    """Whether the way leads over it; its questions may be gone to all the same."""

    @property
    def wants(self) -> bool:
        """Whether it counts: further rows alone are only to be opened."""
        return bool(self.asked or self.usual)

    @property
    def keys(self) -> tuple[str, ...]:
        """Every key on it, in order."""
        return self.asked + self.usual + self.more


class Place(NamedTuple):
    """A page, for one item of its group."""

    page: PathPage
    number: int = 0
    """The number of the item within the group; 0 outside groups."""

    @property
    def name(self) -> str:
        """The name in the file: the page's, with the item's number from the second on."""
        return self.page.key if self.number < 2 else f"{self.page.key}.{self.number}"

    def steps(self, keys: tuple[str, ...], answers: Answers) -> list[Step]:
        """Return the questions of ``keys`` that apply at this place."""
        asked = _by_address(answers)
        return [asked[one] for one in self.addresses(keys, answers.interview) if one in asked]

    def addresses(self, keys: tuple[str, ...], interview: Interview) -> Iterator[str]:
        """Yield where the answers to ``keys`` are kept for this place's item."""
        for key in keys:
            if group := interview.questions[key].group:
                yield f"{group}.{self.number or 1}.{key}"
            elif self.number < 2:
                yield key

    def view(self, answers: Answers) -> Answers:
        """Return ``answers`` as seen from this place's item."""
        return answers.at(self.page.group, self.number) if self.page.group else answers.whole()

    def applies(self, answers: Answers) -> bool:
        """Tell whether the way leads over this place now."""
        told = bool(self.page.tells) and not self.page.asked
        return (told or bool(self.steps(self.page.keys, answers))) and self.page.asks(
            self.view(answers)
        )


def _by_address(answers: Answers) -> Mapping[str, Step]:
    return answers.once("by address", lambda: {one.address: one for one in route.steps(answers)})


@cache
def each_question(interview: Interview) -> tuple[PathPage, ...]:
    """Return a page for every question, in the order of the path.

    A question on no page stands after the one it follows in the written order.
    """
    pages = {key: page for page in interview.path for key in page.keys}
    order = [key for page in interview.path for key in page.keys]
    before = ""
    for key in interview.questions:
        if key not in pages:
            order.insert(order.index(before) + 1 if before else 0, key)
        before = key
    return tuple(_page_of(interview.questions[key], pages.get(key), interview) for key in order)


def _page_of(question: Question[Any], page: PathPage | None, interview: Interview) -> PathPage:
    stage = page.stage if page else interview.stage_of[question.key].key
    visit = page.visit if page else ""
    asked = (question.key,)
    return PathPage(question.key, stage, question.label, asked, visit=visit, group=question.group)


def pages_of(answers: Answers, singly: bool = False) -> tuple[PathPage, ...]:
    """Return the pages of the interview, or with ``singly`` one for every question."""
    interview = answers.interview
    return each_question(interview) if singly or not interview.path else interview.path


def every_place(answers: Answers, singly: bool = False) -> tuple[Place, ...]:
    """Return every place in order, also those that do not apply now.

    The pages of a group's first item stand where they are written; further items follow the page
    that asks for another, and after it every run of the group's pages is gone through item by item.
    """

    def counted() -> tuple[Place, ...]:
        counts = {key: 1 for key in answers.interview.groups}
        for step in route.steps(answers):
            if step.number:
                counts[step.question.group] = max(counts[step.question.group], step.number)
        return _ordered(answers.interview, singly, tuple(counts.items()))

    return answers.once("every place, singly" if singly else "every place", counted)


@lru_cache(maxsize=ORDERS_KEPT)
def _ordered(
    interview: Interview, singly: bool, counts: tuple[tuple[str, int], ...]
) -> tuple[Place, ...]:
    pages = each_question(interview) if singly or not interview.path else interview.path
    return tuple(_every_place(interview, pages, dict(counts)))


def _every_place(
    interview: Interview, pages: tuple[PathPage, ...], counts: Mapping[str, int]
) -> Iterator[Place]:
    at = 0
    while at < len(pages):
        page, start = pages[at], at
        at += 1
        if not page.group:
            yield Place(page)
            continue
        another = interview.groups[page.group].another.key
        turn = next((n for n, one in enumerate(pages) if another in one.keys), -1)
        if start <= turn:
            yield Place(page, 1)
            run = [one for one in pages[: at if start == turn else 0] if one.group == page.group]
            first = 2
        else:
            while at < len(pages) and pages[at].group == page.group:
                at += 1
            run, first = list(pages[start:at]), 1
        for number in range(first, counts[page.group] + 1):
            yield from (Place(one, number) for one in run)


def places(answers: Answers, singly: bool = False) -> list[Place]:
    """Return the places that apply now, in order."""
    name = "places, singly" if singly else "places"
    return answers.once(
        name, lambda: [one for one in every_place(answers, singly) if one.applies(answers)]
    )


def steps(answers: Answers) -> list[Step]:
    """Return every question that applies now, in the order of the path."""
    asked = _by_address(answers)
    return answers.once(
        "steps of the path",
        lambda: [
            asked[address]
            for place in every_place(answers, singly=True)
            for address in place.addresses(place.page.keys, answers.interview)
            if address in asked
        ],
    )


def next_step(answers: Answers, after: Step | None = None) -> Step | None:
    """Return the question after ``after`` in the order of the path, or the first one."""
    if after is None:
        return next(iter(steps(answers)), None)
    return next(iter(_beyond(answers, after)), None)


def _beyond(answers: Answers, after: Step) -> list[Step]:
    """Return the questions that come after ``after``, which itself may not apply now."""
    every = [
        address
        for place in every_place(answers, singly=True)
        for address in place.addresses(place.page.keys, answers.interview)
    ]
    asked = _by_address(answers)
    if after.address not in every:
        # An item that is gone stood before the group's last question.
        last = f"{after.question.group}.{after.number - 1}."
        at = max((n for n, one in enumerate(every) if one.startswith(last)), default=len(every))
    else:
        at = every.index(after.address)
    return [asked[one] for one in every[at + 1 :] if one in asked]


def place_of(address: str, answers: Answers, singly: bool = False) -> Place | None:
    """Return the place that asks for ``address``, or has that name; nothing off the path."""
    found = answers.interview.question_at(address)
    for place in every_place(answers, singly):
        if place.name == address:
            return place
        if not found or found[0].key not in place.page.keys:
            continue
        if address in place.addresses(place.page.keys, answers.interview):
            return place
    return None


def with_new_rows(before: Answers, after: Answers, taken: list[str]) -> list[str]:
    """Return ``taken`` with the rows noted that a change has brought onto pages taken before.

    A row that was opened by another row of its own page was seen with it.
    """
    changed = {a for a in before.texts.keys() | after.texts.keys()
               if before.texts.get(a) != after.texts.get(a)}  # fmt: skip
    asked = _by_address(before)
    found = []
    for entry in taken:
        name, *new = entry.split(BUT)
        place = place_of(name, after)
        if place is not None and place.page.usual:
            own = set(place.addresses(place.page.keys, after.interview))
            rows = place.steps(place.page.usual + place.page.more, after)
            if own.isdisjoint(changed):
                new += [one.question.key for one in rows if one.address not in asked]
        found.append(BUT.join([name, *dict.fromkeys(new)]))
    return found


def without_item(taken: list[str], group: str, number: int, interview: Interview) -> list[str]:
    """Return ``taken`` less the pages of one item of ``group``; those after it move up."""
    grouped = {page.key for page in interview.path if page.group == group}
    found = []
    for entry in taken:
        name, *new = entry.split(BUT)
        key, _, item = name.partition(".")
        at = int(item) if item.isdigit() else 1
        if key in grouped and at == number:
            continue
        at -= key in grouped and at > number
        found.append(BUT.join([key if at < 2 else f"{key}.{at}", *new]))
    return found
