import numpy as np
import pytest

from eyebar.formula import (
    Block,
    Note,
    Step,
    Symbol,
    bare,
    distinct,
    equation_of,
    flat,
    formula,
    note,
    procedure,
    recording,
    remembered,
)


@formula(
    "P = F * A", result=Symbol("force", "kip"), F=Symbol("stress", "ksi", "stress"),
    A=Symbol("area", "in2", "area"), source="for this test",
)
def force(stress: float, area: float = 2.0) -> float:
    """A force [kip]."""
    return stress * area


@procedure("Halving", source="for this test", steps=("halve", "say the residual"))
def halved(number: float) -> float:
    """Half a number by way of a force [1]."""
    half = force(number, 0.5)
    note("twice the half less the number", "r", 2 * half - number, "1")
    return half


def test_nothing_is_kept_while_nobody_records() -> None:
    assert force(3.0) == 6.0
    with recording() as steps:
        pass
    assert steps == []


def test_a_step_keeps_inputs_by_symbol_defaults_among_them() -> None:
    with recording() as steps:
        got = force(stress=3.0)
    assert steps == [Step(formula=equation_of(force), inputs={"F": 3.0, "A": 2.0}, result=got)]


def test_a_procedure_makes_a_block_with_its_steps_and_residuals() -> None:
    with recording() as steps:
        halved(8.0)
    (block,) = steps
    assert isinstance(block, Block)
    assert block.procedure.name == "Halving"
    step, residual = flat(steps)
    assert isinstance(step, Step)
    assert step.result == 4.0
    assert residual == Note(
        text="twice the half less the number", symbol="r", value=0.0, unit="1")


def test_a_procedure_that_refuses_leaves_its_working_so_far() -> None:
    @procedure("Refusing", source="for this test", steps=("compute", "refuse"))
    def refusing() -> float:
        """Refuses."""
        force(1.0)
        raise ValueError("no")

    with recording() as steps, pytest.raises(ValueError, match="no"):
        refusing()
    assert [type(entry) for entry in steps] == [Block]
    assert len(list(flat(steps))) == 1


def test_arrays_are_computed_and_never_recorded() -> None:
    with recording() as steps:
        assert list(force(np.array([1.0, 2.0]))) == [2.0, 4.0]  # type: ignore[arg-type]
        force(np.float64(1.0))
    assert len(steps) == 1


def test_the_bare_function_records_nothing() -> None:
    with recording() as steps:
        assert bare(force)(3.0, 4.0) == 12.0
    assert steps == []


def test_recordings_do_not_leak_into_each_other() -> None:
    with recording() as outer:
        force(1.0)
        with recording() as inner:
            force(2.0)
        force(3.0)
    assert (len(outer), len(inner)) == (2, 1)


def test_a_remembered_function_is_computed_once_and_under_a_recorder_anew() -> None:
    calls: list[float] = []

    @remembered
    def doubled(number: float) -> float:
        calls.append(number)
        return force(number)

    assert [doubled(4.0), doubled(4.0)] == [8.0, 8.0]
    assert calls == [4.0]
    with recording() as steps:
        assert doubled(4.0) == 8.0
    assert (len(steps), calls) == (1, [4.0, 4.0])


def test_a_step_that_comes_again_with_the_same_numbers_is_shown_once() -> None:
    with recording() as steps:
        halved(8.0)
        force(8.0, 0.5)
        force(8.0, 0.25)
        note("twice the half less the number", "r", 0.0, "1")
    kept = distinct(steps)
    assert len(list(flat(steps))) == 5
    assert [entry.result for entry in kept if isinstance(entry, Step)] == [4.0, 2.0]
    assert sum(isinstance(entry, Note) for entry in kept) == 1
