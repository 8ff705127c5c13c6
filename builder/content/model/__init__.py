"""The model: what a course is, as frozen data.

Text fields hold the author's CommonMark as written, references such as ``{kit.minimum-flow}`` included;
``content.wording`` expands and renders them. The order of tuples is the order in the files.
"""

from __future__ import annotations

from journeybook.content.model.aims import (
    CriticalFact,
    Outcome,
)
from journeybook.content.model.assembly_bench import (
    AssemblyBench,
    BenchPart,
    PartSize,
)
from journeybook.content.model.benches import (
    Bench,
    BenchReading,
    Stand,
    Trial,
)
from journeybook.content.model.calculators import (
    Calculator,
    CalculatorInput,
    CalculatorResult,
    Preset,
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
from journeybook.content.model.drills import (
    Deed,
    Drill,
    Moment,
)
from journeybook.content.model.duties import (
    Covering,
    Duties,
    Duty,
)
from journeybook.content.model.fan_bench import (
    FanBench,
)
from journeybook.content.model.figures import (
    Figure,
    Term,
)
from journeybook.content.model.hands_on import (
    DrillQuestion,
    Goal,
    SettingQuestion,
    Spot,
    SpotQuestion,
    TriageQuestion,
    TriageUnit,
)
from journeybook.content.model.job_cards import (
    CardBlock,
    CardBlockKind,
    CardTable,
    JobCard,
)
from journeybook.content.model.lessons import (
    Block,
    BlockKind,
    Lesson,
    Module,
)
from journeybook.content.model.practicals import (
    Practical,
    PracticalStep,
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
    "AssemblyBench",
    "Bank",
    "Bench",
    "BenchPart",
    "BenchReading",
    "Block",
    "BlockKind",
    "Blueprint",
    "Calculator",
    "CalculatorInput",
    "CalculatorResult",
    "CardBlock",
    "CardBlockKind",
    "CardTable",
    "Cell",
    "ChoiceQuestion",
    "ChoicesQuestion",
    "Citation",
    "Confirmation",
    "Contact",
    "Course",
    "Covering",
    "CriticalFact",
    "Deed",
    "Drill",
    "DrillQuestion",
    "Duties",
    "Duty",
    "FanBench",
    "Figure",
    "Goal",
    "Issuer",
    "JobCard",
    "Lesson",
    "MatchItem",
    "MatchQuestion",
    "Module",
    "Moment",
    "NumberQuestion",
    "Option",
    "OrderQuestion",
    "Outcome",
    "Outlook",
    "PartSize",
    "Practical",
    "PracticalStep",
    "Preset",
    "Question",
    "Rule",
    "SettingQuestion",
    "Sheet",
    "Slip",
    "Spot",
    "SpotQuestion",
    "Stand",
    "Standing",
    "Term",
    "TriageQuestion",
    "TriageUnit",
    "Trial",
    "Use",
    "Validity",
    "Value",
]
