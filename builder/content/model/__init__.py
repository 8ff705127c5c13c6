"""The model: what a course is, as frozen data.

Text fields hold the author's CommonMark as written, references such as ``{kit.minimum-flow}`` included;
``content.wording`` expands and renders them. The order of tuples is the order in the files.
"""

from __future__ import annotations

from journeybook.content.model.aims import (
    CriticalFact,
    Outcome,
)
from journeybook.content.model.check import (
    Blueprint,
    Cell,
)
from journeybook.content.model.course import (
    Approval,
    Contact,
    Course,
    Issuer,
    Validity,
)
from journeybook.content.model.figures import (
    Figure,
    Term,
)
from journeybook.content.model.lessons import (
    Block,
    BlockKind,
    Lesson,
    Module,
)
from journeybook.content.model.questions import (
    Bank,
    ChoiceQuestion,
    ChoicesQuestion,
    MatchItem,
    MatchQuestion,
    NumberQuestion,
    Option,
    OrderQuestion,
    Outlook,
    Question,
    Rule,
    Slip,
    Use,
)
from journeybook.content.model.sheets import (
    Sheet,
    Value,
)
from journeybook.content.model.sources import (
    Citation,
    Confirmation,
    Standing,
)

__all__ = [
    "Approval",
    "Bank",
    "Block",
    "BlockKind",
    "Blueprint",
    "Cell",
    "ChoiceQuestion",
    "ChoicesQuestion",
    "Citation",
    "Confirmation",
    "Contact",
    "Course",
    "CriticalFact",
    "Figure",
    "Issuer",
    "Lesson",
    "MatchItem",
    "MatchQuestion",
    "Module",
    "NumberQuestion",
    "Option",
    "OrderQuestion",
    "Outcome",
    "Outlook",
    "Question",
    "Rule",
    "Sheet",
    "Slip",
    "Standing",
    "Term",
    "Use",
    "Validity",
    "Value",
]
