"""What stands on the sign: designation and legend as the public sign manual has them.

The words are the manual's; on a sign for two kinds of vehicles it shows silhouettes, which are
spelled out here.
"""

from dataclasses import dataclass

PROVISIONAL = "PROVISIONAL"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign:
    """A sign: `designation` (empty where none stands for it) and `legend`, with their source."""

    designation: str
    legend: str
    source: str
    confirmed: bool


_MANUAL = "Manual on Uniform Traffic Control Devices, 2003 edition, revision 1, section 2B.49"


def weight_limit_sign(*, single_tons: int | None, combination_tons: int | None) -> Sign | None:
    """The sign for gross weight with load [tons]; None where nothing is limited."""
    if single_tons is None and combination_tons is None:
        return None
    if single_tons == combination_tons:
        return Sign(
            designation="R12-1", legend=f"WEIGHT LIMIT {single_tons} TONS", source=_MANUAL,
            confirmed=True,
        )
    limits = [
        f"{tons} TONS {kind}"
        for tons, kind in ((single_tons, "SINGLE UNIT"), (combination_tons, "COMBINATION"))
        if tons is not None
    ]
    return Sign(
        designation="R12-5", legend=f"WEIGHT LIMIT {', '.join(limits)}", source=_MANUAL,
        confirmed=True,
    )


def emergency_sign(
    *, single_axle_tons: int | None, tandem_tons: int | None, gross_tons: int | None
) -> Sign | None:
    """The sign for emergency vehicles [tons]; None where nothing is limited."""
    limits = [
        f"{kind} {tons} TONS"
        for kind, tons in (
            ("SINGLE AXLE", single_axle_tons), ("TANDEM", tandem_tons), ("GROSS", gross_tons)
        )
        if tons is not None
    ]
    if not limits:
        return None
    return Sign(
        designation="R12-7", legend=f"EMERGENCY VEHICLE WEIGHT LIMIT {', '.join(limits)}",
        source="Manual on Uniform Traffic Control Devices, 11th edition, from memory",
        confirmed=False,
    )


def closed_sign() -> Sign:
    """The sign of a bridge that is closed."""
    return Sign(
        designation="R11-2", legend="BRIDGE CLOSED",
        source="Manual on Uniform Traffic Control Devices, ROAD CLOSED with the word BRIDGE, "
        "from memory",
        confirmed=False,
    )


def undecided_sign() -> Sign:
    """What is shown while the owner has not decided: no sign stands for it."""
    return Sign(
        designation="", legend="CLOSE THE BRIDGE OR POST IT AT THE OPERATING LEVEL: OWNER DECIDES",
        source="plain words", confirmed=True,
    )


def unrated_sign() -> Sign:
    """What is shown while no part is rated: no sign stands for it."""
    return Sign(
        designation="", legend="NOT RATED: NO LOAD CAN BE CALLED SAFE", source="plain words",
        confirmed=True,
    )


def together(*signs: Sign | None, provisional: bool) -> Sign | None:
    """Several signs as one answer; `provisional` puts that word inside the legend."""
    shown = [one for one in signs if one is not None]
    if not shown:
        return None
    legend = "; ".join(one.legend for one in shown)
    return Sign(
        designation=", ".join(one.designation for one in shown if one.designation),
        legend=f"{PROVISIONAL} {legend}" if provisional else legend,
        source="; ".join(one.source for one in shown),
        confirmed=all(one.confirmed for one in shown),
    )
