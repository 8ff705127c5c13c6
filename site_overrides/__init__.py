"""The theme: templates, styles, scripts and fonts. Data only."""
