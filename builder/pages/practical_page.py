"""A practical: what an assessor reads, watches and fills in.

The body is the sheet for the hand, whole without a script and on paper. Beside it stand the data from which
``js/view/practical-view.js`` turns it into a form that saves an observation.
"""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup

from journeybook.content.model import Course, Practical
from journeybook.content.wording import Wording
from journeybook.pages.build_facts import BuildFacts
from journeybook.pages.engine import render
from journeybook.pages.leaf import Leaf
from journeybook.pages.links import practical_path, slug_of
from journeybook.pages.turns import Turn

SCRIPTS = ("deflate", "practical")


def practical_leaf(
    course: Course,
    wording: Wording,
    practical: Practical,
    operation: int,
    turn: tuple[Turn, Turn | None],
    release: BuildFacts,
    digest: Callable[[], str],
) -> Leaf:
    """The leaf of one practical; ``operation`` is its line on the route card."""
    language = course.languages[0]
    slug = slug_of("practical", practical.id)
    before, after = turn
    taken: set[str] = set()

    def write(text: str) -> Markup:
        return Markup(wording.block(text, slug, taken=taken))

    sources = [name for name in practical.sources if name == "kit" or name in course.sources]
    return Leaf(
        path=practical_path(course.id, practical.id),
        slug=slug,
        kind="practical",
        title=wording.plain(practical.title),
        course=course.id,
        body=render(
            language,
            "practical.html",
            course=course,
            wording=wording,
            write=write,
            practical=practical,
            critical_steps=sum(step.critical for step in practical.steps),
            limits=[Markup(wording.inline(limit)) for limit in course.certificate_limits],
            sources=sources,
            slug=slug,
            operation=operation,
            before=before,
            after=after,
        ),
        data={
            "practical": {
                "course": course.id,
                "version": release.version,
                "digest": digest(),
                "profile": course.profile.id,
                "language": language,
                "practical": practical.id,
                "draft": release.draft,
                "conditions": len(practical.safety),
                "steps": [[step.id, step.critical] for step in practical.steps],
            }
        },
        language=language,
        operation=operation,
        scripts=SCRIPTS,
    )
