"""The model of a course as frozen data, and its loader."""
