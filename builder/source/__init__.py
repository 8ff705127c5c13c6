"""Bytes of YAML to plain data with positions. Knows nothing of courses."""
