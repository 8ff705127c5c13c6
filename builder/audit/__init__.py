"""Rules about good courses and good questions, one a file."""
