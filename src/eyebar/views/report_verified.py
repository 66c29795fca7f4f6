"""What is said of a report that is held against its record."""

PROVEN = "This report belongs to this record: made again, it is the same, byte for byte."
ADDED = (
    "Something was added behind it since, as a digital signature is; what was added is not proven "
    "here."
)
OTHER_RECORD = "This report does not belong to this record: it names another record's hash."
SAME_RECORD = "The report names this record's hash."
OTHER_RESULT = (
    "But its result is not what this program makes of the record now: the office's values may "
    "have changed, or the report."
)
SAME_RESULT = "The report names this record and this result."
CHANGED = "But made again it is not the same: the file was changed after it was made."
NEEDS_SINCE = (
    "It was made beside an earlier result: give that with --since, and it can be made again."
)
NEEDS_REGISTER = (
    "It names the head of a register: give that with --register, and it can be made again."
)
OTHER_REGISTER = "The register at hand is not the one that it names."


def head_fits(event: int) -> str:
    """The head on the paper is in the chain of the register at hand."""
    return (
        f"The head printed on it is that of event {event} of this register, and everything there "
        "is as it was saved."
    )


def other_version(theirs: str, ours: str) -> str:
    """A report that another version made."""
    return (
        f"It was made by eyebar {theirs}, and this is {ours}: only that version can make it again "
        "and prove what stands in it."
    )
