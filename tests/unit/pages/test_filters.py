from __future__ import annotations

import json
from datetime import date
from gettext import NullTranslations

import pytest
from drill_pages import drill_course

from journeybook.pages.filters import day, duration, script_json, svg_for

ENGLISH = NullTranslations()


class German(NullTranslations):
    def gettext(self, message: str) -> str:
        return {"Oct": "Okt"}.get(message, message)


@pytest.mark.parametrize(
    ("minutes", "shown"), [(0, "0 min"), (45, "45 min"), (60, "1 h"), (120, "2 h"), (156, "2 h 36 min")]
)
def test_a_duration_reads_in_hours_and_minutes(minutes: int, shown: str) -> None:
    assert duration(minutes, ENGLISH) == shown


def test_a_day_reads_with_the_months_name_in_the_readers_language() -> None:
    assert day(date(2026, 10, 3), ENGLISH) == "3 Oct 2026"
    assert day(date(2026, 10, 3), German()) == "3 Okt 2026"


def test_data_cannot_close_the_script_element_that_holds_them() -> None:
    data = {"a": "</script><!-- & \u2028 >"}
    text = script_json(data)
    assert not set("<>&\u2028") & set(text)
    assert json.loads(text) == data


def test_a_drawing_may_stand_on_two_leaves_without_an_id_coming_twice() -> None:
    figure = drill_course().figures["guard-laid-out"]
    one, other = svg_for(figure, "words"), svg_for(figure, "lesson-a")
    assert one.count('id="words-') == figure.svg.count('id="') + 1, "its own ids, and that of the whole"
    assert 'id="words-' not in other
    assert one.count("#guard-laid-out") == 0


def test_a_drawing_is_shown_a_quarter_larger_than_it_was_drawn() -> None:
    figure = drill_course().figures["guard-laid-out"]
    width = float(figure.svg.split('viewBox="')[1].split()[2])
    assert f'width="{round(width * 1.25)}"' in svg_for(figure, "words")
