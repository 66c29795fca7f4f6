"""The whole rating of a demo bridge: in process, and as a command from cold."""

import subprocess
import sys
from dataclasses import replace
from importlib.resources import as_file

from benchmarks.timing import least
from eyebar.demo import SHOWN, bridge_records
from eyebar.documents.cross import cross_document
from eyebar.documents.opened import opened
from eyebar.documents.rate import rate_document
from eyebar.documents.use import use_document
from eyebar.rating import rated_bridge
from eyebar.rating.floor import rated_floor
from eyebar.rating.weakest import weakest
from eyebar.resistance import Condition

LIBRARIES = "import numpy, pydantic, ruamel.yaml, typer, rich.console, rich.table"


def test_a_whole_rating_in_process() -> None:
    with as_file(bridge_records()[SHOWN]) as record:
        one = opened(record)
        rate_document(record)
        rating = least(lambda: rated_bridge(one.bridge, one.values, one.rated_vehicles))
        document = least(lambda: rate_document(record))
        condition = Condition(superstructure_condition=5, loss_measured=True)
        floor = least(
            lambda: rated_floor(one.bridge, one.values, one.rated_vehicles, condition)
        )
        trusses = tuple(replace(truss, pins=()) for truss in one.bridge.trusses)
        without = replace(one.bridge, trusses=trusses)
        bare = least(lambda: rated_bridge(without, one.values, one.rated_vehicles))
    print(f"\nof it the floor {floor:.2f} s, the pins {rating - bare:.2f} s: with pins "
          f"{rating / bare:.2f} times as long as without")
    print(f"\nrating in process {rating:.2f} s; from record to document {document:.2f} s")


def test_the_parts_by_safe_load_against_the_rating() -> None:
    with as_file(bridge_records()[SHOWN]) as record:
        one = opened(record)
        rated = rated_bridge(one.bridge, one.values, one.rated_vehicles)
        rating = least(lambda: rated_bridge(one.bridge, one.values, one.rated_vehicles), 3)
        parts = least(lambda: weakest(rated, one.rated_vehicles, one.values))
    print(f"\nparts by safe load {parts:.3f} s, {100 * parts / rating:.1f} % of the rating")
    assert parts < 0.1 * rating


def test_the_board_against_the_rating() -> None:
    with as_file(bridge_records()[SHOWN]) as record:
        rating = least(lambda: rate_document(record), 3)
        board = least(lambda: cross_document(record), 2)
        one = least(lambda: cross_document(record, ["Type 3"]), 3)
        use = least(lambda: use_document(record), 2)
    print(f"\nrating {rating:.2f} s; board {board:.2f} s, {board / rating:.1f} times; one vehicle "
          f"{one / rating:.1f} times, use of the road {use / rating:.1f} times")


def test_a_cold_command_against_the_import_of_its_libraries() -> None:
    with as_file(bridge_records()[SHOWN]) as record:
        command = [sys.executable, "-m", "eyebar", "rate", str(record)]
        cold = least(lambda: subprocess.run(command, check=True, capture_output=True))
    imports = [sys.executable, "-c", LIBRARIES]
    alone = least(lambda: subprocess.run(imports, check=True, capture_output=True))
    print(f"\ncold command {cold:.2f} s, {cold / alone:.1f} times its libraries' {alone:.2f} s")
