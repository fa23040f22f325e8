"""The plants: each zone with its hours under water, what is planted and why; swaps and wishes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from textual import events, work
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Container, Vertical, VerticalScroll
from textual.content import Content
from textual.screen import ModalScreen
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option
from textual.worker import get_current_worker

from interview.asking.kinds import list_lines
from interview.asking.question import Unanswered
from interview.garden.pictures import planted_picture
from interview.garden.plan import Plan
from interview.garden.planting import questions as planting
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.record import Plant
from interview.garden.planting.zones_cut import zones_cut
from interview.garden.session import Session
from interview.garden.site import cautions
from interview.reading import is_unknown
from interview.screens import keys, plant_notes, words
from interview.screens.frame import Weight
from interview.screens.lists import Rows
from interview.screens.long_wait import telling_page
from interview.screens.offers import offer
from interview.screens.page import Page
from interview.screens.parts import NARROW, WIDE, Line, Words, is_there
from interview.screens.picture import Picture, alone
from interview.screens.plant_rows import PlantRows
from interview.screens.themes import OF

LONGEST = 80
LEAST = 30
"""Columns that a row is made for at least."""
OTHERS = 12
"""Plants offered in place of one that is swapped out."""


class PlantsScreen(Page):
    """What is planted where."""

    KEYS = "plants"
    HEADING = "The plants"

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._picks: list[tuple[ZonePlan, Pick] | None] = []
        """What stands on each line of the list; none for a heading and the cheaper ways."""
        self._cheaper: Content | str = ""

    def parts(self) -> ComposeResult:
        yield Words(id="plants_wait")
        with Container(id="planting"):
            with Vertical(id="pick_left"):
                yield Words(id="pick_months")
                yield Rows(id="picks", markup=False)
                yield Picture(id="pick_zones", can_focus=False)
            with Container(id="pick_right"):
                yield Picture(id="pick_picture", can_focus=False)
                with VerticalScroll(id="pick_box"):
                    yield Words("", id="pick_words")
        with Vertical(id="entry_box"):
            yield Words("Which plant? By common or scientific name.", id="entry_title")
            yield Line("", LONGEST, id="entry_line")

    def on_mount(self) -> None:
        self.query_one("#entry_box").display = False
        self.app.theme_changed_signal.subscribe(self, lambda _: self._fit())
        self._fill(None)
        self.query_one("#picks").focus()

    @work(thread=True, exclusive=True, description="")
    def _carry_rain(self, at: int | None) -> None:
        # Years of rain take seconds; the keys must not wait for them.
        plan = self._session.plan
        try:
            with telling_page(self.app, self._far):
                _ = plan.storms.zone_hours_record
        except Exception:
            # What is wrong is said where the plants are worked out.
            if get_current_worker().is_cancelled:
                return
        self.app.call_from_thread(self._filled, at)

    def _far(self, said: str) -> None:
        if is_there(self):
            self.query_one("#plants_wait", Words).say(said)

    def _filled(self, at: int | None) -> None:
        if is_there(self):
            self._fill(at, waited=True)

    # Showing

    def _fill(self, at: int | None, waited: bool = False) -> None:
        if not waited and self._session.plan.storms.has_long_sums:
            self.query_one("#plants_wait", Words).say("Working out the years of rain…")
            self._carry_rain(at)
            return
        listing = self.query_one("#picks", OptionList)
        listing.clear_options()
        self._picks = []
        try:
            lines = list(self._rows_of(self._session.plan))
            options, wait = [option for option, _ in lines], ""
            self._picks = [found for _, found in lines]
        except Unanswered as gap:
            question = gap.question.told(self._session.answers)
            said = gap.why or question.find_out
            options, wait = [], f"The plants wait for an answer: {question.label}. {said}"
        except Exception as trouble:
            options, wait = [], words.fault(trouble)
        listing.add_options(options)
        self.query_one("#plants_wait", Words).say(wait)
        self.query_one("#planting").display = not wait
        if not wait:
            self._draw()
            self.call_after_refresh(self._fit)
        self.show_keys()
        places = [place for place, one in enumerate(self._picks) if one is not None]
        if places:
            listing.highlighted = at if at in places else places[0]
        elif not wait:
            self._tell(self._whole())

    def _rows_of(self, plan: Plan) -> Iterator[tuple[Option, tuple[ZonePlan, Pick] | None]]:
        """Yield every line of the list with the plant that stands on it."""
        self._cheaper = plant_notes.cheaper(plan)
        if self._cheaper:
            yield Option(Content.styled(plant_notes.cheaper_line(plan), "bold")), None
        rows = self._rows
        for zone in rows.zones:
            yield Option(rows.zone(zone, plant_notes.headings(plan, zone)), disabled=True), None
            for pick in zone.picks:
                yield Option(rows.kind(pick)), (zone, pick)
            if not zone.picks:
                traits = " ".join((zone.guidance.wetness, *zone.guidance.traits))
                yield Option(f"  {plan.answers.told(traits)}", disabled=True), None

    @property
    def _rows(self) -> PlantRows:
        """The rows as they are in the room there is now."""
        zones = self._session.plan.planting.chosen.zones
        room = self.query_one("#picks", OptionList).scrollable_content_region.width
        # The mark before the row one is at takes a column.
        columns = max(LEAST, (room or self.app.size.width // 2) - 1)
        return PlantRows(zones, columns, OF[self.app.theme], self.app.size.width >= NARROW)

    def on_resize(self, event: events.Resize) -> None:
        super().on_resize(event)
        self.call_after_refresh(self._fit)

    def _fit(self) -> None:
        """Set every row anew to the room there is, and the months over their columns."""
        listing = self.query_one("#picks", OptionList)
        if not self._picks or len(self._picks) != listing.option_count:
            return
        for place, (option, _) in enumerate(self._rows_of(self._session.plan)):
            listing.replace_option_prompt_at_index(place, option.prompt)
        self.query_one("#pick_months", Words).update(self._rows.head())
        self._draw()

    def _draw(self) -> None:
        """Draw the zones, and in a wide window the garden from above with its plants."""
        plan = self._session.plan
        zones = plan.planting.chosen.zones
        cut = alone(lambda rows: zones_cut(zones, rows))
        above = alone(lambda _: planted_picture(plan))
        wide = self.app.size.width >= WIDE
        self.query_one("#pick_picture", Picture).show(above if wide else cut)
        self.query_one("#pick_zones", Picture).show(cut)

    def _tell(self, text: str | Content) -> None:
        self.query_one("#pick_words", Words).update(text)
        self.query_one("#pick_box").scroll_home(animate=False)

    def _whole(self) -> str:
        """Return what holds for the whole planting."""
        found = self._session.plan.planting
        said = [
            *found.chosen.notes,
            *(f"Not placed: {one.common_name}." for one in found.chosen.homeless),
        ]
        return "\n".join([*said, f"CAUTION: {cautions.PLANTS}"])

    def on_option_list_option_highlighted(self, event: OptionList.OptionHighlighted) -> None:
        found = self._chosen
        if found is None:
            # The one line without a plant that can be chosen.
            self._tell(self._cheaper)
        else:
            told = plant_notes.about(self._session.plan, *found)
            self._tell(Content.assemble(told, "\n", (self._whole(), "$muted")))

    @property
    def _chosen(self) -> tuple[ZonePlan, Pick] | None:
        place = self.query_one("#picks", OptionList).highlighted
        return self._picks[place] if place is not None and place < len(self._picks) else None

    def offers(self, action: str) -> bool:
        """Leave out what needs a plant where none is shown."""
        return action not in ("swap", "favourite") or any(self._picks)

    # Changing

    def on_option_list_option_selected(self) -> None:
        self.action_swap()

    def _lines(self, key: str) -> list[str]:
        text = self._session.answers.texts.get(key, "")
        return [] if is_unknown(text) or text.strip().casefold() == "none" else list_lines(text)

    def _keep(self, key: str, lines: list[str], said: str) -> None:
        place = self.query_one("#picks", OptionList).highlighted
        why = offer(self._session, key, "\n".join(lines) or "none")
        self._fill(place)
        self.tell(why or said, Weight.WARNING if why else Weight.PLAIN)

    def action_swap(self) -> None:
        """Choose what is planted in place of the plant chosen."""
        found = self._chosen
        if found is None:
            self.tell("Choose a plant first.")
            return
        zone, pick = found
        out = self._known_as(pick.plant)

        def done(into: str | None) -> None:
            if into is not None:
                line = f"{out} for {into}" if into else out
                lines = [*self._lines(planting.SWAP_OUT.key), line]
                self._keep(planting.SWAP_OUT.key, lines, f"Swapped out: {out}.")

        others = [(self._known_as(one), plant_notes.short(one)) for one in zone.reserve[:OTHERS]]
        self.app.push_screen(SwapScreen(plant_notes.short(pick.plant), others), done)

    def action_favourite(self) -> None:
        """Ask for the plant chosen whatever else changes, or no longer."""
        if self._chosen is None:
            self.tell("Choose a plant first.")
            return
        name = self._known_as(self._chosen[1].plant)
        lines = self._lines(planting.FAVOURITES.key)
        if name in lines:
            left = [one for one in lines if one != name]
            self._keep(planting.FAVOURITES.key, left, f"No longer asked for: {name}.")
        else:
            self._keep(planting.FAVOURITES.key, [*lines, name], f"You asked for it: {name}.")

    def action_undo(self) -> None:
        """Take the last swap back."""
        lines = self._lines(planting.SWAP_OUT.key)
        if lines:
            self._keep(planting.SWAP_OUT.key, lines[:-1], f"Taken back: {lines[-1]}.")
        else:
            self.tell("Nothing is swapped.")

    def _known_as(self, plant: Plant) -> str:
        return plant_notes.name_of(plant, self._session.plan.planting.plants)

    # Why a plant is in or out

    def action_why_not(self) -> None:
        """Ask for the name of a plant."""
        self.query_one("#entry_box").display = True
        line = self.query_one("#entry_line", Line)
        line.value = ""
        line.focus()

    def on_input_submitted(self, event: Input.Submitted) -> None:
        name = event.value.strip()
        self._close()
        if not name:
            return
        try:
            said = self._session.plan.planting.why_plant(name)
        except Unanswered as gap:
            label = gap.question.told(self._session.answers).label
            said = (f"This waits for an answer: {label}.",)
        self._tell(Content.assemble((name, "bold"), "\n", "\n".join(said)))

    def _close(self) -> None:
        self.query_one("#entry_box").display = False
        self.query_one("#picks").focus()

    def action_leave(self) -> None:
        """Close the line that is open, or the page."""
        if self.query_one("#entry_box").display:
            self._close()
        else:
            self.dismiss(None)


class SwapScreen(ModalScreen[str]):
    """What to plant instead; closes with a name, with nothing for the plan's own choice."""

    BINDINGS: ClassVar[list[BindingType]] = keys.bindings("swap")

    def __init__(self, gone: str, others: list[tuple[str, str]]) -> None:
        super().__init__()
        self._gone = gone
        self._others = others

    def compose(self) -> ComposeResult:
        with Vertical(id="swapping"):
            yield Words(f"In place of {self._gone}:")
            options = [Option("let the plan choose", id="")]
            options += [Option(shown) for _, shown in self._others]
            yield Rows(*options, id="instead", markup=False)
            yield Words("Enter chooses, Escape leaves it as it is.", classes="quiet")

    def on_mount(self) -> None:
        listing = self.query_one("#instead", OptionList)
        listing.highlighted = 0
        listing.focus()

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        place = event.option_index
        self.dismiss(self._others[place - 1][0] if place else "")
