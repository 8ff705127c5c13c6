"""Marking: a question becomes a key, a key and an answer become a mark, a seed becomes a form.

Everything here is plain data in, plain data out. The same small readers exist in JavaScript
(``site_overrides/js/pure``); ``tests/vectors`` holds the two equal.
"""
