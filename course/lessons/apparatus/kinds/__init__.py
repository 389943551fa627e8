"""ONE MODULE FOR EACH APPARATUS; each ends in ``APPARATUS = Apparatus(...)`` and is found by looking."""
