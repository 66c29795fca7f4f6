"""`eyebar register report`: the paper of a rating that was issued, with the head of the chain."""

from pathlib import Path
from typing import TYPE_CHECKING

from eyebar.cli.options import Office
from eyebar.cli.papers import Across, PdfFile, Whose
from eyebar.cli.register import Place, app, at
from eyebar.cli.register_given import Number
from eyebar.errors import NoRegister, NotWhole, Unknown
from eyebar.terms import Board, Working
from eyebar.views import report_verified
from eyebar.views.signed import InRegister

if TYPE_CHECKING:
    from eyebar.report.verified import Claims

register_app = app
"""The whole group: the commands of `cli/register.py`, of `cli/register_given.py` and that below."""


@app.command()
def report(
    rating: Number,
    *,
    output: PdfFile = None,
    working: Whose = Working.GOVERNING,
    board: Across = Board.ANSWERS,
    office: Office = None,
    register: Place = None,
) -> None:
    """Write the report of a rating, with who signed it and the head of the chain."""
    with at(register, as_json=False) as opened:
        from datetime import date

        from eyebar.cli.reporting import Wanted, write_kept
        from eyebar.store.signed import for_paper

        with opened.reading() as connection:
            found = for_paper(connection, rating)
        kept = found.kept
        wanted = Wanted(
            record=Path(f"{kept.bridge}, revision {kept.revision}"), office=office,
            on=date.fromisoformat(found.document["date"]), working=working, board=board,
        )
        write_kept(wanted, found, output or Path(f"{kept.bridge} rating {rating}.pdf"))


def kept_for(
    claimed: "Claims", place: str | None
) -> tuple[InRegister | None, tuple[str, ...]]:
    """What the register at hand says of the rating that a paper names, as it stood at the head
    that is printed on it; and what was found, in sentences. None where it does not fit."""
    from eyebar.store.opened import opened_register
    from eyebar.store.signed import for_paper

    try:
        with opened_register(place) as register, register.reading() as connection:
            found = for_paper(connection, claimed.rating, head=claimed.head).kept
    except (NoRegister, NotWhole) as refusal:
        return None, (str(refusal),)
    except Unknown as refusal:
        return None, (report_verified.OTHER_REGISTER, str(refusal))
    if found.register != claimed.register:
        return None, (report_verified.OTHER_REGISTER,)
    return found, (report_verified.head_fits(found.event),)
