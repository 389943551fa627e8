"""The physics: plain Python that never meets the site."""
