"""The interview about a garden in progress: its gate, its plan, what the plan has to say."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection, Mapping
from dataclasses import replace
from typing import Any

from interview.answers_file.named_files import NamedFile, no_files
from interview.asking import path, route
from interview.asking.answers import Answers, changed
from interview.asking.keeping import Keeper
from interview.asking.kinds import list_lines
from interview.asking.path import Place
from interview.asking.question import Question, Status, Unanswered
from interview.asking.route import Step
from interview.asking.sitting import MOST_PUT_OFF, Doubt, Sitting
from interview.garden import gate
from interview.garden.path import SAFETY
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting import questions as planting
from interview.garden.site import lines_questions as buried
from interview.garden.site import questions as rules
from interview.garden.site import spot_questions as ground
from interview.garden.site.results import close_to_needed
from interview.garden.size import questions as bed
from interview.garden.size.shape_questions import FLOOR_SHAPE
from interview.garden.soak import spots_of_holes as holes
from interview.garden.suggest import (
    COLUMNS,
    beside,
    columns_needed,
    help_for,
    trouble_with,
    value_for,
)
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey import share_questions as sharing
from interview.reading import is_unknown

_SIDES = (bed.FLOOR_LENGTH, bed.FLOOR_WIDTH)
NOT_OFFERED = SAFETY | {bed.SOIL_DUG.key}
AT_THE_SPOT = (bed.ROOM_LENGTH, bed.ROOM_WIDTH, bed.ROOM_AREA, bed.SPOUT_DISTANCE)
"""What is measured at the spot chosen alone, so that another spot asks for it anew."""
ANOTHER_SPOT = (
    "That is another spot: the nearest mark has to be measured from there, so the distance you "
    "gave is taken away and asked again."
)
HOLES_ELSEWHERE = (
    "That is another spot: the soak test stays with the one you leave and does not count here, so "
    "another hole is asked for."
)
BOTH_ELSEWHERE = (
    "That is another spot: the soak test stays with the one you leave, and the distance to the "
    "nearest mark is taken away; both are asked for here."
)
MOST_CHANGES = 3
"""So many figures are told of a change; a choice of ours."""
UNSETTLED = {
    rules.RULES_CHECKED.key: ("not_checked", "pending"),
    buried.PRIVATE_LINES.key: ("not_found",),
}
"""Answers that leave something still to be found out."""


class Session(Sitting):
    """The part that both front ends share."""

    def __init__(
        self,
        answers: Answers,
        keeper: Keeper,
        now: Callable[[], dt.datetime],
        stopped_at: str = "",
        open_text: Callable[[str], NamedFile] = no_files,
        plants: str = "",
        drafts: dict[str, str] | None = None,
        taken: list[str] | None = None,
    ) -> None:
        self._open_text = open_text
        self._plants = plants
        self._planned: tuple[Answers, Plan] | None = None
        self._planned_before: tuple[Answers, Plan] | None = None
        super().__init__(answers, keeper, now, stopped_at, drafts, taken)

    @property
    def plan(self) -> Plan:
        """The plan from the answers in force; an answer has what it touches worked out anew."""
        if self._planned is None or self._planned[0] is not self._answers:
            in_force = route.in_force(self._answers)
            plan = Plan(in_force, self.now, self._open_text, self._plants)
            if self._planned is not None:
                plan.after(self._planned[1])
            self._planned_before, self._planned = self._planned, (self._answers, plan)
        return self._planned[1]

    def shut(self, step: Step) -> list[str]:
        """Return why ``step`` may not be answered yet."""
        return gate.shut(step, self._answers, self.now.date())

    def beware(self, step: Step) -> str:
        """Return what is to be known before ``step`` is answered today, or nothing."""
        return gate.beware(step, self._answers, self.now.date())

    def ways(self, step: Step) -> list[Step]:
        """Return the questions whose answers keep ``step`` shut, those to be given first.

        What opens in time by itself comes last.
        """
        asked = {one.address: one for one in path.steps(self._answers)}
        found: dict[str, tuple[bool, bool]] = {}
        for bar in gate.bars(step, self._answers, self.now.date()):
            for address in bar.addresses:
                if address in asked and address != step.address and not self.shut(asked[address]):
                    known = route.standing(asked[address], self._answers) is Status.ANSWERED
                    found.setdefault(address, (bar.waits, known))
        return [asked[address] for address in sorted(found, key=lambda one: found[one])]

    def offered(self, step: Step, words: Mapping[str, str] | None = None) -> str | None:
        """Return the words an empty answer stands for: the default, or what the plan works out.

        That is with ``words`` given to this place and not kept. Nothing for a safety question, nor
        for the soil that nobody has felt yet.
        """
        if step.question.key in NOT_OFFERED:
            return None
        kept = self.drafts.get(step.address) if step.question in AT_THE_SPOT else None
        if kept and len(self._answers.numbers("spots")) > 1:
            return kept
        answers = replace(self.supposing(words), now=self.now)
        if step.question in COLUMNS and step.question.key in columns_needed(
            answers, self._open_text
        ):
            return None
        # One side of the floor says nothing of the other one.
        apart = not words or step.question in _SIDES
        plan = self.plan if apart else self.plan.with_answers(route.in_force(answers))
        return value_for(step.question, plan) or step.question.default(step.view(answers))

    def needs(self, place: Place, answers: Answers) -> Collection[str]:
        """Return what is no box for every garden but is for this one.

        The columns of the rainfall file that its headings do not tell; the plant file of one's own
        where the packaged list has none.
        """
        if planting.OWN_PLANTS.key in place.page.more and planting.unlisted(answers):
            return (planting.OWN_PLANTS.key,)
        if start.RECORD_PATH.key not in place.page.keys:
            return ()
        found = columns_needed(route.in_force(answers), self._open_text)
        return [one for one in found if one in place.page.more]

    def not_yet(self, step: Step) -> str:
        """Say of a row for which nothing is usual yet what it waits for; else nothing."""
        asked_on = self._answers.get(buried.LINES_ASKED_ON)
        waits = step.question is buried.LINES_HOLIDAYS and asked_on is None
        return "once the day you asked is given" if waits else ""

    def worded(self, step: Step, words: Mapping[str, str] | None = None) -> Question[Any]:
        """Return the question in the words that fit the answers, with what the plan has found.

        That is with ``words`` given to this place and not kept.
        """
        question = step.worded(replace(self.supposing(words), now=self.now))
        plan = self.plan
        if words and step.question in COLUMNS:
            # The file may be named on this very page.
            plan = plan.with_answers(route.in_force(self.supposing(words)))
        found = beside(step.question, plan)
        return replace(question, text=f"{question.text}\n{found}") if found else question

    def find_out(self, step: Step) -> str:
        """Return how to find the answer out, with the numbers this plan has for it."""
        said = step.worded(self._answers).find_out
        return f"{said} {help_for(step.question, self.plan)}".rstrip()

    def remark(self, step: Step, text: str) -> str:
        """Return what is to be said of words that are kept though nothing is known by them."""
        if said := trouble_with(step.question, self.plan):
            return f"{step.question.label}: {said}"
        if len(self.answers.numbers(walking.WALKERS.key)) > 1:
            from interview.garden.paced_lengths import whose_paces  # it knows the catchment

            if said := whose_paces(step, text, self.answers):
                return said
        lines = list_lines(text)
        if not lines or step.question not in (planting.FAVOURITES, planting.SWAP_OUT):
            return ""
        from interview.garden.planting import names as plant_names

        try:
            plants = self.plan.planting.plants
            if step.question is planting.FAVOURITES:
                return plant_names.remark_on_wishes(lines, plants)
        except Unanswered:
            return ""
        try:
            picks = [pick for zone in self.plan.planting.chosen.zones for pick in zone.picks]
            # A plant swapped already is still the one that the line names.
            planted = [one for pick in picks for one in (pick.plant, pick.instead_of) if one]
        except Unanswered:
            return plant_names.remark_on_swaps(lines, plants, None)
        return plant_names.remark_on_swaps(lines, plants, planted or None)

    def _doubt(self, step: Step, value: object) -> str:
        here = ground.chosen_spot(self._answers).scope
        if step.question is ground.CHOSEN_SPOT and here is not None and value != here[1]:
            marked = self._answers.text(buried.MARK_DISTANCE) is not None
            moved = self._answers.with_text(step.address, str(value))
            left = holes.dug(self._answers) and not holes.here(holes.moved(self._answers, moved))
            if left:
                return BOTH_ELSEWHERE if marked else HOLES_ELSEWHERE
            return ANOTHER_SPOT if marked else ""
        return gate.doubt(step, value, self._answers)

    def _too_rough(self, step: Step, value: object, view: Answers) -> str:
        return close_to_needed(step.question, value, view, self.plan.checks.dug_depth)

    def _alarm(self, step: Step) -> str:
        return gate.alarm(step, self._answers)

    def _followed(self, answers: Answers) -> Answers:
        answers = sharing.renamed(self._answers, answers)
        answers = start.placed(self._answers, self._pegged(_paced(self._answers, answers)))
        if ground.chosen_spot(self._answers).scope != ground.chosen_spot(answers).scope:
            answers = holes.moved(self._answers, self._elsewhere(answers))
        return gate.follow(self._answers, answers, self.now.date())

    def _pegged(self, answers: Answers) -> Answers:
        """Return ``answers`` with shape and rain taken as usual, once a floor is pegged out in it.

        Else the floor would count as a rectangle for the custom depth of rain, as one does of which
        neither was ever shown.
        """
        if bed.pegged(self._answers) or not bed.pegged(answers):
            return answers
        shown = {name.split(path.BUT)[0] for name in self.taken}
        if "usual_bed" in shown and answers.text(FLOOR_SHAPE) is None:
            answers = answers.with_text(FLOOR_SHAPE.key, answers[FLOOR_SHAPE])
        rain, usual = start.RAIN_DEPTH, start.RAIN_DEPTH.default(self._answers)
        if "rough_size" in shown and answers.text(rain) is None and usual != rain.default(answers):
            answers = answers.with_text(rain.key, str(usual))
        return answers

    def _elsewhere(self, answers: Answers) -> Answers:
        """Return ``answers`` without what was measured at the spot that is left for another.

        The outline and the way to it stay as words, offered where they are asked for anew; the
        nearest mark has to be measured anew.
        """
        for question in AT_THE_SPOT:
            text = answers.text(question)
            if text is not None and not is_unknown(text):
                self.drafts[question.key] = text
            answers = answers.without(question.key)
        return answers.without(buried.MARK_DISTANCE.key)

    def remove_item(self, group: str, number: int) -> None:
        """Take one item of a group away; with the spot chosen goes what was measured there."""
        chosen = ground.chosen_spot(self._answers).scope == (group, number)
        if group == ground.SPOTS.key:
            self._answers = holes.spot_removed(self._answers, number)
        super().remove_item(group, number)
        if chosen:
            self._keep(self._elsewhere(self._answers), follow=False)

    def take_way(self, words: Mapping[str, str]) -> list[str]:
        """Keep the answers of a way out, say what they are, and stand where the floor is asked.

        A floor pegged before would keep its size, so it is taken away and asked anew. Raises
        ``Refused``.
        """
        said = []
        steps = {one.address: one for one in path.steps(self.answers)}
        for side in _SIDES:
            step, kept = steps.get(side.key), self.answers.text_at(side.key)
            if step is not None and kept is not None:
                self.clear(step)
                said.append(f"Asked again: {step.worded(self.answers).label} (was {kept}).")
        left = dict(words)
        while step := next((o for o in path.steps(self.answers) if o.address in left), None):
            text = left.pop(step.address)
            try:
                heard = self.offer(step, text)
            except Doubt:
                heard = self.offer(step, text)
            said.insert(0, f"= {step.worded(self.answers).label}: {heard.echo}")
        self.go_to(_SIDES[0].key)
        return said

    def _change(self, before: Answers) -> str:
        from interview.garden import scenarios  # it knows every sum

        known = [one for one in (self._planned, self._planned_before) if one is not None]
        kept = next((plan for answers, plan in known if answers is before), None)
        if kept is None:
            kept = Plan(route.in_force(before), self.now, self._open_text, self._plants)
        figures = [one for one in scenarios.followed(kept, self.plan) if one.change]
        said = [f"{one.label} {one.kept}, now {one.tried}" for one in figures[:MOST_CHANGES]]
        return f"This changes: {'; '.join(said)}." if said else ""

    def put_off_list(self) -> list[Step]:
        """Return what is still to be found out, and to be settled with others, the first few."""
        still = [
            one
            for one in path.steps(self._answers)
            if self.way.is_put_off(one)
            or one.view(self._answers).text(one.question) in UNSETTLED.get(one.question.key, ())
        ]
        return still[:MOST_PUT_OFF]


def _paced(before: Answers, answers: Answers) -> Answers:
    """Return ``answers`` with the pacing asked for where a length was just given in paces.

    Where it was, and that length is then given otherwise, nobody is asked to pace a line.
    """
    if answers.text_at(walking.MEASURED_BY.key) is not None:
        return _unpaced(before, answers)
    for address in changed(before, answers):
        step = route.step_at(address, answers)
        if step is None:
            continue
        view = step.view(answers)
        if not view.waits(step.question):
            continue
        try:
            view[step.question]
        except Unanswered as gap:
            if gap.question is walking.MEASURED_BY:
                return answers.with_text(walking.MEASURED_BY.key, "paces")
    return answers


def _unpaced(before: Answers, answers: Answers) -> Answers:
    """Return ``answers`` without the pacing where the last length in paces has just gone."""
    kept = before.text_at(walking.MEASURED_BY.key)
    known = any(
        one.startswith(f"{walking.WALKER.key}.") and not is_unknown(text)
        for one, text in answers.texts.items()
    )
    if known or not answers.text_at(walking.MEASURED_BY.key) == kept == "paces":
        return answers
    from interview.garden.paced_lengths import paced_lengths  # it knows the surfaces

    gone = any(paced_lengths(before)) and not any(paced_lengths(answers))
    return answers.without(walking.MEASURED_BY.key) if gone else answers
