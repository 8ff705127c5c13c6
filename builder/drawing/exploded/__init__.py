"""Exploded drawings made from a list of parts: how each looks, where it goes, and where it lies until then."""
