"""What a paper says of the register that keeps its rating: who signed, and the chain's head."""

from dataclasses import dataclass

NOT_A_SEAL = (
    "This is a statement of a name and a licence number, as somebody typed them. It is no seal and"
    " no cryptographic signature: nothing here proves who typed it, and it does not take the place"
    " of the seal that the law asks for."
)
ON_PAPER = (
    "While this paper is kept, eyebar register verify --head tells by this head whether anything "
    "that the register held then was changed since. The head does not prove who signed."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class InRegister:
    """A rating as the register holds it: the register's identity, the rating and what it is of, the
    statements of who signed (each with its time), and the last event of these with its hash, which
    is the head of the chain at that moment."""

    register: str
    rating: int
    bridge: str
    revision: int
    statements: tuple[tuple[str, str], ...]
    event: int
    head: str


def on_the_front(kept: InRegister | None) -> tuple[str, ...]:
    """What the first page says above the place for the signature; nothing without a register."""
    if kept is None:
        return ()
    head = f"Head of the register's chain: {kept.head}"
    if not kept.statements:
        return (f"Rating {kept.rating} of the register is a draft: nobody has signed it.", head)
    return (
        *(f"Stated in the register at {at}: {said}" for said, at in kept.statements),
        NOT_A_SEAL, head,
    )


def rows(kept: InRegister | None) -> tuple[tuple[str, str], ...]:
    """What stands among the fingerprints on the last page."""
    if kept is None:
        return ()
    return (
        ("Register", kept.register),
        ("Rating there", f"{kept.rating}, of revision {kept.revision} of {kept.bridge}"),
        ("Head of its chain", f"{kept.head}, at event {kept.event}"),
    )
