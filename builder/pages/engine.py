"""The template engine: autoescape on, interface words through gettext, templates from the theme."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from jinja2 import Environment, FunctionLoader, StrictUndefined

from journeybook.pages import filters
from journeybook.pages.words_catalogue import load_catalogue


def _template(name: str) -> str:
    return (files("journeybook.theme") / "templates" / name).read_text(encoding="utf-8")


@cache
def engine(language: str) -> Environment:
    """The environment for one language; a name that a template misspells raises instead of staying empty."""
    environment = Environment(
        autoescape=True,
        loader=FunctionLoader(_template),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,
        extensions=["jinja2.ext.i18n"],
    )
    catalogue, _ = load_catalogue(language)
    install = environment.install_gettext_translations  # type: ignore[attr-defined]  # added by the extension
    install(catalogue, newstyle=True)
    environment.filters["duration"] = lambda minutes: filters.duration(minutes, catalogue)
    environment.filters["day"] = lambda when: filters.day(when, catalogue)
    environment.filters["svg_for"] = filters.svg_for
    return environment


def render(language: str, template: str, /, **values: object) -> str:
    """The HTML of a template of the theme."""
    return engine(language).get_template(template).render(values)
