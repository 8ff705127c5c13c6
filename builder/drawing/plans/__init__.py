"""Drawings made from data, in the hand of the drawings that people make: one plan a kind, one kind a file."""
