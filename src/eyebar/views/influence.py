"""What the sheet of an influence line says."""

from dataclasses import dataclass

from eyebar.units import length_text
from eyebar.views import rounding, sheet_words
from eyebar.views.columns import Document, figure, text
from eyebar.views.stress_sheet import NO_FORCE, BarFigures, StressSheet, Work, signed

THIS = "this bar"


@dataclass(frozen=True, slots=True, kw_only=True)
class AxleRow:
    """One axle on the line."""

    number: str = text("Axle", "From the front.")
    weight: str = figure("Weight, kip", "Its weight.")
    station: str = figure("Station, ft", "Where it stands, from end 0.")
    ordinate: str = figure("Ordinate", "The bar's force for one kip there, in kip.")


@dataclass(frozen=True, slots=True, kw_only=True)
class OrdinateRow:
    """The line at one panel point."""

    joint: str = text("Joint", "The panel point.")
    station: str = figure("Station, ft", "From end 0.")
    ordinate: str = figure("Ordinate", "The bar's force for one kip there, in kip.")


def ordinate(value: float) -> str:
    """An ordinate: + pulls, − pushes."""
    shown = f"{abs(value):.3f}"
    if float(shown) == 0.0:
        return "0"
    return f"{'−' if value < 0 else '+'}{shown}"


def axle_rows(document: Document) -> list[AxleRow]:
    """The axles, from front to rear."""
    return [
        AxleRow(
            number=str(i), weight=rounding.plain(one["axle_kip"]),
            station=rounding.feet(one["station_ft"]), ordinate=ordinate(one["ordinate"]),
        )
        for i, one in enumerate(document["axles"], 1)
    ]


def ordinate_rows(document: Document) -> list[OrdinateRow]:
    """The ordinates, from end 0."""
    return [
        OrdinateRow(joint=joint, station=rounding.feet(station), ordinate=ordinate(value))
        for joint, station, value in zip(
            document["joints"], document["stations_ft"], document["ordinates"], strict=True
        )
    ]


def peaks(document: Document) -> str:
    """How the line is read, and its greatest and least ordinate."""
    said = ["Over its zero the line pulls, under it it pushes"]
    values, joints = document["ordinates"], document["joints"]
    for word, chosen in (("greatest", max(values)), ("least", min(values))):
        if ordinate(chosen) != "0":
            said.append(f"{word} {ordinate(chosen)} at {joints[values.index(chosen)]}")
    return f"{'; '.join(said)}."


def sentences(document: Document) -> list[str]:
    """What the line shows, in sentences."""
    bar, vehicle = document["part"], document["vehicle"]["name"]
    if not document["axles"]:
        return [f"No vehicle changes the force of {bar}."]
    at = document["at"]
    sense = "pull" if document["live_kip"] > 0 else "push"
    return [
        f"{vehicle} changes the force of {bar} most where its front axle stands "
        f"{length_text(at['front_axle_ft'] * 12.0, nearest=16)} from end 0, on its way "
        f"{'to higher' if at['direction'] == 'up' else 'to lower'} stations: "
        f"{signed(document['live_kip'])} kip, towards {sense}, its axles alone in one lane, "
        "without impact or factors.",
        f"One truss takes {document['share']:.3f} of each axle. Under dead load the bar has "
        f"{signed(document['dead_kip'])} kip.",
        "The line is that of the bars that work while the vehicle stands there; where bars go "
        "slack on the way the force is not the plain sum of axles times ordinates.",
    ]


def line_view(document: Document) -> StressSheet:
    """The truss with the bar marked, drawn without figures."""
    truss = document["truss"]
    return StressSheet(
        title=document["bridge"]["name"], number=document["bridge"]["number"],
        truss=truss["truss"], date=sheet_words.long_date(document["date"]), at_joints=(),
        bars=tuple(
            BarFigures(
                bar=name, part=bar["part"], dead="", pull=NO_FORCE, push=NO_FORCE,
                work=Work.GONE if bar["broken"] else
                Work.CAN_PUSH if bar["can_push"] else Work.ONLY_PULLS,
                mark=THIS if bar["part"] == document["part"] else "", said=bar["kind"],
            )
            for name, bar in truss["bars"].items()
        ),
        posting="", closed="", governs="", governed="", remarks=(), live_load="", signs=(),
        designation="", cautions=(), source="",
    )
