from pathlib import Path

from eyebar.record import Unmeasured, checked, not_measured
from tests.record.field_book import SMALL, TODAY, changed, read


def found(text: str) -> set[tuple[str, str]]:
    return {(one.part, one.what) for one in not_measured(read(text))}


def test_a_record_with_every_size_lacks_nothing() -> None:
    assert found(SMALL) == set()


def test_what_is_not_measured_is_named_for_each_part() -> None:
    text = changed(
        ("plates: [3 in x 1/2 in, 3 in x 5/8 in]", "plates: [3 in x 1/2 in, not measured]"),
        (", piece: 2", ""), ("value: 9/16 in", "value: 7/16 in"),
        ("battens: {plate: 9 in x 1/4 in, length: 8 in, pitch: 3 ft",
         "battens: {plate: 9 in x not measured, length: 8 in, pitch: not measured"),
        ("deck: {kind: plank, thickness: 3 in", "deck: {kind: plank, thickness: not measured"),
        ("surfacing: {kind: gravel, thickness: 1 in, weight: 120 lb/ft3, measured: true}",
         "surfacing: {kind: gravel, thickness: not measured, weight: 120 lb/ft3, measured: false}"),
    )
    both = ("upstream", "downstream")
    assert found(text) == {
        *((f"{truss}/{bar}", "width") for truss in both for bar in ("U1-L2", "U5-L4")),
        *((f"{truss}/{bar}", "thickness") for truss in both for bar in ("U1-L2", "U5-L4")
          if (truss, bar) != ("upstream", "U1-L2")),
        *((f"{truss}/{bar}", what) for truss in both for bar in ("U1-L0", "U5-L6")
          for what in ("batten thickness", "batten pitch")),
        ("floor/deck", "deck thickness"), ("floor/deck", "surfacing thickness"),
    }


def test_what_has_been_read_since_is_not_listed() -> None:
    # The small record reads the thickness of upstream/L2-L3 in 2020, and of no other chord bar.
    text = changed(("thickness: 3/4 in, head", "thickness: ~, head"))
    parts = {part for part, what in found(text) if what == "thickness"}
    assert "upstream/L2-L3" not in parts
    assert {"upstream/L3-L4", "downstream/L2-L3"} <= parts


def test_the_open_bars_of_a_turnbuckle_are_asked_for() -> None:
    text = changed(("root diameter: 1 3/8 in}", "root diameter: 1 3/8 in, turnbuckle: true}"))
    assert {what for _, what in found(text)} == {"turnbuckle area"}


def test_a_size_that_may_be_left_out_counts_only_when_it_is_named() -> None:
    text = changed(("hole: 2 1/2 in}", "hole: 2 1/2 in, head thickness: not measured}"))
    assert {what for _, what in found(text)} == {"head thickness"}


def test_a_check_tells_faults_or_what_is_missing(tmp_path: Path) -> None:
    path = tmp_path / "bridge.yaml"
    path.write_text(changed(("hole: 2 1/2 in", "hole: not measured")), encoding="utf-8")
    good = checked(path, today=TODAY)
    assert good.faults == ()
    assert good.record is not None
    assert Unmeasured(part="upstream/L0-L1", what="hole") in good.not_measured
    path.write_text(changed(("hole: 2 1/2 in", "hole: 2 1/2")), encoding="utf-8")
    bad = checked(path, today=TODAY)
    assert [fault.rule for fault in bad.faults] == ["has no unit"]
    assert (bad.record, bad.not_measured, bad.file) == (None, (), str(path))
