"""The codes of what comes back from people: attempts, sittings, observations, answers on paper."""

from __future__ import annotations

_MARKING = {
    "M001": "The file is not a JSON file.",
    "M002": "The file is too large or nested too deeply.",
    "M003": "The file holds something that a record never holds.",
    "M004": "The file was changed after it was written.",
    "M005": "The record is of a kind that this program does not know.",
    "M006": "A part of the record is missing or of the wrong shape.",
    "M007": "The record belongs to another course, version or profile.",
    "M008": "The record was made with other contents of the course.",
    "M009": "The questions are not those of the record's seed.",
    "M010": "An answer does not fit its question.",
    "M011": "The times of the record cannot be right.",
    "M012": "The compiled course cannot be used.",
    "M013": "The course of the record is not in this project.",
}

_SITTINGS = {
    "H001": "The file is not the private file of a sitting.",
    "H002": "No place of the sitting has that ticket.",
    "H003": "The record belongs to somebody else, or to another course.",
    "H004": "There is nothing to vouch for.",
    "H005": "Somebody else is at the file of the sitting.",
    "H006": "A person stands twice in a class.",
    "H007": "A person has extra time in two ways.",
    "H008": "A sitting needs a released course.",
    "H009": "The private file would lie where others can read it.",
    "H010": "The questions of the check stand open in the site.",
    "H011": "The attempt cannot be set aside.",
}

_OBSERVATIONS = {
    "O001": "The record is not an observation of a kind that this program knows.",
    "O002": "A part of the observation is missing or of the wrong shape.",
    "O003": "The observation was made with other contents of the course.",
    "O004": "The observation does not have the steps of its practical.",
    "O005": "The record does not bear out the word competent.",
    "O006": "The observation does not say who was there.",
    "O007": "The times of the observation cannot be right.",
}

_KEYED = {
    "Y001": "What is keyed from paper cannot be read.",
    "Y002": "The form has no question of that number.",
    "Y003": "What is keyed is no answer to the question.",
}

CODES_OF_RECORDS = _MARKING | _SITTINGS | _OBSERVATIONS | _KEYED
"""Code -> its title, one sentence."""
