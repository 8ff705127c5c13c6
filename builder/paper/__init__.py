"""Plain data to PDF: everything that is printed, tagged and fit for the archive."""
