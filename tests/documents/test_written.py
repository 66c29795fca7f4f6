"""JSON text against that of the standard library."""

import json
import math

import pytest

from eyebar.documents.written import written
from tests.documents import demos


@pytest.mark.parametrize("name", demos.NAMES)
def test_a_result_is_written_as_the_standard_library_writes_it(name: str) -> None:
    rate = demos.rate(name)
    assert written(rate) == json.dumps(rate, indent=2, ensure_ascii=False, allow_nan=False)


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf])
def test_what_json_cannot_say_is_refused(number: float) -> None:
    with pytest.raises(ValueError, match="not JSON compliant"):
        written({"parts": [{"factor": number}]})
