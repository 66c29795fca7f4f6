"""The deck under the heaviest wheel of each vehicle, wherever it stands."""

from dataclasses import dataclass, field

import numpy as np

from eyebar.bridge.floor_parts import Deck, Timber
from eyebar.loads.floor_dead import NONE, Pair
from eyebar.rating.floor_context import FloorContext
from eyebar.rating.floor_facts import FloorFacts, Met
from eyebar.rating.floor_search import EVERY_SET, Found, Wish, sections
from eyebar.resistance.decks import CONCRETE, Strip, deck_strengths, strip_of, tyre
from eyebar.resistance.floor_rules import Effect, Strength, floor_rules
from eyebar.resistance.slabs import wheels_on_strip
from eyebar.terms import Combine, Level, Metal, Method
from eyebar.vehicles import Vehicle

SQUARE_INCHES = 144.0
LIGHTEST_AXLE = 1.0
"""An axle [kip] by which a strip of deck is cut where a load has none: what a load by area does is
of the strip's own width and span."""
WHEELS = 2.0
"""Wheels on an axle, one at each end; several tyres at one end count as one."""


@dataclass(slots=True, kw_only=True)
class DeckLoads:
    """The deck. Each vehicle has a strip of its own where its wheel's weight makes its patch."""

    context: FloorContext
    deck: Deck
    known: dict[tuple[Method, float], Strip] = field(default_factory=dict)
    known_strengths: dict[tuple[Method, Level, float], tuple[Strength, ...]] = field(
        default_factory=dict
    )

    def strip(self, method: Method, vehicle: Vehicle) -> Strip:
        """The strip that carries the heaviest wheel."""
        wheel = heaviest_wheel(vehicle)
        key = (method, wheel)
        if key not in self.known:
            self.known[key] = self.fresh_strip(method, wheel)
        return self.known[key]

    def fresh_strip(self, method: Method, wheel_kip: float) -> Strip:
        """The same, worked out anew."""
        patch = tyre(method, wheel_kip, self.context.values)
        return strip_of(self.deck, patch, wheel_kip, self.context.values, method=method)

    def strengths_for(
        self, method: Method, level: Level, vehicle: Vehicle
    ) -> tuple[Strength, ...]:
        """Strengths of the strip under a vehicle's wheel."""
        return self.strengths_under(method, level, heaviest_wheel(vehicle))

    def strengths_under(
        self, method: Method, level: Level, wheel_kip: float
    ) -> tuple[Strength, ...]:
        """Strengths of the strip under a wheel. Raises NotMeasured, OutOfRange."""
        key = (method, level, wheel_kip)
        if key not in self.known_strengths:
            by = floor_rules(
                method, level, system="stringers", values=self.context.values,
                condition=self.context.condition,
            )
            strip = self.fresh_strip(method, wheel_kip)
            self.known_strengths[key] = deck_strengths(self.deck, strip, by, self.context.values)
        return self.known_strengths[key]

    def shock(self, vehicle: Vehicle, method: Method) -> float:
        """Impact by its own span."""
        made_of = self.deck.made_of
        metal = made_of.metal if made_of is not None and not isinstance(
            made_of, Timber) else Metal.STEEL if self.deck.kind == CONCRETE else Metal.TIMBER
        span = self.strip(method, vehicle).span / 12.0
        return self.context.shock(vehicle, method, metal=metal, loaded_ft=span, span_ft=span)

    def sets(self) -> tuple[str, ...]:
        """Dead load only adds."""
        return EVERY_SET[:1]

    def found(self, wish: Wish, vehicle: Vehicle) -> list[Found]:
        """The factor of one vehicle for one wish."""
        strength = wish.strength
        strip = self.strip(wish.asked.method, vehicle)
        dead = self._dead(strength, strip)
        live = self._live(strength, strip, vehicle)
        left = strength.capacity - wish.dead[0] * dead.dc - wish.dead[1] * dead.dw
        factor = np.array([left / (float(wish.times[0]) * wish.presence * live)])
        return [Found(factor=factor, section=sections(0.0, 1))]

    def presence(self, method: Method) -> float:
        """Multiple presence of one lane [1]: a wheel on a strip is no share of a table that has it
        within."""
        return self.context.presence(method, 1)

    def _dead(self, strength: Strength, strip: Strip) -> Pair:
        """Dead load's stress [ksi]: what lies on the strip, on a simple span."""
        found = NONE
        for layer in self.context.floor.layers:
            effect = _under_area(strength, strip, layer.kip_per_ft2)
            pair = Pair(dc=0.0, dw=effect) if layer.wearing else Pair(dc=effect, dw=0.0)
            found = found.plus(pair)
        return found

    def met(self, facts: FloorFacts, method: Method, vehicle: Vehicle) -> Met:
        """What a check meets: one wheel, which is half of its axle."""
        strip = self.strip(method, vehicle)
        presence = self.presence(method)
        return Met(
            dead=self._dead(facts.strength, strip),
            live=presence * self._live(facts.strength, strip, vehicle),
            share=presence * (1.0 if vehicle.combine is Combine.AREA else 1.0 / WHEELS),
        )

    def _live(self, strength: Strength, strip: Strip, vehicle: Vehicle) -> float:
        """What one wheel does [ksi], or a load by area on the strip."""
        if vehicle.combine is Combine.AREA:
            return _under_area(strength, strip, vehicle.area_kip_per_ft2)
        return self._wheel(vehicle, strip) / strength.divisor

    def _wheel(self, vehicle: Vehicle, strip: Strip) -> float:
        """The wheel that acts on a strip [kip]: on a slab also those whose strips overlap it."""
        if self.deck.kind != CONCRETE or not vehicle.axles_kip:
            return heaviest_wheel(vehicle)
        return wheels_on_strip(
            [axle / WHEELS for axle in vehicle.axles_kip],
            [12.0 * apart for apart in vehicle.least_spacings_ft], strip.width,
        )


def heaviest_wheel(vehicle: Vehicle) -> float:
    """The heaviest wheel [kip]; that of a light axle where a load has no wheels."""
    return max(vehicle.axles_kip, default=LIGHTEST_AXLE) / WHEELS


def _under_area(strength: Strength, strip: Strip, kip_per_ft2: float) -> float:
    """What a load by area on a strip does, on a simple span [in the strength's unit]."""
    load = kip_per_ft2 / SQUARE_INCHES * strip.width
    match strength.effect:
        case Effect.PLANK_MOMENT:
            effect = load * strip.span**2 / 8.0 / strip.moment
        case Effect.PLANK_SHEAR:
            effect = load * strip.span / 2.0 / strip.shear
        case _:
            effect = load * strip.span
    return effect / strength.divisor
