"""A register with a row in every table."""

import io
from datetime import date

from eyebar.store import issued
from eyebar.store.asked import bridge_named, revision_of
from eyebar.store.files import About, attach_content, withdraw
from eyebar.store.opened import Register
from eyebar.store.writing import Saying
from tests.store.samples import WHO, added, record, saved


def picture(*, position: bool = False, size: tuple[int, int] = (8, 6)) -> bytes:
    """A small photograph, as a telephone would write it."""
    from PIL import Image

    exif = Image.Exif()
    exif[0x0132] = "2026:06:09 10:20:30"
    exif[0x010F] = "Some Maker"
    if position:
        exif[0x8825] = {1: "N", 2: (44.0, 30.0, 0.0), 3: "W", 4: (93.0, 15.0, 0.0)}
    written = io.BytesIO()
    Image.new("RGB", size, (120, 60, 20)).save(written, "JPEG", exif=exif.tobytes())
    return written.getvalue()


def rating(register: Register, handle: str = "W-1") -> int:
    """A rating in the register whose document is short: making a real one takes seconds."""
    with register.writing(Saying(kind="rating issued", person=WHO, reason="made up")) as writing:
        bridge = bridge_named(writing.connection, handle)
        latest = revision_of(writing.connection, bridge)
        writing.bridge = bridge.id
        return writing.add(
            "ratings", bridge=bridge.id, revision=latest.id, date="2026-06-09",
            record_hash=latest.record_hash, values_hash="0" * 64, version="0",
            posting="WEIGHT LIMIT 6 TONS", exact_tons=6.123456789012345, document='{"é": 0.1}',
        )


def filled(register: Register) -> None:
    """Two bridges with a row in every table."""
    added(register)
    saved(register, record(built=1891), onto=1)
    added(register, "W-2", record(place="Fen Lane"))
    who = {"person": WHO, "reason": "county inspection"}
    part = record().inspections[0].readings[0].address.part
    attach_content(
        register, "W-1", ("pin.jpg", picture()), About(part=part, note="calliper held to it"), **who
    )
    second = attach_content(register, "W-1", ("list.csv", b"a,b\n1,2\n"), About(), **who)
    withdraw(register, second.number, person=WHO, reason="a person is named in it")
    number = rating(register)
    issued.sign(register, number, name="R. Alder", licence="12345", person=WHO)
    day = date(2026, 7, 1)
    up = issued.put_up(register, "W-1", "WEIGHT LIMIT 6 TONS", on=day, rating=number, **who)
    issued.taken_down(register, up.number, on=day, **who)
    issued.give_slip(register, "W-1", issued.Crossing(
        vehicle="grain cart", holder="A. Farmer", begins=day, ends=day, conditions="walking pace",
        rating=number,
    ), **who)
    issued.decide(register, "W-1", "keep it", on=day, part="", **who)
