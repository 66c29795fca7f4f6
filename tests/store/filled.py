"""A register with a row in every table."""

import io

from eyebar.store.files import About, attach_content, withdraw
from eyebar.store.opened import Register
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


def filled(register: Register) -> None:
    """Two bridges, revisions, files kept and withdrawn."""
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
