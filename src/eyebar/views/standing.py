"""Where the load stands: what every bar does with a vehicle at one place, by its force table."""

from bisect import bisect_right
from dataclasses import dataclass

from eyebar.errors import OutOfRange
from eyebar.views import rounding
from eyebar.views.columns import Document, figure, text
from eyebar.views.stress_sheet import signed

NOTHING_KIP = 0.05
"""A force that is shown as nothing; a bar with less carries nothing on the drawing."""
WORDS = {"pushed": "pushed together", "pulled": "pulled apart", "slack": "carries nothing"}


@dataclass(frozen=True, slots=True, kw_only=True)
class BarStanding:
    """One bar with the vehicle where it stands."""

    bar: str = text("Bar", "Name of the bar.")
    force: str = figure("Force", "Force with dead load and the vehicle [kip]; + pulls, − pushes.")
    dead: str = figure("Dead", "Force under dead load alone [kip].")
    work: str = text("Work", "Pushed, pulled, or slack.")
    said: str = text("In words", "The same in words.")
    chosen: bool = text("Chosen", "Whether it is the bar that was pointed at.")


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """All bars with the vehicle at one place, and the places before and after it."""

    title: str = text("Title", "The truss, the vehicle and the place.")
    said: str = text("In words", "Which bars carry nothing here that work under dead load.")
    front_ft: float = figure("Front axle", "Station of the front axle [ft].")
    place: str = text("Place", "The same for people.")
    bars: tuple[BarStanding, ...] = text("Bars", "Every bar.")
    before_ft: float | None = figure("Before", "The next row of the table towards lower stations.")
    after_ft: float | None = figure("After", "The next row of the table towards higher stations.")

    def of(self, bar: str) -> BarStanding:
        """The bar of that name."""
        return next(one for one in self.bars if one.bar == bar)


def standing(table: Document, front_ft: float, chosen: str = "") -> Standing:
    """The view of a `force-table` document with the front axle at a place.

    Raises OutOfRange where the table has no rows, or the place is no number on its ruler.
    """
    if table["no_equilibrium"]:
        raise OutOfRange(
            "force table", table["no_equilibrium"]["reason"], "one of a truss that stands"
        )
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    if not fronts[0] <= front_ft <= fronts[-1]:
        raise OutOfRange(
            "place of the front axle", f"{front_ft:g} ft",
            f"from {rounding.feet(fronts[0])} to {rounding.feet(fronts[-1])} ft",
        )
    forces = forces_at(table, front_ft)
    dead = table["dead_kip"]
    bars = tuple(
        _bar(bar, force, dead[bar], chosen)
        for bar, force in zip(table["bars"], forces, strict=True)
    )
    row = max(0, bisect_right(fronts, front_ft) - 1)
    slack = table["slack_between"][min(row, len(fronts) - 2)]
    named = f"{table['vehicle']['name']} on the {table['truss']} truss"
    bound = bound_for(table, table["direction"])
    place = f"front axle at {rounding.feet(front_ft)} ft, bound for {bound}"
    return Standing(
        title=f"{named}, {place}", said=slack_words(table, slack), front_ft=front_ft, place=place,
        bars=bars,
        before_ft=max((one for one in fronts if one < front_ft - 1e-6), default=None),
        after_ft=min((one for one in fronts if one > front_ft + 1e-6), default=None),
    )


def forces_at(table: Document, front_ft: float) -> list[float]:
    """All bar forces [kip] at a place: straight between two rows."""
    fronts = [row["front_axle_ft"] for row in table["rows"]]
    row = min(max(bisect_right(fronts, front_ft) - 1, 0), len(fronts) - 2)
    part = (front_ft - fronts[row]) / (fronts[row + 1] - fronts[row])
    pairs = zip(
        table["rows"][row]["forces_kip"], table["rows"][row + 1]["forces_kip"], strict=True
    )
    return [first + part * (second - first) for first, second in pairs]


def slack_words(table: Document, slack: list[str]) -> str:
    """Which bars have gone slack, and which have come in, against the bridge without a vehicle."""
    resting = table["slack_empty"]
    gone = [bar for bar in slack if bar not in resting]
    come = [bar for bar in resting if bar not in slack]
    said = []
    if gone:
        said.append(f"Gone slack: {', '.join(gone)}.")
    if come:
        said.append(f"Come in, idle under dead load alone: {', '.join(come)}.")
    return " ".join(said) or "The same bars work as under dead load alone."


def bound_for(table: Document, way: str) -> str:
    """The end of the truss that a vehicle goes to."""
    end = table["stations_ft"][-1 if way == "up" else 0][0]
    return str(end)


def _bar(bar: str, force: float, dead: float, chosen: str) -> BarStanding:
    work = "slack" if abs(force) < NOTHING_KIP else "pulled" if force > 0 else "pushed"
    shown = signed(force)
    return BarStanding(
        bar=bar, force=shown, dead=signed(dead), work=work,
        chosen=bar == chosen,
        said=WORDS[work] if work == "slack" else f"{WORDS[work]}, {shown} kip",
    )
