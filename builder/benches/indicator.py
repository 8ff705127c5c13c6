"""What a float in an upright tube shows: it is lifted by the air's speed and its density together.

The float hangs still where the air pushes it up as hard as its weight pulls it down, so that flow squared times
density is what the scale really shows. A scale drawn in one air reads wrong in another: true volume flow = reading
* sqrt(density at calibration / density). Source: the theory of variable-area flowmeters, as in VDI/VDE 3513; from
memory.
"""

from __future__ import annotations

import math


def reading(flow: float, *, density: float, calibrated_at: float) -> float:
    """What the scale shows at a true volume flow; densities in the same unit."""
    return flow * math.sqrt(density / calibrated_at)


def true_flow(shown: float, *, density: float, calibrated_at: float) -> float:
    """The true volume flow behind what the scale shows."""
    return shown * math.sqrt(calibrated_at / density)
