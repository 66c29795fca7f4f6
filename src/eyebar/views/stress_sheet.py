"""What a stress sheet says: the figures along the bars, and the words around the drawing."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from eyebar.errors import Unknown, nearest
from eyebar.views import rounding, sheet_words, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.rating import Choice, governing

NO_FORCE = rounding.kip(0.0)
GENERAL = 2
"""A document's first cautions are general, after the one on closing; then come the bridge's own."""


class Work(StrEnum):
    """How a bar is drawn: by what it does under dead load, or by where it is reached first; the
    last two where no forces are shown, by what it can do."""

    PUSHED = "pushed"
    PULLED = "pulled"
    SLACK = "slack under dead load"
    GONE = "carries nothing"
    CAN_PUSH = "can push"
    ONLY_PULLS = "only pulls"


@dataclass(frozen=True, slots=True, kw_only=True)
class BarFigures:
    """One bar on the sheet."""

    bar: str = text("Bar", "Name of the bar.")
    part: str = text("Part", "Its address.")
    work: str = text("Work", "Pushed, pulled, slack under dead load, or carrying nothing.")
    dead: str = figure("Dead", "Force under dead load, without factors; + pulls, − pushes.")
    pull: str = figure("Towards pull", "The most that the live load changes it towards pull.")
    push: str = figure("Towards push", "The most that the live load changes it towards push.")
    mark: str = text("Mark", "What is written on the bar beside its figures; mostly empty.")
    said: str = text("In words", "The bar in sentences, for those who do not see the drawing.")

    @property
    def live(self) -> str:
        """The changes towards pull and push, those that are not nothing."""
        return " ".join(one for one in (self.pull, self.push) if one != NO_FORCE) or NO_FORCE


@dataclass(frozen=True, slots=True, kw_only=True)
class PartWords:
    """What is said of a part at a panel point: pin, hanger or bearing."""

    part: str = text("Part", "Its address.")
    said: str = text("In words", "Its least factor, or why it is not rated.")


@dataclass(frozen=True, slots=True, kw_only=True)
class StressSheet:
    """Everything that is lettered on a stress sheet of one truss."""

    title: str = text("Bridge", "Name of the bridge.")
    number: str = text("Number", "Its number.")
    truss: str = text("Truss", "The truss that is drawn.")
    date: str = text("As on", "The date on whose state of the bridge the figures rest.")
    bars: tuple[BarFigures, ...] = text("Bars", "One entry for each bar, also one that is broken.")
    at_joints: tuple[PartWords, ...] = text("At joints", "Pins, hangers and bearings in words.")
    posting: str = text("Posting", "The posting on one line, as the sign will say it.")
    closed: str = text("Closed", "Empty, unless the bridge is to be closed.")
    governs: str = text("Governs", "Address of the part that sets the posting; empty for none.")
    governed: str = text("What governs", "The same in a sentence.")
    remarks: tuple[str, ...] = text("Remarks", "Further sentences on the posting and the figures.")
    live_load: str = text("Live load", "The vehicles whose greatest forces are shown.")
    signs: tuple[str, ...] = text("Signs", "The legend of each sign, as it will stand.")
    designation: str = text("Designation", "The signs' designations in the public sign manual.")
    cautions: tuple[str, ...] = text("Cautions", "Sentences that belong to every use of the sheet.")
    source: str = text("Drawn from", "Version of eyebar and the record's hash.")


def sheet_view(
    rate: Document, forces: Document, *, truss: str | None = None, vehicle: str | None = None
) -> StressSheet:
    """The view of one truss from a `rate` and a `forces` document of the same bridge and date.

    Without a truss: the one that governs, or the first. Without a vehicle: the worst of all.
    Raises Unknown for a truss or a vehicle that is not there.
    """
    posting, drawn = rate["posting"], chosen_truss(rate, forces, truss)
    known = [one["name"] for one in forces["vehicles"]]
    if vehicle is not None and vehicle not in known:
        raise Unknown("vehicle", vehicle, near=nearest(vehicle, known))
    sign = posting["sign"] or {"legend": "", "designation": ""}
    parts = [one for one in rate["parts"] if one["truss"] == drawn["truss"]]
    return StressSheet(
        title=rate["bridge"]["name"],
        number=rate["bridge"]["number"],
        truss=drawn["truss"],
        date=sheet_words.long_date(rate["date"]),
        bars=_Bars(posting=posting, truss=drawn, vehicle=vehicle).all(parts),
        at_joints=tuple(_part_words(one, vehicle, posting) for one in parts if _at_joint(one)),
        posting=words.posting_line(posting),
        closed=words.CLOSE if posting["closed"] else "",
        governs=_governs(posting),
        governed=words.governed(posting),
        remarks=tuple(filter(None, _remarks(rate, drawn, vehicle))),
        live_load=sheet_words.live_load(vehicle, _carried(drawn)),
        signs=tuple(filter(None, sign["legend"].split("; "))),
        designation=sign["designation"],
        cautions=tuple(rate["cautions"][: GENERAL + bool(posting["closed"])]),
        source=f"eyebar {rate['version']}, record {rate['record_hash'][:12]}",
    )


def unrated_view(truss: Document, title: str) -> StressSheet:
    """The view of one truss of a `forces` document that nobody has rated: its bars alone."""
    return StressSheet(
        title=title, number="", truss=truss["truss"], date="", at_joints=(), posting="", closed="",
        bars=tuple(_unrated(bar, truss) for bar in truss["dead"]), governs="", governed="",
        remarks=(), live_load="", signs=(), designation="", cautions=(), source="",
    )


def _unrated(bar: str, truss: Document) -> BarFigures:
    work = _work(truss["dead"][bar], truss["bars"][bar], None)
    return BarFigures(
        bar=bar, part=f"{truss['truss']}/{bar}", work=work, dead=signed(truss["dead"][bar]),
        pull=NO_FORCE, push=NO_FORCE, mark="", said=f"{work.capitalize()}.",
    )


def chosen_truss(rate: Document, forces: Document, name: str | None) -> Document:
    """The truss of that name; without one the truss that governs, or the first; raises Unknown."""
    by_name: dict[str, Document] = {one["truss"]: one for one in forces["trusses"]}
    if name is None:
        governed = _governs(rate["posting"]).split("/")[0]
        name = governed if governed in by_name else next(iter(by_name), "")
    if name not in by_name:
        raise Unknown("truss", name, near=nearest(name, by_name))
    return by_name[name]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Bars:
    """The bars of one truss, looked up in its forces and in the rating."""

    posting: Document
    truss: Document
    vehicle: str | None

    def all(self, parts: Sequence[Document]) -> tuple[BarFigures, ...]:
        """The bars as they were solved, then those of the rating that were left out."""
        by_bar = {one["part"].partition("/")[2]: one for one in parts}
        solved = tuple(
            self._solved(bar, by_bar.get(bar, {"part": f"{self.truss['truss']}/{bar}"}))
            for bar in self.truss["dead"]
        )
        return (*solved, *(self._gone(bar, one) for bar, one in by_bar.items() if self._out(bar)))

    def _solved(self, bar: str, part: Document) -> BarFigures:
        live = [
            bars[bar] for name, bars in self.truss["live"].items()
            if bars is not None and self.vehicle in (None, name)
        ]
        rating = governing(part, Choice(vehicle=self.vehicle), self.posting)
        work = _work(self.truss["dead"][bar], self.truss["bars"][bar], rating)
        dead = signed(self.truss["dead"][bar])
        pull = signed(max((one["max"] for one in live), default=0.0))
        push = signed(min((one["min"] for one in live), default=0.0))
        mark = "governs" if part["part"] == _governs(self.posting) else ""
        said = (
            sheet_words.bar(work, dead, (pull, push)), sheet_words.answer(part, rating),
            "It governs the posting." if mark else "",
        )
        return BarFigures(
            bar=bar, part=part["part"], work=work, dead=dead, pull=pull, push=push,
            mark=mark or ("not rated" if part.get("not_rated") else ""),
            said=" ".join(filter(None, said)),
        )

    def _out(self, bar: str) -> bool:
        """Whether the name is that of a bar between two joints which was not solved."""
        ends = bar.removesuffix(" loose").split("-")
        return bar not in self.truss["bars"] and all(end in self.truss["joints"] for end in ends)

    def _gone(self, bar: str, part: Document) -> BarFigures:
        said = f"It {Work.GONE} here. {sheet_words.answer(part, None)}"
        return BarFigures(
            bar=bar, part=part["part"], work=Work.GONE, dead=NO_FORCE, pull=NO_FORCE,
            push=NO_FORCE, mark="not rated", said=said.strip(),
        )


def signed(force: float) -> str:
    """A force [kip] with its sign: + pulls, − pushes."""
    shown = rounding.kip(force)
    if shown == NO_FORCE:
        return NO_FORCE
    return f"−{shown[1:]}" if shown.startswith("-") else f"+{shown}"


def _work(dead: float, bar: Document, rating: Document | None) -> Work:
    """What a bar is drawn as; one that no dead load works is drawn by what its rating fears."""
    none = rounding.kip(dead) == NO_FORCE
    if not bar["can_push"]:
        return Work.SLACK if none else Work.PULLED
    pushed = not bar["can_pull"] or (rating is not None and (rating.get("limit_kip") or 0.0) < 0)
    return Work.PUSHED if pushed or (dead < 0 and not none) else Work.PULLED


def _governs(posting: Document) -> str:
    return str((posting["governed_by"] or {}).get("part", ""))


def _elsewhere(governs: str, truss: Document) -> bool:
    """Whether the part that governs is neither a bar nor at a panel point of the truss."""
    place, _, rest = governs.partition("/")
    joint = rest.partition("/")[0]
    here = place == truss["truss"] and joint in {*truss["bars"], *truss["joints"]}
    return bool(governs) and not here and not (place == "floor" and joint in truss["joints"])


def _at_joint(part: Document) -> bool:
    return str(part["part"]).count("/") == 2


def _part_words(part: Document, vehicle: str | None, posting: Document) -> PartWords:
    rating = governing(part, Choice(vehicle=vehicle), posting)
    governs = "It governs the posting." if part["part"] == _governs(posting) else ""
    return PartWords(
        part=part["part"], said=f"{sheet_words.answer(part, rating)} {governs}".strip()
    )


def _carried(truss: Document) -> list[str]:
    """The vehicles whose forces are in the document."""
    return [name for name, bars in truss["live"].items() if bars is not None]


def _remarks(rate: Document, truss: Document, vehicle: str | None) -> list[str]:
    posting = rate["posting"]
    rated = [
        (float(rating["factor"]), one["part"], rating) for one in rate["parts"]
        if (rating := governing(one, Choice(vehicle=vehicle), posting)) is not None
    ]
    _, part, rating = min(rated, default=(0.0, "", None), key=lambda found: found[0])
    missing = truss.get("no_equilibrium", {})
    return [
        words.exact(posting),
        words.emergency(posting),
        sheet_words.ELSEWHERE if _elsewhere(_governs(posting), truss) else "",
        sheet_words.weakest(vehicle, part, rating) if vehicle else "",
        words.provisional(posting),
        sheet_words.not_rated(
            one["kind"] for one in rate["parts"]
            if one["truss"] == truss["truss"] and one.get("not_rated")
        ),
        *(
            sheet_words.left_out(name, why) for name, why in missing.items()
            if vehicle in (None, name)
        ),
        words.unconfirmed(rate["unconfirmed"]),
    ]
