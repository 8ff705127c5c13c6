"""Figures as safe SVG with text alternatives."""
