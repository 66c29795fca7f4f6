"""The working of a part that the posting's method has no rule for is that of the other method."""

from eyebar.documents.explain import explain_document
from eyebar.documents.rate import rate_document
from eyebar.record import record_of
from tests.bridge.plain import TODAY, changed
from tests.bridge.test_joints_and_stresses import BLOCKS, CAST, STEEL

BLOCK = "left/L0/joint block"


def test_a_block_is_explained_by_the_rule_that_it_has() -> None:
    text = changed((STEEL, STEEL + CAST), ("floor:\n", BLOCKS.replace("20 in2", "4 in2")))
    record = record_of(text, file="blocks.yaml", today=TODAY)
    explained = explain_document(record, BLOCK)
    chosen = explained["rating"]
    assert (chosen["method"], chosen["level"]) == ("allowable-stress", "operating")
    assert chosen["check"] == "bearing of U1-L0"
    # By hand: 9 ksi on 4 in2.
    assert chosen["capacity"] == 36.0
    assert any("shop book of 1888" in remark for remark in explained["remarks"])
    # It is the weakest part by far, and the posting by load and resistance says so.
    by = rate_document(record)["posting"]["governed_by"]
    assert by["part"] in (BLOCK, "left/L6/joint block")  # the two ends are alike
    assert (by["method"], by["level"]) == ("allowable-stress", "operating")
