"""Blocks and shoes at joints, rated by the bars that push on them.

A block has a rule by allowable stress alone. It is a part of its own, so that a posting by another
method takes it by the method that the policy names for parts without a rule, and does not pass it
over because the bars on it have rules.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from eyebar.bridge.parts import Bar, Seat, Truss
from eyebar.office import Values
from eyebar.rating.lookup import Question
from eyebar.rating.rated import NO_RULE, PartRating, RatedPart
from eyebar.rating.strengths import Strengths
from eyebar.resistance import Limit
from eyebar.resistance.seats import push_on_seat
from eyebar.terms import Kind, Level, Method

METHODS = (Method.ALLOWABLE_STRESS,)
"""The methods that have a rule for blocks."""
ENDS = (0, 1)


def block_of(truss: str, joint: str) -> str:
    """Address of the block at a joint."""
    return f"{truss}/{joint}/{Kind.JOINT_BLOCK}"


def bearing_bar(bar: Bar, seat: Seat) -> Bar:
    """The bar as its block takes it: the shock is that on the block's own metal."""
    return replace(bar, material=replace(bar.material, metal=seat.metal))


@dataclass(slots=True, kw_only=True)
class BlockStrengths:
    """What the blocks at one end of the bars of a truss bear; `end` 0 or 1 of each bar.

    `without` are addresses of blocks that are not rated.
    """

    truss: Truss
    end: int
    values: Values
    without: frozenset[str]
    known: dict[Level, Strengths] = field(default_factory=dict)

    def seats(self) -> list[Seat | None]:
        """(n,) the rated block at this end of each bar."""
        return [self._seat(bar) for bar in self.truss.bars]

    def bars(self) -> tuple[Bar, ...]:
        """The bars, each as its block here takes it."""
        return tuple(
            bar if seat is None else bearing_bar(bar, seat)
            for bar, seat in zip(self.truss.bars, self.seats(), strict=True)
        )

    def of(self, question: Question, _dead_factor_dc: float) -> Strengths:
        """Limits of all bars by their blocks here, whatever the dead load."""
        level = question.level
        if level not in self.known:
            limits: list[Limit | None] = [
                None if seat is None else push_on_seat(seat, bar.name, level, self.values)
                for bar, seat in zip(self.truss.bars, self.seats(), strict=True)
            ]
            nothing = np.full(len(limits), np.inf)
            self.known[level] = Strengths(
                about=(f"block at end {self.end}", level), pull=nothing,
                push=np.array([np.inf if one is None else -one.force for one in limits]),
                pull_limits=(None,) * len(limits), push_limits=tuple(limits),
            )
        return self.known[level]

    def _seat(self, bar: Bar) -> Seat | None:
        joint = bar.ends[self.end]
        if block_of(self.truss.name, joint) in self.without:
            return None
        return next((one for one in bar.seats if one.joint == joint), None)


def block_strengths(
    truss: Truss, values: Values, without: frozenset[str]
) -> tuple[BlockStrengths, ...]:
    """Those of both ends; none where the truss has no block that is rated."""
    both = [
        BlockStrengths(truss=truss, end=end, values=values, without=without) for end in ENDS
    ]
    return tuple(both) if any(seat for one in both for seat in one.seats()) else ()


def block_parts(
    strengths: Sequence[BlockStrengths], rows: Sequence[Sequence[Sequence[PartRating]]],
    others: Sequence[PartRating],
) -> list[RatedPart]:
    """The blocks of one truss.

    `rows` has for each end the ratings of all bars (n,), question by question; `others` those that
    stand for every block: methods without a rule, vehicles that are refused.
    """
    found: dict[str, tuple[Seat, dict[int, PartRating]]] = {}
    for one, answers in zip(strengths, rows, strict=True):
        truss = one.truss.name
        for i, (bar, seat) in enumerate(zip(one.truss.bars, one.seats(), strict=True)):
            if seat is None:
                continue
            _, least = found.setdefault(block_of(truss, seat.joint), (seat, {}))
            for question, ratings in enumerate(answers):
                new = replace(ratings[i], of_bar=bar.name)
                if question not in least or _factor(new) < _factor(least[question]):
                    least[question] = new
    return [
        RatedPart(
            address=address, truss=strengths[0].truss.name, kind=Kind.JOINT_BLOCK, seat=seat,
            ratings=(*least.values(), *others),
        )
        for address, (seat, least) in found.items()
    ]


def unrated_blocks(truss: Truss, without: frozenset[str], reason: str) -> list[RatedPart]:
    """The blocks of a truss whose dead load is not known."""
    seats = {
        block_of(truss.name, seat.joint): seat for bar in truss.bars for seat in bar.seats
    }
    return [
        RatedPart(
            address=address, truss=truss.name, kind=Kind.JOINT_BLOCK, seat=seat, not_rated=reason
        )
        for address, seat in seats.items() if address not in without
    ]


def no_rule(question: Question) -> PartRating:
    """What stands for every block where the question's method has no rule."""
    return PartRating(
        vehicle=question.vehicle.name, method=question.method, level=question.level, factor=None,
        reason=NO_RULE, live_factor=question.live_factor, share=question.case.total,
        lanes=question.case.lanes,
    )


def _factor(rating: PartRating) -> float:
    return float("inf") if rating.factor is None else rating.factor
