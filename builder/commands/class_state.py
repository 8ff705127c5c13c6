"""``journeybook class-state``: who is back, marked, vouched for, observed and certified, and what was refused."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from journeybook.commands.came_back import SITTING, course_finder, result_words, sitting_of
from journeybook.commands.project_option import CONFIG, project_of
from journeybook.diagnostics.excerpt import visible
from journeybook.sittings.inbox import Course
from journeybook.sittings.sitting import Place, Sitting


@click.command("class-state")
@SITTING
@CONFIG
@click.option("--json", "as_json", is_flag=True, help="For programs: one object.")
@click.pass_context
def class_state(context: click.Context, sitting_path: Path, config_file: Path, as_json: bool) -> None:
    """Show who of a class is back, marked, vouched for, observed and certified, and what was refused."""
    sitting = sitting_of(sitting_path)
    course = course_finder(project_of(context, config_file))(sitting)
    rows = [_row(place, course) for place in sitting.people]
    if as_json:
        refused = [
            {
                "from": each.source,
                "received": each.received,
                "fingerprint": each.fingerprint,
                "ticket": each.ticket,
                "why": each.why,
            }
            for each in sitting.refused
        ]
        content = {
            "sitting": sitting.id,
            "course-here": course is not None,
            "people": rows,
            "refused": refused,
        }
        click.echo(json.dumps(content, ensure_ascii=False, indent=1))
    else:
        click.echo(_as_text(sitting, rows, course), nl=False)


def _row(place: Place, course: Course | None) -> dict[str, Any]:
    result = None
    if place.attempt is not None and course is not None:
        result = course.marker.re_mark(place.attempt.text.encode(), place.attempt.source).result
    return {
        "ticket": place.ticket,
        "id": place.id,
        "name": place.name,
        "back": place.attempt is not None,
        "by-way-of": place.attempt.by_way_of if place.attempt else "",
        "fingerprint": place.attempt.fingerprint if place.attempt else "",
        "passed": None if result is None else result["passed"],
        "marks": "" if result is None else result_words(result),
        "vouched": place.vouched.by if place.vouched else "",
        "observations": len(place.observations),
        "countersigned": sum(held.countersigned is not None for held in place.observations),
        "certificate": place.certificate.id if place.certificate else "",
        "attempt-number": place.attempt_number,
        "set-aside": [
            {
                "fingerprint": each.attempt.fingerprint,
                "answered-by": each.answered_by,
                "by": each.by,
                "on": each.on.isoformat(),
                "why": each.why,
            }
            for each in place.set_aside
        ],
    }


def _as_text(sitting: Sitting, rows: list[dict[str, Any]], course: Course | None) -> str:
    title, where = visible(sitting.title), visible(sitting.location)
    lines = [
        f"{title}, {sitting.held_on}, {where}: {sitting.course} {sitting.version}, {sitting.profile}",
        "",
    ]
    for row in rows:
        lines.append(f"{row['ticket']}  {visible(row['name'])} ({visible(row['id'])})")
        if not row["back"]:
            told = ["not back"]
        else:
            told = [f"back by {row['by-way-of']}, {row['fingerprint']}", row["marks"]]
            told.append(
                f"vouched for by {visible(row['vouched'])}" if row["vouched"] else "nobody has vouched"
            )
        if row["observations"]:
            told.append(f"observed {row['observations']}, countersigned {row['countersigned']}")
        if row["certificate"]:
            told.append("certified")
        lines.append("             " + "; ".join(part for part in told if part))
        for each in row["set-aside"]:
            whose = (
                f"answered by {visible(each['answered-by'])}"
                if each["answered-by"]
                else "of nobody of the class"
            )
            said = f"{each['fingerprint']}, {whose}: {visible(each['why'])} ({visible(each['by'])}, {each['on']})"
            lines.append(f"             set aside {said}")
    if sitting.refused:
        lines += ["", "Refused, and kept as a note:"]
        lines += [
            f"  {each.received}  {visible(each.source)}: {visible(each.why)}" for each in sitting.refused
        ]
    back, sworn = sum(row["back"] for row in rows), sum(bool(row["vouched"]) for row in rows)
    signed = sum(bool(row["certificate"]) for row in rows)
    lines += [
        "",
        f"Of {len(rows)}: {back} back, {sworn} vouched for, {signed} certified; {len(sitting.refused)} refused.",
    ]
    if course is None:
        lines.append("The course is not here, so nothing is marked; run this beside its mkdocs.yml.")
    return "\n".join(lines) + "\n"
