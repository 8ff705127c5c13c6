"""Which codes there are, and what each is called; the constructors that every check uses.

A code is a letter for the stage that finds the problem and three digits. It is never given a second meaning:
a check that goes away leaves its line here out, and its number unused. Each code has a page in ``why/``.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from journeybook.diagnostics.codes_of_records import CODES_OF_RECORDS
from journeybook.diagnostics.problem import Level, Place, Problem

STAGES: Mapping[str, str] = MappingProxyType(
    {
        "S": "the text of a file",
        "C": "a course and its sheets",
        "L": "lessons",
        "Q": "questions",
        "D": "drills",
        "E": "calculators",
        "P": "practicals",
        "J": "job cards",
        "U": "duties",
        "N": "benches",
        "F": "figures",
        "B": "the blueprint of a check",
        "R": "releases",
        "K": "the kit sheet and the profile",
        "W": "wording and references",
        "M": "attempts and their marking",
        "T": "the words of the interface",
        "H": "sittings and what they hold",
        "O": "observations of a practical",
        "Y": "answers keyed from paper",
        "V": "the trust list",
        "A": "the audit",
    }
)
"""The letter of a code -> what such codes are about."""

_SOURCE = {
    "S001": "The file is too large.",
    "S002": "The file is not in UTF-8.",
    "S003": "A byte is not part of any character.",
    "S004": "A character cannot be seen or printed.",
    "S005": "A line breaks in a way that editors do not show.",
    "S006": "A line is indented with a tab.",
    "S007": "The file is empty.",
    "S008": "The file holds one text instead of keys and values.",
    "S009": "The file holds more than one document.",
    "S010": "A key stands twice.",
    "S011": "A key is not plain text.",
    "S012": "A merge key is not allowed.",
    "S013": "An anchor is not allowed.",
    "S014": "An alias is not allowed.",
    "S015": "A tag is not allowed.",
    "S016": "A value without quotes could be read in two ways.",
    "S017": "A text without quotes runs on over the next line.",
    "S018": "What follows a # is lost.",
    "S019": "Lists and keys are nested too deeply.",
    "S020": "A quote is not closed where it should be.",
    "S021": "Something follows a closing quote.",
    "S022": "A backslash is followed by something it cannot change.",
    "S023": "A colon makes a text without quotes look like a key.",
    "S024": "A space is missing after a colon.",
    "S025": "A space is missing after a dash.",
    "S026": "A text cannot start with this character.",
    "S027": "A bracket is not closed, or a comma is missing.",
    "S028": "A line is not indented like its neighbours.",
    "S029": "A line has no colon.",
    "S030": "A list starts on the line of its key.",
    "S031": "Something follows the sign that opens a block of text.",
    "S032": "A line that starts with % is not allowed.",
    "S033": "There are too many faults to list.",
    "S034": "The file cannot be read from here on.",
}

_COURSE = {
    "C001": "There is no such key here.",
    "C002": "Something that is needed is missing.",
    "C003": "Something else stands where text belongs.",
    "C004": "A text is empty.",
    "C005": "A text is too long.",
    "C006": "This cannot be an id or a name.",
    "C007": "A whole number is missing or out of range.",
    "C008": "Neither true nor false.",
    "C009": "This is not a day of the calendar.",
    "C010": "This word is not one of those allowed here.",
    "C011": "A list is missing, too short or too long.",
    "C012": "Something else stands where keys belong.",
    "C013": "A block does not have exactly one key.",
    "C014": "This cannot be a version.",
    "C015": "This is not a language tag.",
    "C016": "An id is used twice.",
    "C020": "There is no such course folder.",
    "C021": "A file or folder of the course is missing.",
    "C022": "A file cannot be read from the disk.",
    "C023": "A file is too large, or there are too many.",
    "C024": "A link leads out of the course folder.",
    "C025": "A file or folder name does not follow the rule.",
    "C026": "Nothing reads this file.",
    "C027": "Two paths differ only in capital letters.",
    "C028": "The course has no such profile.",
    "C029": "Two module folders have the same number or id.",
    "C030": "A source is missing.",
    "C031": "There is no such outcome.",
    "C032": "There is no such source.",
    "C033": "There is no such critical fact.",
    "C034": "There is no such figure.",
    "C035": "A profile is left without a source.",
    "C036": "A sheet's value rests on a source of another profile.",
    "C037": "This id is taken by the site or by Windows.",
    "C038": "A day is still to come.",
}

_LESSONS = {
    "L001": "A lesson practises with a question that is not there.",
    "L002": "A lesson practises with a question of the check.",
    "L003": "A module has no lessons.",
    "L004": "A lesson has no body.",
    "L005": "A lesson practises with a retired question.",
    "L006": "A figure or a bench stands twice in a lesson.",
}

_QUESTIONS = {
    "Q010": "No option is wrong.",
    "Q011": "The same answer is named twice.",
    "Q012": "The right answer names an option that is not there.",
    "Q013": "A wrong option has no reason.",
    "Q014": "Two options say the same.",
    "Q020": "A rule names a step that is not there.",
    "Q021": "A rule puts a step before itself.",
    "Q022": "The rules run in a circle.",
    "Q023": "The order has no rules.",
    "Q024": "A rule has no reason.",
    "Q030": "An item goes with an answer that is not there.",
    "Q031": "One answer serves two items.",
    "Q032": "An item has no reason.",
    "Q040": "An expression cannot be worked out.",
    "Q041": "Rows of given numbers have different names.",
    "Q042": "A given number is not used.",
    "Q043": "A name is not among the given numbers.",
    "Q044": "The tolerance is neither a number nor a percentage.",
    "Q045": "There is no such unit in the table.",
    "Q046": "A unit measures something else.",
    "Q047": "A slip has no reason.",
    "Q048": "A slip would be marked right.",
    "Q049": "A given number is not a number.",
    "Q050": "Two rows of given numbers ask the same and have different answers.",
    "Q055": "A number cannot be read off a bench.",
    "Q056": "A reading and the answer have different units.",
    "Q060": "There is no drawing to point at.",
    "Q061": "A spot is no part of the drawing.",
    "Q062": "A unit belongs to a place that is not there.",
    "Q063": "A dangerous unit belongs to the mildest place.",
    "Q064": "All units belong to one place.",
    "Q065": "A part to point at is too small for a finger.",
    "Q066": "Two spots are the same part of the drawing.",
    "Q067": "A unit has no reason.",
}

_DRILLS = {
    "D001": "A drill leads to a moment that it does not have.",
    "D002": "What happens when time is up is no deed of the moment.",
    "D003": "A drill ends and goes on at the same moment.",
    "D004": "A moment of a drill leaves nothing to choose.",
    "D005": "Seconds and what happens after them do not stand together.",
    "D006": "A deed either leads on or is a critical error.",
    "D007": "A drill runs in a circle.",
    "D008": "Nothing leads to a moment of a drill.",
    "D009": "No way through a drill is right.",
    "D010": "There is no such drill.",
    "D011": "A deed costs marks, and nobody is told why.",
}

_CALCULATORS = {
    "E001": "There is no such calculator.",
    "E002": "A formula cannot be read.",
    "E003": "A formula uses a name that is not there.",
    "E004": "A range or a start value is wrong.",
    "E005": "A calculator gives no result for numbers that it takes.",
    "E006": "No formula uses an input.",
    "E007": "A calculator stands twice in a lesson.",
}

_PRACTICALS = {
    "P001": "No step of a practical is critical.",
}

_JOB_CARDS = {
    "J001": "A row of a table does not fit its columns.",
}

_DUTIES = {
    "U001": "A duty is covered by something that is not there.",
    "U002": "Nothing covers a duty.",
    "U003": "A duty is covered by a retired question.",
    "U004": "A duty is covered by a question that is not there.",
}

_BENCHES = {
    "N001": "A number of a bench cannot be read.",
    "N002": "A fan's curve does not fall.",
    "N003": "A number of a bench is out of range.",
    "N004": "A control has no places, or two sorts of them.",
    "N005": "Values do not lie in a row.",
    "N006": "Something of a bench stands twice.",
    "N007": "A bench has too many places.",
    "N008": "A control has no such place.",
    "N009": "A bench lacks what one of its keys needs.",
    "N010": "There is no such bench.",
    "N011": "A trial or a goal names what its bench does not have.",
    "N012": "A setting question has nothing to set.",
    "N013": "Nothing that can be set meets the goal.",
    "N014": "Everything that can be set meets the goal.",
    "N015": "A goal cannot be judged.",
    "N016": "A bench does not say which flow is held.",
    "N017": "A trial starts where its goal is met.",
    "N018": "A bench has no caution.",
    "N019": "A word is too long for the drawing of a bench.",
    "N050": "A rule of an assembly names a part that is not there.",
    "N051": "A rule of an assembly puts a step before itself.",
    "N052": "The rules of an assembly run in a circle.",
    "N053": "A part goes on a part that is not there.",
    "N054": "Not exactly one part stands there from the beginning.",
    "N055": "Parts go on each other in a circle.",
    "N056": "Two parts go to one place.",
    "N057": "An assembly has too many steps.",
    "N058": "A part has no size.",
    "N059": "A deed is drawn.",
    "N060": "The parts of an assembly do not fit on a sheet.",
    "N061": "A rule of an assembly has no reason.",
    "N062": "An assembly has no rules.",
    "N063": "A part goes in deeper than there is anything to go into.",
    "N064": "The name of the first part has no room in the drawing.",
    "N065": "A look is not seen on a shape.",
}

_FIGURES = {
    "F001": "A figure has no drawing.",
    "F002": "A drawing has no figure file.",
    "F003": "A drawing is too large.",
    "F004": "A drawing cannot be read as SVG.",
    "F005": "A drawing holds something that no figure may hold.",
    "F006": "A drawing styles or sizes itself.",
    "F007": "A drawing's ids or references are wrong.",
    "F008": "A drawing has a class that the theme does not have.",
    "F009": "The lettering of a drawing is too small for a phone.",
    "F020": "A number of a drawing cannot be read.",
    "F021": "A number is not on the scale of its drawing.",
    "F022": "A range ends before it begins.",
    "F023": "An answer leads to no point of the decision.",
    "F024": "A decision leads back to where it was.",
    "F025": "Nothing leads to a point of a decision.",
    "F026": "A figure has two drawings.",
    "F027": "A scale has no marks, or too many.",
    "F028": "A drawing cannot show a link.",
    "F029": "The points of a line do not run from left to right.",
    "F030": "A bench cannot give a line of a chart.",
    "F031": "A word names a part that its drawing does not have.",
    "F032": "A bench gives a line in another unit than the scale's.",
}

_BLUEPRINT = {
    "B001": "A cell draws more questions than there are.",
    "B002": "Two cells are the same.",
    "B003": "A critical fact has no question in the check.",
    "B004": "A critical fact has only one question in the check.",
    "B005": "There are questions for a check, and no check.",
}

_RELEASE = {
    "R001": "The course is a draft.",
    "R002": "Nobody has approved the course.",
    "R003": "This version was released with other contents.",
    "R004": "A question of the last release is gone.",
    "R005": "A question asks for something else than in the last release.",
    "R006": "An earlier release cannot be read.",
    "R007": "The course cannot be compiled.",
}

_KIT = {
    "K001": "The id kit is taken by the kit sheet.",
}

_WORDING = {
    "W001": "There is no such value on the kit sheet.",
    "W002": "There is no such value in the profile.",
    "W003": "There is no such word in the glossary.",
    "W004": "There is no such lesson to link to.",
    "W005": "There is no such figure to name.",
    "W006": "A reference cannot be read.",
    "W007": "Braces stand where no reference is replaced.",
    "W008": "A picture stands in a text.",
    "W009": "HTML stands in a text.",
    "W010": "There is no such practical to link to.",
    "W011": "There is no such job card to link to.",
}

_INTERFACE = {
    "T001": "The interface has no words in that language.",
    "T002": "The words of the interface cannot be read without Babel.",
    "T003": "A translated text does not have the gaps of the English one.",
}

_TRUST = {
    "V001": "The trust list cannot be read.",
    "V002": "This is not a trust list.",
    "V003": "The trust list was changed after it was signed.",
    "V004": "The trust list cannot be checked.",
}

_AUDIT = {
    "A001": "An outcome has no lesson.",
    "A002": "An outcome has no practice question.",
    "A003": "An outcome is not in the check.",
    "A004": "A lesson is too long for one sitting.",
    "A005": "The longest option is the right one too often.",
    "A006": "An option says all or none of the above.",
    "A007": "Two questions ask nearly the same.",
    "A008": "Nothing cites a source.",
    "A009": "Nobody can type the right number.",
    "A010": "Guessing brings full marks in a drill too often.",
    "A014": "A duty has no lesson.",
    "A015": "A duty is neither asked nor observed.",
    "A016": "A job card is longer than one page.",
    "A021": "Nothing shows this.",
}

CODES: Mapping[str, str] = MappingProxyType(
    _SOURCE
    | _COURSE
    | _LESSONS
    | _QUESTIONS
    | _DRILLS
    | _CALCULATORS
    | _PRACTICALS
    | _JOB_CARDS
    | _DUTIES
    | _BENCHES
    | _FIGURES
    | _BLUEPRINT
    | _RELEASE
    | _KIT
    | _WORDING
    | _INTERFACE
    | CODES_OF_RECORDS
    | _TRUST
    | _AUDIT
)
"""Code -> its title, one sentence."""


def fault(code: str, place: Place, message: str, mend: str, also_at: Iterable[Place] = ()) -> Problem:
    """A problem that stops the build.

    Raises ``KeyError`` when the code is not in ``CODES``: a slip of the programmer, not of the author.
    """
    return _problem(Level.FAULT, code, place, message, mend, also_at)


def warning(code: str, place: Place, message: str, mend: str, also_at: Iterable[Place] = ()) -> Problem:
    """A problem that lets the site be built and keeps the course unreleased; raises like ``fault``."""
    return _problem(Level.WARNING, code, place, message, mend, also_at)


def _problem(
    level: Level, code: str, place: Place, message: str, mend: str, also_at: Iterable[Place]
) -> Problem:
    if code not in CODES:
        raise KeyError(f"{code} is not in the table of codes")
    return Problem(code=code, level=level, place=place, message=message, mend=mend, also_at=tuple(also_at))
