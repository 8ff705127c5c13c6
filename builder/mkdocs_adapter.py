"""The one thin file between pages and MkDocs: checks before anything is emptied, then hands over the pages.

Order matters (MkDocs 1.6, ``commands/build.py``): the site folder is emptied between ``on_pre_build`` and
``on_files``, so everything that can be wrong is found in ``on_config``. ``mkdocs serve`` must never see
an exception from a rebuild, because every request would then hang; the preview shows the problems as a
page instead.
"""

from __future__ import annotations

import gc
import os
from contextlib import suppress
from pathlib import Path
from threading import Thread
from typing import TYPE_CHECKING, Any, Literal, NoReturn
from urllib.parse import urlsplit

from mkdocs.config import base, config_options, load_config
from mkdocs.exceptions import Abort, ConfigurationError, PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import TableOfContents

from journeybook import site_cache
from journeybook.clock import latest_day
from journeybook.content.load_memo import LoadMemo
from journeybook.finished import FinishedPage, FinishedSite
from journeybook.project import Project

if TYPE_CHECKING:
    from collections.abc import Callable

    from mkdocs.config.base import ConfigErrors, ConfigWarnings
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.livereload import LiveReloadServer
    from mkdocs.structure.nav import Navigation
    from mkdocs.utils.templates import TemplateContext

    from journeybook.pages_on_demand import PagesOnDemand
    from journeybook.preview import Preview, Shown

log = get_plugin_logger(__name__)
THEME = "journeybook"
"""The only theme that prints our pages; a site may lay a folder of its own over it."""


class JourneybookConfig(base.Config):  # type: ignore[no-untyped-call]  # MkDocs' own class hook
    """The settings under ``plugins: - journeybook:``."""

    courses = config_options.ListOfItems(config_options.Type(str))
    profile = config_options.Type(str)
    quizzes = config_options.Type(str, default="quizzes")
    trust = config_options.Type(str, default="")
    """The file of the signed trust list, from the folder of mkdocs.yml; empty for none."""
    cache = config_options.Type(str, default=".cache/journeybook")
    """Where the last sites are kept, from the folder of mkdocs.yml; empty for nowhere."""


_EVENTS_OF_PAGES = (
    "files",
    "nav",
    "pre_page",
    "page_read_source",
    "page_markdown",
    "page_content",
    "page_context",
    "post_page",
)


_SECONDS_BETWEEN_LOOKS = 0.1
"""A look at a thousand files takes 5 ms."""
_SECONDS_OF_QUIET = 0.03
"""Editors write a file in several steps; a rebuild waits until none has come for so long."""


class WholePage(Page):
    """A page whose HTML is already there; MkDocs neither reads nor renders Markdown for it."""

    def __init__(self, made: FinishedPage, file: File, config: MkDocsConfig) -> None:
        super().__init__(made.title, file, config)
        self.html = made.html.decode()

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Take the place of reading a Markdown file."""
        self.markdown, self.meta = "", {}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Take the place of rendering Markdown."""
        self.content = self.html[self.html.find("<main") : self.html.find("</main>")]
        self.toc = TableOfContents([])
        self.present_anchor_ids, self.links_to_anchors = set(), {}


class JourneybookPlugin(BasePlugin[JourneybookConfig]):  # type: ignore[no-untyped-call]  # likewise
    """Turns the courses of a project into the pages of a MkDocs site."""

    def __init__(self) -> None:
        self._serving = False
        self._site = FinishedSite()
        self._keeping: Thread | None = None
        """Puts the site that was made into the cache."""
        self._memo = LoadMemo()
        self._preview: Preview | None = None
        """Made once the server is there."""
        self._on_demand: PagesOnDemand | None = None
        self._shown: Shown | None = None
        """What the preview shows; None where the pages are written out as in a build."""

    def load_config(
        self, options: dict[str, Any], config_file_path: str | None = None
    ) -> tuple[ConfigErrors, ConfigWarnings]:
        """Say in our own way what is wrong with our settings, before MkDocs does in its own."""
        errors, warnings = super().load_config(options, config_file_path)
        if errors or warnings or not self.config.courses:
            from journeybook.settings import report_on_settings  # a build without a fault has no use for it

            said = report_on_settings(Path(config_file_path or ""))
            if said:
                log.error("\n%s", said)
                # This one the preview prints without a traceback.
                raise Abort("Nothing was built, and the last site is untouched.")
        return errors, warnings

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:  # noqa: ARG002
        """Remember what was asked for; having this event at all keeps the plugin alive between rebuilds."""
        self._serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Load, check and make every page in memory, while the last good site is still there."""
        if config.theme.name != THEME:
            _refuse_theme(config)
        config.use_directory_urls = False
        if not config.site_url or self._serving:
            # A site map of relative addresses, or of those of a preview, would help nobody.
            config.theme.static_templates.discard("sitemap.xml")
        project = project_of(config, self.config)
        watched = [str(path) for path in (*project.watched(), *_trust_files(project))]
        config.watch.extend(path for path in watched if path not in config.watch)
        # Making a site makes very many objects and hardly a circle of them; they are looked for once it is done.
        gc.disable()
        made: FinishedSite | Shown
        if self._preview is None or self._others_see_pages(config):
            self._shown = None
            made = self._site = self._made(project, config.site_name)
        else:
            made = self._shown = self._preview.renewed(project, config.site_name)
        if made.report:
            (log.error if made.faulty else log.warning)("\n%s", made.report)
        if made.faulty and not self._serving:
            raise PluginError("Nothing was built, and the last site is untouched.")
        _need_to_write_in(Path(config.site_dir))
        return config

    def _made(self, project: Project, name: str) -> FinishedSite:
        """The site of ``project``: as it was kept where nothing has changed since, else made and kept."""
        folder = project.root / self.config.cache
        key = site_cache.key_of(project, name) if self.config.cache and not self._serving else ""
        kept = site_cache.fetch(folder, key) if key else None
        if kept is not None:
            return kept
        # Loading all that makes a site takes longer than fetching one, so it waits until it is needed.
        from journeybook.building import faults_everywhere, finished_site

        made = finished_site(project, name=name, preview=self._serving, memo=self._memo)
        if made.faulty:
            return faults_everywhere(made.report, self._site, name) if self._serving else made
        if key and not made.for_today:
            # The checksum and the disk need little of the processor, so MkDocs can write the pages meanwhile.
            self._keeping = Thread(target=site_cache.keep, args=(folder, key, made))
            self._keeping.start()
        return made

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:  # noqa: ARG002
        """Hand over our pages and files and nothing else, so that no YAML is copied into the site."""
        ours = Files([])
        if self._on_demand is not None:
            self._on_demand.show(self._shown.parts if self._shown else {})
        if self._shown is not None:
            return ours
        as_pages = self._others_see_pages(config)
        for page in self._site.pages:
            if as_pages:
                source = page.path.removesuffix(".html") + ".md"
                file = File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV)
                WholePage(page, file, config)
                ours.append(file)
            else:
                ours.append(_as_file(config, page.path, page.html))
        for path, content in self._site.files.items():
            ours.append(_as_file(config, path, content))
        return ours

    def _others_see_pages(self, config: MkDocsConfig) -> bool:
        """Whether anything but us looks at pages: another plugin, the site map, or a theme of the site's own.

        Otherwise a page is handed over as a file, ready to be written: the same bytes, for a third of the time.
        """
        heard = (method for event in _EVENTS_OF_PAGES for method in config.plugins.events[event])
        others = any(getattr(method, "__self__", None) is not self for method in heard)
        own_theme = config.theme.name != THEME or config.theme.custom_dir is not None
        return others or own_theme or (bool(config.site_url) and not self._serving)

    def on_serve(
        self,
        server: LiveReloadServer,
        *,
        config: MkDocsConfig,
        builder: Callable[..., None],
    ) -> LiveReloadServer:
        """Make pages when they are asked for, and look at the files more often than MkDocs does.

        So a saved change shows while the eye is still there.
        """
        from watchdog.observers.polling import PollingObserver  # a build has no use for these

        from journeybook.pages_on_demand import PagesOnDemand
        from journeybook.preview import Preview

        behind = server.get_app()
        assert behind is not None, "MkDocs sets it when it makes the server"
        mount = urlsplit(config.site_url or "/").path
        self._on_demand = PagesOnDemand(behind, Path(config.site_dir), mount)
        server.set_app(self._on_demand)
        pages = [page.path for page in self._site.pages]
        self._preview = Preview(self._memo, pages, lambda said: log.warning("\n%s", said))

        watched: list[str] = []
        for path in (config.docs_dir, config.config_file_path, *config.theme.dirs):
            with suppress(KeyError):  # the theme is watched where that was asked for
                server.unwatch(path)
                watched.append(path)
        server.observer = PollingObserver(timeout=_SECONDS_BETWEEN_LOOKS)
        server.build_delay = _SECONDS_OF_QUIET
        server.builder = _said_plainly(builder, Path(config.config_file_path))
        for path in watched:
            server.watch(path)
        return server

    def on_post_build(self, *, config: MkDocsConfig) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Look for circles of objects again; a preview goes on for hours."""
        self._end_keeping()
        gc.enable()
        if self._serving and self._shown is None:
            gc.collect()  # otherwise the preview does it, once the change is on the screen

    def on_build_error(self, *, error: Exception) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """The same after a build that came to nothing."""
        self._end_keeping()
        gc.enable()

    def _end_keeping(self) -> None:
        if self._keeping is not None:
            self._keeping.join()
            self._keeping = None

    def on_page_context(
        self,
        context: TemplateContext,
        *,
        page: Page,
        config: MkDocsConfig,  # noqa: ARG002 - the signature is MkDocs'
        nav: Navigation,  # noqa: ARG002 - the signature is MkDocs'
    ) -> TemplateContext:
        """Give the theme's ``main.html`` the whole page."""
        assert isinstance(page, WholePage), "on_files makes every page"
        context.update({"whole_page": page.html})  # type: ignore[misc]  # the theme's own name
        return context


def _refuse_theme(config: MkDocsConfig) -> NoReturn:
    """Raise, because pages in another theme would have no styles and no scripts."""
    from journeybook.settings import report_on_settings  # a build without a fault has no use for it

    said = report_on_settings(Path(config.config_file_path or ""))
    log.error("\n%s", said or f"The theme is {config.theme.name}; write `theme: {{name: {THEME}}}`.")
    raise Abort("Nothing was built, and the last site is untouched.")


def _said_plainly(builder: Callable[[], None], config_file: Path) -> Callable[[], None]:
    """A rebuild for the preview, where a mkdocs.yml that cannot be used is told without a traceback."""

    def build_again() -> None:
        try:
            builder()
        except (ConfigurationError, PluginError) as refused:
            from journeybook.settings import report_on_settings  # likewise

            # This exception the server prints as it is.
            raise Abort(report_on_settings(config_file) or str(refused)) from refused

    return build_again


def _need_to_write_in(folder: Path) -> None:
    """Make the folder of the site, or say in one sentence why it cannot be written, before MkDocs tries."""
    mend = "Choose another folder with `site_dir` or `-d`, or give yourself the right to write there."
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise PluginError(f"The site cannot be written to {folder}: {error.strerror}. {mend}") from error
    if not os.access(folder, os.W_OK | os.X_OK):
        raise PluginError(f"The site cannot be written to {folder}: you may only read there. {mend}")


def project_of(config: MkDocsConfig, settings: JourneybookConfig) -> Project:
    """The project that a configuration describes."""
    root = Path(config.config_file_path).resolve().parent
    courses_dir = Path(config.docs_dir).resolve()
    if not courses_dir.is_relative_to(root):
        raise PluginError(
            f"docs_dir leads to {courses_dir}, outside the folder of mkdocs.yml: move it in there."
        )
    return Project(
        root=root,
        courses=tuple(settings.courses),
        profile=settings.profile,
        courses_dir=courses_dir.relative_to(root).as_posix(),
        quizzes_dir=settings.quizzes,
        trust=settings.trust,
        today=latest_day(),
    )


def _trust_files(project: Project) -> list[Path]:
    """The trust list, where there is one to look at."""
    file = project.root / project.trust
    return [file] if project.trust and file.is_file() else []


def read_project(config_file: Path) -> Project:
    """The project that a mkdocs.yml describes. Raises ``mkdocs.exceptions.ConfigurationError`` where it is wrong."""
    config = load_config(config_file=str(config_file))
    plugin = config.plugins.get("journeybook")
    if not isinstance(plugin, JourneybookPlugin):
        raise ConfigurationError("`plugins` does not name journeybook, with its courses and profile.")
    return project_of(config, plugin.config)


def _as_file(config: MkDocsConfig, path: str, content: bytes) -> File:
    return File.generated(config, path, content=content, inclusion=InclusionLevel.NOT_IN_NAV)
