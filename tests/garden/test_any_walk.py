"""Random walks through the interview: nothing breaks, nothing is lost, the file says the same."""

from __future__ import annotations

from interview import answers_file as af
from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT, Status
from interview.asking.sitting import Doubt
from interview.garden import store
from interview.garden.session import AT_THE_SPOT, Session
from interview.garden.stages import GROUPS, STAGE_OF, new_answers
from interview.reading import Refused

WALKS, LEGS = 150, 20
ENTAILED = {
    "lines_ticket", "lines_answered", "lines_finished_on", "lines_holidays", "mark_distance",
    "hole_dug_on", "hole_cleared", "another_hole", "hole_counts",
}  # fmt: skip


# A state tells the country and the units, and says no more once another country is named.
PLACE = {"state", "country", "units"}
SPOT = {one.key for one in AT_THE_SPOT}


class TextKeeper:
    """Keeps the answers as the text of a file, by the same steps as the keeper of files."""

    def __init__(self) -> None:
        self.text = ""
        self.tree: af.Tree = {}
        self.known: set[str] = set()

    def keep(self, answers, stopped_at):
        tree = store.tree_of(answers, self.tree, self.known, stopped_at)
        if self.text:
            try:
                self.text = af.splice(self.text, tree, store.notes, store.order)
            except af.CannotSplice:
                self.text = af.render(tree, store.notes)
        else:
            self.text = af.render({"written_by": "a test", **tree}, store.notes)
        self.tree = af.parse(self.text.encode()).tree
        self.known = set(answers.texts)

    def loaded(self):
        return store.interpret(af.parse(self.text.encode()))


def begun(luck):
    """Return answers that somebody may have come back to, with several spots and surfaces."""
    answers = new_answers({"country": "us", "rate_from": "test"}, luck.now)
    for key in ("spots", "surfaces", "walkers"):
        for number in range(1, luck.rng.randint(2, 4)):
            group = GROUPS[key]
            for question in (*group.questions[:2], group.another):
                step = route.Step(question, number, STAGE_OF[question.key])
                text = luck.text(step, answers)
                try:
                    kept = question.kind.settle(text, step.view(answers))
                    question.read(kept, step.view(answers))
                except Refused:
                    continue
                answers = answers.with_text(step.address, kept)
    return answers


def offer(session, step, text):
    """Offer ``text``, and again where it is doubted; return whether it was kept."""
    for _ in range(2):
        try:
            session.offer(step, text)
        except Refused:
            return False
        except Doubt:
            continue
        return True
    return False


def leg(luck, session):
    """Do one thing that a person may do; return the addresses whose answers it may change."""
    step = session.step
    match luck.rng.choice(("offer",) * 6 + ("junk", "skip", "jump", "clear", "remove")):
        case "offer":
            offer(session, step, luck.text(step, session.answers))
            session.go_on_open()
            return {step.address}
        case "junk":
            offer(session, step, luck.rng.choice(luck.JUNK))
            return {step.address}
        case "skip":
            session.put_off(step)
            session.go_on_open()
            return {step.address}
        case "jump":
            path = route.steps(session.answers)
            session.jump(luck.rng.choice(path).address)
        case "clear":
            session.clear(step)
            return {step.address}
        case "remove":
            if step.number and luck.rng.random() < 0.5:
                group = step.question.group
                items = route.item_count(GROUPS[group], session.answers)
                changed = {a for a in session.answers.texts if a.startswith(group + ".")}
                session.remove_item(group, step.number)
                assert route.item_count(GROUPS[group], session.answers) <= max(1, items - 1)
                return changed | {"chosen_spot"}
    return set()


def faulty(answers):
    """Tell whether an answer no longer goes with the others, as its question would say."""
    steps = route.steps(answers)
    return any(route.standing(step, answers) is Status.FAULTY for step in steps)


def test_any_walk_keeps_memory_and_file_alike(subtests, chance, clock):
    for place in range(WALKS):
        with subtests.test(walk=place):
            luck = chance(place)
            keeper = TextKeeper()
            session = Session(begun(luck) if place % 2 else new_answers(), keeper, clock)
            session.save()
            for count in range(1, LEGS + 1):
                before = dict(session.answers.texts)
                may_change = leg(luck, session)
                after = dict(session.answers.texts)
                assert session.not_kept == ""
                changed = {a for a in before if after.get(a) != before[a]} - may_change
                # What an answer about marks or a hole entails is looked at in test_cleared_holes.
                assert not {a for a in changed if a.split(".")[-1] not in ENTAILED | PLACE | SPOT}
                for address in changed & SPOT:
                    # What was measured at another spot is kept to be offered.
                    kept = UNKNOWN_TEXT, session.drafts.get(address)
                    assert before[address] in kept
                assert session.step is not None
                if count % 5 == 0:
                    loaded = keeper.loaded()
                    assert loaded.answers.texts == after, keeper.text
                    assert loaded.troubles == [] or faulty(session.answers)
            aside = route.set_aside(session.answers)
            assert set(route.in_force(session.answers).texts) | set(aside) == set(
                session.answers.texts
            )
            again = Session(keeper.loaded().answers, keeper, clock, keeper.loaded().stopped_at)
            assert again.answers.texts == session.answers.texts
            assert again.step is not None


def test_an_answer_set_aside_comes_back_with_its_condition(session_of, keeper):
    session = session_of()
    session.offer(session.jump("country"), "us")
    session.offer(session.jump("state"), "Vermont")
    session.offer(session.jump("country"), "canada")
    assert session.jump("state") is None
    assert route.set_aside(session.answers) == ["state"]
    assert keeper.saves[-1][0]["state"] == "vt"
    session.offer(session.jump("country"), "us")
    assert session.jump("state") is not None
    assert session.answers.texts["state"] == "vt"
    assert UNKNOWN_TEXT not in session.answers.texts.values()
