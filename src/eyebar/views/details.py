"""Which bridges share details: hints with counts."""

from dataclasses import dataclass

from eyebar.views.columns import Document, figure, text

NO_DETAILS = (
    "Neither the record nor the office's details.toml tells a detail of this bridge: write "
    "'details:' into the record, such as 'portal: flat lattice'."
)
NOBODY = "No other bridge of the catalogue shares a detail with it."


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedRow:
    """One detail of this bridge."""

    what: str = text("Detail", "What it is.")
    shape: str = text("Shape", "Its shape, in the office's words.")
    count: str = figure("Shared", "How many of the bridges on which it was looked for have it.")
    others: str = text("With", "Those bridges.")


@dataclass(frozen=True, slots=True, kw_only=True)
class LikeRow:
    """One other bridge."""

    bridge: str = text("Bridge", "As the catalogue calls it.")
    count: str = figure("Shares", "How many of the details that both have written down.")
    shared: str = text("Which", "The details that both have.")


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedDetails:
    """What a bridge shares with others."""

    bridge: str = text("Bridge", "Name and date.")
    details: tuple[SharedRow, ...] = text("Details", "Each detail, and who shares it.")
    bridges: tuple[LikeRow, ...] = text("Bridges", "The others, those that share most first.")
    remarks: tuple[str, ...] = text("Remarks", "Where nothing is shared, or words differ.")
    cautions: tuple[str, ...] = text("Cautions", "What belongs to every use of the result.")


def shared_details(document: Document) -> SharedDetails:
    """The view of a `history-details` document."""
    remarks = [
        *([] if document["details"] else [NO_DETAILS]),
        *([NOBODY] if document["details"] and not document["bridges"] else []),
        *(f"{one}." for one in document["near"]),
    ]
    return SharedDetails(
        bridge=f"{document['bridge']['name']}, as on {document['date']}.",
        details=tuple(
            SharedRow(
                what=one["what"], shape=one["shape"], others=", ".join(one["others"]),
                count=f"{len(one['others'])} of {one['known']}",
            )
            for one in document["details"]
        ),
        bridges=tuple(
            LikeRow(
                bridge=one["bridge"], count=f"{len(one['shared'])} of {one['compared']}",
                shared="; ".join(
                    f"{detail['what']}: {detail['shape']}" for detail in one["shared"]
                ),
            )
            for one in document["bridges"]
        ),
        remarks=tuple(remarks), cautions=tuple(document["cautions"]),
    )
