"""Options that several commands share."""

from pathlib import Path
from typing import Annotated

import typer

Office = Annotated[
    Path | None,
    typer.Option(metavar="FOLDER", help="Your office's own values, vehicles and policy."),
]
AsJson = Annotated[bool, typer.Option("--json", help="The whole result, unrounded, as JSON.")]
