"""The HTML round a question, and of the options of a choice: the commonest markup of a course, written in plain Python.

The same markup serves practice (in a lesson) and the check (inside a template element). All texts of a sheet are HTML
already, so nothing is escaped here. Buttons are added by the script, so that nothing is shown that cannot work. What
only some kinds have stands in templates of their own, ``question-CONTROL.html`` and ``answer-CONTROL.html``; a
template here would take half of the time of a large build.
"""

from __future__ import annotations

from dataclasses import dataclass

from journeybook.pages.question_sheet import Html, Line, QuestionSheet, SourceLine


@dataclass(frozen=True, kw_only=True)
class QuestionWords:
    """What every question says besides its own texts, in the reader's language."""

    right: str
    wrong: str
    answer_and_reasons: str
    source: str
    not_yet_confirmed: str


def section(
    sheet: QuestionSheet, heading: Html, words: QuestionWords, *, control: Html, answer: Html
) -> Html:
    """The section of one question; ``control`` is what is answered with, ``answer`` what is right and why."""
    name = sheet.html_id
    tab = (
        f'  <div class="question-tab">\n    <h3 class="label" tabindex="-1">{heading}</h3>\n'
        f'    <p class="label question-kind">{sheet.kind_words}</p>\n  </div>'
        if heading
        else ""
    )
    figure = f"      {sheet.figure}{sheet.trial}" if sheet.figure or sheet.trial else ""
    return (
        f'<section class="question" id="{name}" data-question="{sheet.id}" data-kind="{sheet.kind}" '
        f'data-variant="0" aria-labelledby="{name}-ask">{tab}'
        '  <form novalidate>\n    <fieldset class="question-sheet">\n'
        f'      <legend id="{name}-ask" tabindex="-1">{_by_variant("", "ask", sheet.asks)}</legend>{figure}'
        f"{control}    </fieldset>\n"
        '    <div class="remark" role="status"></div>\n    <div class="question-foot"></div>\n  </form>\n'
        f'  <details class="answer">\n    <summary>{words.answer_and_reasons}</summary>\n'
        f'    <div class="answer-sheet">{answer}{_by_variant("      ", "why", sheet.whys)}'
        f"{_sources(sheet.sources, words)}    </div>\n  </details>\n</section>"
    )


def options_control(sheet: QuestionSheet) -> Html:
    """The options of choice and choices: a whole row is the target."""
    kind = "radio" if sheet.kind == "choice" else "checkbox"
    rows = [
        f'        <div class="option" data-option="{option.id}">\n'
        f'          <label><input type="{kind}" name="{sheet.id}" value="{option.id}">'
        f'<span class="option-text">{option.text}</span></label>\n        </div>'
        for option in sheet.options
    ]
    return f'      <div class="options">{"".join(rows)}      </div>'


def options_answer(sheet: QuestionSheet, words: QuestionWords) -> Html:
    """Which options are right, and why each is or is not."""
    rows = [_option_reason(option, words) for option in sheet.options]
    return f'      <ul class="reasons">{"".join(rows)}      </ul>'


def _option_reason(option: Line, words: QuestionWords) -> Html:
    right, verdict = (" data-right", words.right) if option.right else ("", words.wrong)
    reason = f' <span class="reason">{option.reason}</span>' if option.reason else ""
    return (
        f'        <li data-reason="{option.id}"{right}><span class="verdict">{verdict}</span> '
        f'<span class="reason-of">{option.text}</span>{reason}</li>'
    )


def _by_variant(indent: str, name: str, texts: tuple[Html, ...]) -> Html:
    """A text for each variant, the first in sight; those without a text are left out."""
    return "".join(
        f'{indent}<div class="{name}" data-variant="{variant}"{" hidden" if variant else ""}>{text}</div>'
        for variant, text in enumerate(texts)
        if text
    )


def _sources(sources: tuple[SourceLine, ...], words: QuestionWords) -> Html:
    if not sources:
        return ""
    named = []
    for source in sources:
        unconfirmed = (
            "" if source.confirmed else f' <span class="unconfirmed">{words.not_yet_confirmed}</span>'
        )
        named.append(f' <a href="{source.href}">{source.name}</a>{unconfirmed}')
    return f'      <p class="question-source"><span class="label">{words.source}</span>{";".join(named)}</p>'
