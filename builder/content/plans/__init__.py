"""Figures with ``draw``: from what the file says to what is drawn, with the values of the sheets in place."""
