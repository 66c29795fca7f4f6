"""A document as JSON text."""

import json
from collections.abc import Mapping
from typing import Any

import orjson


def written(document: Mapping[str, Any]) -> str:
    """The text, two spaces deep. Raises ValueError for a number that is none or endless, which JSON
    cannot say."""
    json.dumps(document, allow_nan=False)  # orjson would say null
    return orjson.dumps(document, option=orjson.OPT_INDENT_2).decode()
