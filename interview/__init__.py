"""An interview that plans a rain garden for a home yard."""
