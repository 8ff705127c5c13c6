"""The one thin file between pages and MkDocs: checks before anything is emptied, then hands over the pages.

Order matters (MkDocs 1.6, ``commands/build.py``): the site folder is emptied between ``on_pre_build`` and
``on_files``, so everything that can be wrong is found in ``on_config``. ``mkdocs serve`` must never see
an exception from a rebuild, because every request would then hang; the preview shows the problems as a
page instead.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal

from mkdocs.config import base, config_options, load_config
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import TableOfContents

from journeybook.diagnostics.report import has_fault
from journeybook.making import courses_of
from journeybook.pages import assets
from journeybook.pages.faults_page import faults_leaf
from journeybook.pages.leaf import Leaf
from journeybook.pages.site import Site, build_site
from journeybook.project import Project
from journeybook.report import report

if TYPE_CHECKING:
    from mkdocs.config.defaults import MkDocsConfig
    from mkdocs.structure.nav import Navigation
    from mkdocs.utils.templates import TemplateContext

log = get_plugin_logger(__name__)


class JourneybookConfig(base.Config):  # type: ignore[no-untyped-call]  # MkDocs' own class hook
    """The settings under ``plugins: - journeybook:``."""

    courses = config_options.ListOfItems(config_options.Type(str))
    profile = config_options.Type(str)
    quizzes = config_options.Type(str, default="quizzes")


class LeafPage(Page):
    """A page whose HTML is already there; MkDocs neither reads nor renders Markdown for it."""

    def __init__(self, leaf: Leaf, file: File, config: MkDocsConfig) -> None:
        super().__init__(leaf.title, file, config)
        self.leaf = leaf

    def read_source(self, config: MkDocsConfig) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Take the place of reading a Markdown file."""
        self.markdown, self.meta = "", {}

    def render(self, config: MkDocsConfig, files: Files) -> None:  # noqa: ARG002 - the signature is MkDocs'
        """Take the place of rendering Markdown."""
        self.content = self.leaf.body
        self.toc = TableOfContents([])
        self.present_anchor_ids, self.links_to_anchors = set(), {}


class JourneybookPlugin(BasePlugin[JourneybookConfig]):  # type: ignore[no-untyped-call]  # likewise
    """Turns the courses of a project into the pages of a MkDocs site."""

    def __init__(self) -> None:
        self._serving = False
        self._site = Site(leaves=(), shells={}, name="", files={})

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:  # noqa: ARG002
        """Remember what was asked for; having this event at all keeps the plugin alive between rebuilds."""
        self._serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Load, check and make every page in memory, while the last good site is still there."""
        config.use_directory_urls = False
        if not config.site_url:
            # A site map of relative addresses would help nobody.
            config.theme.static_templates.discard("sitemap.xml")
        project = project_of(config, self.config)
        config.watch.extend(str(folder) for folder in project.watched() if str(folder) not in config.watch)
        courses, problems = courses_of(project)
        faulty = has_fault(problems)
        if problems:
            (log.error if faulty else log.warning)("\n%s", report(problems, project.root))
        if faulty and not self._serving:
            raise PluginError("Nothing was built, and the last site is untouched.")
        if faulty:
            self._site = _faults_everywhere(report(problems, project.root), self._site)
        else:
            assets.forget()
            self._site = build_site(courses, name=config.site_name, preview=self._serving)
        return config

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:  # noqa: ARG002
        """Hand over our pages and files and nothing else, so that no YAML is copied into the site."""
        ours = Files([])
        for leaf in self._site.leaves:
            source = leaf.path.removesuffix(".html") + ".md"
            file = File.generated(config, source, content="", inclusion=InclusionLevel.NOT_IN_NAV)
            LeafPage(leaf, file, config)
            ours.append(file)
        for path, content in self._site.files.items():
            ours.append(File.generated(config, path, content=content, inclusion=InclusionLevel.NOT_IN_NAV))
        return ours

    def on_page_context(
        self,
        context: TemplateContext,
        *,
        page: Page,
        config: MkDocsConfig,  # noqa: ARG002 - the signature is MkDocs'
        nav: Navigation,  # noqa: ARG002 - the signature is MkDocs'
    ) -> TemplateContext:
        """Give the theme's ``main.html`` the leaf and what frames it."""
        assert isinstance(page, LeafPage), "on_files makes every page"
        context.update({"leaf": page.leaf, "shell": self._site.page})  # type: ignore[misc]  # the theme's own names
        return context


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
    )


def read_project(config_file: Path) -> Project:
    """The project that a mkdocs.yml describes. Raises ``mkdocs.exceptions.ConfigurationError`` where it is wrong."""
    config = load_config(config_file=str(config_file))
    plugin = config.plugins["journeybook"]
    assert isinstance(plugin, JourneybookPlugin)
    return project_of(config, plugin.config)


def _faults_everywhere(text: str, last: Site) -> Site:
    """The faults in place of every page of the last good preview, so that any open page shows them when it reloads."""
    paths = [leaf.path for leaf in last.leaves] or ["index.html"]
    leaves = tuple(faults_leaf(text, path) for path in paths)
    return Site(leaves=leaves, shells={}, name=last.name, files=assets.asset_files(), preview=True)
