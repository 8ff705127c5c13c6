"""Questions lowered to marking keys, marked, and drawn into forms; the compiled course and its evidence."""
