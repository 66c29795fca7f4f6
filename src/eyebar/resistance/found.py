"""One check as it was found: in pull or in push, with the remarks that belong to it."""

from dataclasses import dataclass

from eyebar.formula import note


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """One check in pull: its name, the pull at which it is reached [kip], and remarks."""

    check: str
    force: float
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Push:
    """One check in push: its name, the thrust at which it is reached [kip], and remarks."""

    check: str
    thrust: float
    is_ratio: bool = False
    remarks: tuple[str, ...] = ()


def pulled(check: str, force: float, remarks: tuple[str, ...] = ()) -> Pull:
    """The check with its pull, which the working names too."""
    note(check, "P", force, "kip")
    return Pull(check=check, force=force, remarks=remarks)


def pushed(check: str, thrust: float, remarks: tuple[str, ...] = ()) -> Push:
    """The check with its thrust, which the working names too."""
    note(check, "P", thrust, "kip")
    return Push(check=check, thrust=thrust, remarks=remarks)


def slender(slenderness: float, limit: float) -> tuple[str, ...]:
    """A remark where a slenderness is above its limit: it is not thereby unsafe."""
    return (f"slenderness {slenderness:.0f} over {limit:g}",) * (slenderness > limit)
