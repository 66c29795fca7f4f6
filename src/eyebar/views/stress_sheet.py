"""What a stress sheet says: the figures along the bars, and the words around the drawing."""

from collections import Counter
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from eyebar.documents.opened import CAUTION, CLOSE, NOT_ASSUMED_SOUND
from eyebar.errors import Unknown, nearest
from eyebar.views import rounding, words
from eyebar.views.columns import Document, figure, text
from eyebar.views.rating import Choice, governing

NONE = rounding.kip(0.0)


class Work(StrEnum):
    """How a bar is drawn: as what it does under dead load, or where it fails first."""

    PUSHED = "pushed"
    PULLED = "pulled"
    SLACK = "slack under dead load"


@dataclass(frozen=True, slots=True, kw_only=True)
class BarFigures:
    """One bar on the sheet."""

    bar: str = text("Bar", "Name of the bar.")
    part: str = text("Part", "Its address.")
    kind: str = text("Kind", "What it does in the truss; empty where it is not in the rating.")
    work: Work = text("Work", "Pushed, pulled, or slack under dead load.")
    dead: str = figure("Dead", "Force under dead load, without factors [kip]; + pulls, − pushes.")
    pull: str = figure("Most pull", "The most pull that a vehicle adds, without impact [kip].")
    push: str = figure("Most push", "The most push that a vehicle adds, without impact [kip].")
    mark: str = text("Mark", "What is written on the bar beside its figures; mostly empty.")
    said: str = text("In words", "The bar in a sentence, for those who do not see the drawing.")

    @property
    def live(self) -> str:
        """Most pull and most push, those that are not nothing."""
        return " ".join(one for one in (self.pull, self.push) if one != NONE) or NONE


@dataclass(frozen=True, slots=True, kw_only=True)
class StressSheet:
    """Everything that is lettered on a stress sheet of one truss."""

    title: str = text("Bridge", "Name of the bridge.")
    number: str = text("Number", "Its number.")
    truss: str = text("Truss", "The truss that is drawn.")
    date: str = text("As on", "The date on whose state of the bridge the figures rest.")
    bars: tuple[BarFigures, ...] = text("Bars", "One entry for each bar, also one that is broken.")
    posting: str = text("Posting", "The posting on one line, as the sign will say it.")
    closed: str = text("Closed", "Empty, unless the bridge is to be closed.")
    governs: str = text("Governs", "Address of the part that sets the posting; empty for none.")
    governed: str = text("What governs", "The same in a sentence.")
    remarks: tuple[str, ...] = text("Remarks", "Further sentences on the posting and the figures.")
    vehicles: str = text("Live load", "The vehicles whose greatest forces are shown.")
    figures: str = text("Figures", "What the figures along the bars are.")
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
    legend = (posting["sign"] or {}).get("legend", "")
    return StressSheet(
        title=rate["bridge"]["name"],
        number=rate["bridge"]["number"],
        truss=drawn["truss"],
        date=_long_date(rate["date"]),
        bars=_bars(rate, drawn, vehicle),
        posting=words.posting_line(posting),
        closed=words.CLOSE if posting["closed"] else "",
        governs=(posting["governed_by"] or {}).get("part", ""),
        governed=words.governed(posting),
        remarks=tuple(filter(None, _remarks(rate, drawn, vehicle))),
        vehicles=vehicle or words.listed([*drawn["live"]]),
        figures=words.SHEET_FIGURES,
        signs=tuple(filter(None, legend.split("; "))),
        designation=(posting["sign"] or {}).get("designation", ""),
        cautions=tuple(
            one for one in rate["cautions"] if one in (CLOSE, CAUTION, NOT_ASSUMED_SOUND)
        ),
        source=f"eyebar {rate['version']}, record {rate['record_hash'][:12]}",
    )


def chosen_truss(rate: Document, forces: Document, name: str | None) -> Document:
    """The truss of that name; without one the truss that governs, or the first; raises Unknown."""
    by_name: dict[str, Document] = {one["truss"]: one for one in forces["trusses"]}
    if name is None:
        governed = (rate["posting"]["governed_by"] or {}).get("part", "").split("/")[0]
        name = governed if governed in by_name else next(iter(by_name), "")
    if name not in by_name:
        raise Unknown("truss", name, near=nearest(name, by_name))
    return by_name[name]


def _bars(rate: Document, truss: Document, vehicle: str | None) -> tuple[BarFigures, ...]:
    """The bars as they were solved, then those of the rating that were not: they are broken."""
    prefix = f"{truss['truss']}/"
    parts = {one["part"]: one for one in rate["parts"] if one["truss"] == truss["truss"]}
    live = [
        bars for name, bars in truss["live"].items()
        if bars is not None and vehicle in (None, name)
    ]
    found = []
    for bar, dead in truss["dead"].items():
        extremes = [bars[bar] for bars in live if bar in bars]
        part = parts.get(prefix + bar, {"part": prefix + bar, "kind": ""})
        rating = governing(part, Choice(vehicle=vehicle), rate["posting"])
        work = _work(dead, truss["bars"][bar], rating)
        found.append(_figures(bar, part, dead, extremes, work=work, rating=rating, rate=rate))
    return (*found, *(_broken(part) for address, part in parts.items() if _left_out(
        address.removeprefix(prefix), truss
    )))


def _work(dead: float, bar: Document, rating: Document | None) -> Work:
    if not bar["can_push"]:
        return Work.SLACK if rounding.kip(dead) == NONE else Work.PULLED
    fails_pushed = rating is not None and (rating.get("limit_kip") or 0.0) < 0
    if rounding.kip(dead) == NONE:
        return Work.PUSHED if fails_pushed or not bar["can_pull"] else Work.PULLED
    return Work.PUSHED if dead < 0 or fails_pushed else Work.PULLED


def _figures(
    bar: str, part: Document, dead: float, extremes: list[Document], *, work: Work,
    rating: Document | None, rate: Document,
) -> BarFigures:
    pull = _signed(max((one["max"] for one in extremes), default=0.0))
    push = _signed(min((one["min"] for one in extremes), default=0.0))
    reason = part.get("not_rated", "")
    governs = (rate["posting"]["governed_by"] or {}).get("part") == part["part"]
    answer = f"Not rated: {reason}." if reason else words.answer(rating) if rating else ""
    shown = _signed(dead)
    return BarFigures(
        bar=bar, part=part["part"], kind=part["kind"], work=work, dead=shown, pull=pull, push=push,
        mark="governs" if governs else "not rated" if reason else "",
        said=" ".join(filter(None, (
            f"{work.capitalize()}. Dead load {shown} kip; vehicles add {pull} kip of pull and "
            f"{push} kip of push at most.", answer, "It governs the posting." if governs else "",
        ))),
    )


def _left_out(bar: str, truss: Document) -> bool:
    """Whether a part's last name is a bar between two joints that was not solved."""
    ends = bar.removesuffix(" loose").split("-")
    return bar not in truss["bars"] and all(end in truss["joints"] for end in ends)


def _broken(part: Document) -> BarFigures:
    reason = part.get("not_rated", "left out of the forces")
    return BarFigures(
        bar=part["part"].rsplit("/", 1)[1], part=part["part"], kind=part["kind"],
        work=Work.SLACK, dead="", pull=NONE, push=NONE, mark="not rated",
        said=f"It carries nothing here. Not rated: {reason}.",
    )


def _signed(force: float) -> str:
    """A force [kip] with its sign: + pulls, − pushes."""
    shown = rounding.kip(force)
    if shown == NONE:
        return NONE
    return f"−{shown[1:]}" if shown.startswith("-") else f"+{shown}"


def _remarks(rate: Document, truss: Document, vehicle: str | None) -> tuple[str, ...]:
    posting = rate["posting"]
    return (
        words.exact(posting),
        words.emergency(posting),
        words.provisional(posting),
        _weakest(rate, vehicle) if vehicle else "",
        _not_rated(rate, truss["truss"]),
        *(
            f"Without {name}: {why['reason']} ({why['panel']})."
            for name, why in truss.get("no_equilibrium", {}).items() if vehicle in (None, name)
        ),
        words.unconfirmed(rate["unconfirmed"]),
    )


def _weakest(rate: Document, vehicle: str) -> str:
    """The part that carries the least of one vehicle, in a sentence."""
    rated = [
        (part["part"], rating) for part in rate["parts"]
        if (rating := governing(part, Choice(vehicle=vehicle), rate["posting"])) is not None
    ]
    if not rated:
        return f"No part is rated for {vehicle}."
    part, rating = min(rated, key=lambda pair: float(pair[1]["factor"]))
    return f"Weakest under {vehicle}: {part}. {words.answer(rating)}"


def _not_rated(rate: Document, truss: str) -> str:
    """Which parts of the truss are not rated, counted by kind."""
    kinds = Counter(
        part["kind"] for part in rate["parts"]
        if part["truss"] == truss and part.get("not_rated")
    )
    if not kinds:
        return ""
    counted = [f"{count} {kind if count == 1 else words.several(kind)}" for kind, count
               in kinds.items()]
    return f"Not rated on this truss: {', '.join(counted)}."


def _long_date(iso: str) -> str:
    """`9 June 2026`."""
    day = date.fromisoformat(iso)
    return f"{day.day} {words.MONTHS[day.month - 1]} {day.year}"
