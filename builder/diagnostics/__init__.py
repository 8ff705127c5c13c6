"""Problems as values: what is wrong, where, and how to mend it. Nothing here prints."""
