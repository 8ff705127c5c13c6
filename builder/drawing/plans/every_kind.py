"""Any plan to its drawing."""

from __future__ import annotations

from journeybook.drawing.plans.chart import Chart, draw_chart
from journeybook.drawing.plans.decision import Decision, draw_decision
from journeybook.drawing.plans.gauge import Gauge, draw_gauge
from journeybook.drawing.plans.path import Path, draw_path
from journeybook.drawing.plans.sheet import Drawn
from journeybook.drawing.plans.stack import Stack, draw_stack
from journeybook.drawing.plans.timeline import Timeline, draw_timeline

Plan = Stack | Path | Gauge | Timeline | Decision | Chart


def draw_plan(plan: Plan) -> Drawn:
    """The drawing, and the same in words."""
    match plan:
        case Stack():
            return draw_stack(plan)
        case Path():
            return draw_path(plan)
        case Gauge():
            return draw_gauge(plan)
        case Timeline():
            return draw_timeline(plan)
        case Decision():
            return draw_decision(plan)
        case Chart():
            return draw_chart(plan)
