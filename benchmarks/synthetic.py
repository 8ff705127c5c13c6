"""Makes a course of any size with ten questions a lesson, and the same text as plain Markdown.

The text is made of words drawn by a fixed rule, so that two runs write the same bytes.
"""

from __future__ import annotations

import argparse
from pathlib import Path

PROSE = """
check the guard before the drill runs and keep the table clear of swarf then set the depth stop and clamp the work
because a loose plate spins with the bit and cuts the hand that holds it so look at the belt the chuck the key and the
switch in that order and write down what you find on the sheet by the door
"""
SYLLABLES = [a + b for a in "bdgklmnprstvw" for b in "aiu"]
WORDS = PROSE.split() + [a + b + "n" for a in SYLLABLES for b in SYLLABLES]
"""Fifteen hundred words: with fewer, the questions would all be near duplicates of one another."""
COMMONEST = len(PROSE.split())
LESSONS_A_MODULE = 10
QUESTIONS_A_LESSON = 10

COURSE = """\
title: "Synthetic course"
summary: "Made for measuring."
version: "1.0"
languages: [en]
equipment: "None"
issuer: {name: Quillon Basin Works}
contact: {name: "Nobody", role: stand-in, reach: "nowhere"}
validity: {months: 12, grounds: "Made for measuring."}
outcomes:
  - {id: outcome-1, text: "Do the work."}
critical-facts:
  - {id: fact-1, text: "Isolate first.", why: "It saves hands.", source: [common]}
cautions: ["Made for measuring."]
does-not-prove: ["anything"]
draft: true
"""
KIT = """\
title: "Kit sheet"
values:
  - {id: depth, label: Depth, value: "12", unit: mm, example: true}
"""
PROFILE = """\
title: "Anywhere"
values: []
"""
SOURCES = """\
sources:
  - {id: common, title: "Common practice", status: common practice}
"""
BLUEPRINT = """\
title: Check
percent: 80
grounds: "Made for measuring."
minutes: 20
cells:
  - {outcome: outcome-1, level: apply, draw: 10}
"""


def prose(start: int, words: int) -> str:
    """``words`` words, drawn by a rule that depends on ``start``, and a full stop; half of them are the commonest."""
    chosen = []
    drawn = start * 7919 + 17
    for _ in range(words):
        drawn = (drawn * 1103515245 + 12345) % 2**31  # the linear congruential generator of POSIX rand
        spread = len(WORDS) if drawn & 0x10000 else COMMONEST
        chosen.append(WORDS[(drawn >> 17) % spread])
    return " ".join(chosen).capitalize() + "."


def lesson_markdown(number: int) -> str:
    """The body of one lesson: three sections of prose, a list and a table, about 330 words."""
    parts = []
    for section in range(3):
        seed = number * 31 + section
        parts.append(
            f"## Section {section + 1}\n\n{prose(seed, 60)} **{prose(seed + 1, 4)}** {prose(seed + 2, 30)}\n"
        )
    parts.append("\n".join(f"- {prose(number + i, 9)}" for i in range(4)) + "\n")
    parts.append(
        "| part | look for |\n|---|---|\n"
        + "\n".join(f"| part {i} | {prose(number + i, 5)} |" for i in range(3))
        + "\n"
    )
    return "\n".join(parts)


def question(number: int, use: str) -> tuple[str, str]:
    """One choice question as YAML and as Markdown, same text."""
    ask = prose(number, 14)[:-1] + "?"
    options = [(name, prose(number * 5 + i, 8), prose(number * 3 + i, 9)) for i, name in enumerate("abcd")]
    critical = "    critical: fact-1\n" if use == "check" and number < 40 else ""
    lines = [
        f"  - id: q-{number}\n    kind: choice\n    use: {use}\n    outcome: outcome-1\n    level: apply\n"
        f'    source: common\n{critical}    ask: "{ask}"\n    why: "{prose(number + 3, 12)}"\n    options:\n'
    ]
    lines += [
        f'      - {{id: {name}, text: "{text}", reason: "{reason}"}}\n' for name, text, reason in options
    ]
    lines.append("    right: b\n")
    markdown = f"**{ask}**\n\n" + "\n".join(f"- {text} *{reason}*" for _, text, reason in options)
    return "".join(lines), f"{markdown}\n\n{prose(number + 3, 12)}\n"


def indent(text: str, spaces: int) -> str:
    """``text`` with ``spaces`` spaces before every line that is not empty."""
    return "".join(" " * spaces + line if line.strip() else line for line in text.splitlines(keepends=True))


def write(path: Path, text: str) -> None:
    """Write ``text``, making the folders it needs."""
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def make(folder: Path, lessons: int) -> None:
    """Write ``folder/course`` (for Journeybook) and ``folder/plain`` (for MkDocs alone)."""
    course, plain = folder / "course", folder / "plain"
    source, quizzes = course / "course_src" / "synthetic", course / "quizzes" / "synthetic"
    for name, text in [
        ("course.yml", COURSE),
        ("kit.yml", KIT),
        ("sources.yml", SOURCES),
        ("words.yml", "words: []\n"),
    ]:
        write(source / name, text)
    write(source / "profiles" / "any.yml", PROFILE)
    write(quizzes / "competence-check.yml", BLUEPRINT)
    write(
        course / "mkdocs.yml",
        "site_name: Synthetic\ndocs_dir: course_src\ntheme: {name: journeybook}\n"
        "plugins:\n  - journeybook: {courses: [synthetic], profile: any}\n",
    )
    # The built-in themes put the whole navigation on every page, which costs the square of the pages;
    # a bare theme is the fairer yardstick.
    write(
        plain / "mkdocs.yml",
        "site_name: Plain\nuse_directory_urls: false\ntheme: {name: null, custom_dir: theme}\nplugins: []\n",
    )
    write(
        plain / "theme" / "main.html",
        "<!doctype html><html><head><title>{{ page.title }}</title></head><body><main>{{ page.content }}</main>"
        "<nav>{% if page.next_page %}<a href='{{ page.next_page.url|url }}'>next</a>{% endif %}</nav></body></html>\n",
    )
    write(plain / "docs" / "index.md", "# Start\n")
    for number in range(lessons):
        module = number // LESSONS_A_MODULE
        text = lesson_markdown(number)
        uses = ["practice"] * 6 + ["check"] * 4
        made = [question(number * QUESTIONS_A_LESSON + i, use) for i, use in enumerate(uses)]
        practice = ", ".join(f"q-{number * QUESTIONS_A_LESSON + i}" for i in range(6))
        write(
            source / "modules" / f"{module + 1:03d}-module-{module}" / f"{number:04d}-lesson.yml",
            f'id: lesson-{number}\ntitle: "Lesson {number}"\nminutes: 5\noutcomes: [outcome-1]\nsource: [common]\n'
            f"body:\n  - text: |\n{indent(text, 6)}practice: [{practice}]\n",
        )
        if number % LESSONS_A_MODULE == 0:
            write(
                source / "modules" / f"{module + 1:03d}-module-{module}" / "module.yml",
                f'title: "Module {module}"\nsummary: "Made for measuring."\n',
            )
        write(
            quizzes / f"bank-{number:04d}.yml",
            f'title: "Bank {number}"\nquestions:\n' + "".join(q for q, _ in made),
        )
        write(plain / "docs" / f"m{module}" / f"lesson-{number}.md", f"# Lesson {number}\n\n{text}")
        write(
            plain / "docs" / "banks" / f"bank-{number}.md",
            f"# Bank {number}\n\n" + "\n".join(md for _, md in made),
        )


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--lessons", type=int, default=100)
    arguments = parser.parse_args()
    make(arguments.folder, arguments.lessons)
