"""What the drawing of a pin says: its bearings in figures, what governs, in words."""

import math
from dataclasses import dataclass

from eyebar.errors import Unknown
from eyebar.terms import Kind
from eyebar.views import rounding, words
from eyebar.views.columns import Document, text
from eyebar.views.rating import Choice, governing

HUNG = "hung load"


@dataclass(frozen=True, slots=True, kw_only=True)
class PinBearingRow:
    """One bearing of a pin."""

    number: str = text("No.", "Its number on the drawing, from the outside.")
    bears: str = text("What bears", "The bars that bear there as one, or the load hung on the pin.")
    thickness: str = text("Thick, in", "The thickness of the bearing.")
    load: str = text("across", "Force on the pin, horizontal; towards higher stations positive.")
    load_up: str = text("up", "Force on the pin, upright.")
    shear: str = text("across", "Shear just beyond it, horizontal.")
    shear_up: str = text("up", "Shear just beyond it, upright.")
    shear_both: str = text("both", "Shear just beyond it, of both planes together.")
    moment: str = text("across", "Moment at its middle from horizontal forces.")
    moment_up: str = text("up", "Moment at its middle from upright forces.")
    moment_both: str = text("both", "Moment at its middle, of both planes together.")
    spread: str = text("spread", "The same with loads spread over their bearings.")
    used: str = text("Used", "The greatest check there, as a part of its limit.")


@dataclass(frozen=True, slots=True, kw_only=True)
class PinSheet:
    """The words of a pin's drawing."""

    title: str = text("Bridge", "The bridge.")
    part: str = text("Pin", "The pin's address, and the date.")
    answer: str = text("Factor", "The factor, what is reached first, and where the vehicle stands.")
    load: str = text("Load", "The vehicle, the method and the level.")
    remarks: tuple[str, ...] = text("Remarks", "What was assumed of the pin.")
    cautions: tuple[str, ...] = text("Cautions", "Sentences that belong to the result.")
    rows: tuple[PinBearingRow, ...] = text("Bearings", "One row a bearing.")
    governing: int = text("Governs", "The row at which the check is reached.")


def pin_sheet(document: Document) -> PinSheet:
    """The view of a pin's `explain` document. Raises Unknown where nothing acts on it."""
    pin, rating = document.get("pin"), document["rating"]
    if pin is None:
        raise Unknown("moments of", document["part"], where="pins that reach a limit")
    used = [one["used"] for one in pin["bearings"]]
    return PinSheet(
        title=document["bridge"]["name"],
        part=f"Pin {document['part']}, {rounding.plain(pin['diameter_in'])} in, as on "
        f"{document['date']}",
        answer=words.answer(rating),
        load=f"{rating['vehicle']}, {words.standing(rating['method'], rating['level'])}",
        remarks=tuple(document["remarks"]),
        cautions=tuple(document["cautions"]),
        rows=tuple(_row(i + 1, one) for i, one in enumerate(pin["bearings"])),
        governing=used.index(max(used)),
    )


def governing_pins(rate: Document) -> tuple[str, ...]:
    """Of each truss the address of the pin with the least factor, as the posting takes it."""
    least: dict[str, tuple[float, str]] = {}
    for part in rate["parts"]:
        rating = (
            governing(part, Choice(), rate["posting"]) if part["kind"] == Kind.PIN else None
        )
        if rating is not None:
            this = (float(rating["factor"]), part["part"])
            least[part["truss"]] = min(this, least.get(part["truss"], this))
    return tuple(part for _, part in least.values())


def _row(number: int, one: Document) -> PinBearingRow:
    load, shear, moment = one["load_kip"], one["shear_kip"], one["moment_kip_in"]
    bears = ", ".join((*one["bars"], *((HUNG,) if one["hung"] else ())))
    return PinBearingRow(
        number=str(number), bears=bears, thickness=rounding.plain(one["thickness_in"]),
        load=rounding.kip(load[0]), load_up=rounding.kip(load[1]),
        shear=rounding.kip(shear[0]), shear_up=rounding.kip(shear[1]),
        shear_both=rounding.kip(math.hypot(*shear)),
        moment=rounding.kip(moment[0]), moment_up=rounding.kip(moment[1]),
        moment_both=rounding.kip(math.hypot(*moment)),
        spread=rounding.kip(math.hypot(*one["spread_moment_kip_in"])),
        used=rounding.used(one["used"]),
    )
