"""A rating for its paper: the record that was rated, who signed, and the head of the chain."""

import json
from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, select

from eyebar.errors import NotWhole, Unknown
from eyebar.store.asked import KnownBridge, Revision, revision_of
from eyebar.store.issued import rating_row
from eyebar.store.tables import bridges, events, ratings, register, revisions, signatures
from eyebar.store.verified import walked
from eyebar.views.signed import InRegister


@dataclass(frozen=True, slots=True, kw_only=True)
class ForPaper:
    """A rating with its whole document, the revision that was rated, and what its paper says of
    the register."""

    document: dict[str, Any]
    revision: Revision
    kept: InRegister


def for_paper(connection: Connection, rating: int, *, head: str = "") -> ForPaper:
    """A rating as it stood at a head of the chain that a paper has; without one as it stands now.

    Raises Unknown where there is no such rating or head, and NotWhole where what the register
    holds is not as it was saved.
    """
    found = walked(connection)
    if found.broken:
        raise NotWhole("the register", found.broken)
    row = rating_row(connection, rating)
    own = connection.execute(select(ratings.c.event).where(ratings.c.id == rating)).scalar_one()
    stated = connection.execute(
        select(signatures.c.statement, events.c.at, events.c.number)
        .join(events, events.c.number == signatures.c.event)
        .where(signatures.c.rating == rating).order_by(events.c.number)
    ).all()
    known = {
        chain: number for number, chain in connection.execute(
            select(events.c.number, events.c.chain)
            .where(events.c.number.in_([own, *(one.number for one in stated)]))
        )
    }
    if head and head not in known:
        raise Unknown("head of the chain", head, where=f"the register, of rating {rating}")
    last = known[head] if head else max(known.values())
    number = connection.execute(
        select(revisions.c.revision).where(revisions.c.id == row["revision"])
    ).scalar_one()
    handle = connection.execute(
        select(bridges.c.handle).where(bridges.c.id == row["bridge"])
    ).scalar_one()
    return ForPaper(
        document=json.loads(row["document"]),
        revision=revision_of(connection, KnownBridge(id=row["bridge"], handle=handle), number),
        kept=InRegister(
            register=connection.execute(select(register.c.identity)).scalar_one(),
            rating=rating, bridge=handle, revision=number,
            statements=tuple((one.statement, one.at) for one in stated if one.number <= last),
            event=last, head=next(chain for chain, at in known.items() if at == last),
        ),
    )
