"""The section of a report on the bracing under wind."""

from eyebar.views.blocks import Block, Points, Section, table
from eyebar.views.bracing import MarginRow, PostRow, braced
from eyebar.views.columns import Document

SHARES = (3, 4, 0, 0, 0, 4)


def bracing(document: Document) -> Section:
    """What is known of the bracing, and the least margin of all that do the same."""
    view = braced(document)
    blocks: list[Block] = []
    if view.rows:
        blocks.append(table(
            MarginRow, view.rows, shares=SHARES,
            caption="How many times the wind of each rule the parts stand; the least of each kind",
        ))
    if view.posts:
        blocks.append(table(
            PostRow, view.posts, shares=(1, 3, 0, 0, 0, 0),
            caption="Posts that hold an upper chord sideways",
        ))
    return Section(heading="Bracing under wind", blocks=(
        Points(points=view.sentences), *blocks, Points(points=tuple(document["cautions"][2:5])),
    ))
