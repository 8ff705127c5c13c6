"""A course to pages of HTML, for the site and for the one-file edition."""
